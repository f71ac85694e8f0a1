"""Requests about other answers of the layout: each drawn, one of them taken."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Body

from casewright.web.layout_answers import NoLayoutError, choices, picture
from casewright.web.schema import Edited, HindranceView, LayoutAnswerView, LayoutView, Short
from casewright.web.site import Site
from casewright.web.snapshot import Snapshot

__all__ = ["layout_routes"]


def layout_routes(site: Site) -> APIRouter:
    """Requests about layouts: `run.<key>`, `island.<key>` or `heights`."""
    routes = APIRouter(prefix="/api")

    @routes.get("/layouts/{of}")
    def answers(of: Short) -> LayoutView:
        """Up to five answers that differ in kind, the best first."""
        return _view(site.snapshot(), of)

    @routes.post("/layouts/{of}")
    def take(
        of: Short,
        number: Annotated[int, Body(ge=1)],
        digest: Annotated[Short, Body()],
    ) -> Edited:
        """Write an answer into the job file, with what spoke for it."""

        def change(snapshot: Snapshot) -> str:
            found = choices(snapshot.worked.room, of)
            if number > len(found.answers):
                raise NoLayoutError(of)
            return found.accepted(snapshot.loaded.file.text, number)

        version, saved = site.editor.edit(digest, change, lambda *_: None)
        site.snapshot(at_least=version)
        return Edited(version=version, digest=saved.file.digest, drawing="")

    return routes


def _view(snapshot: Snapshot, of: str) -> LayoutView:
    found, text = choices(snapshot.worked.room, of), snapshot.loaded.file.text
    return LayoutView(
        version=snapshot.version,
        answers=tuple(
            LayoutAnswerView(
                number=number, trade=each.trade, sizes=each.sizes, proved=each.proved,
                taken=found.accepted(text, number) == text,
                drawing=picture(snapshot, found, number),
            )
            for number, each in enumerate(found.answers, start=1)
        ),
        hindrances=tuple(
            HindranceView(what=each.what, reliefs=each.reliefs) for each in found.hindrances
        ),
    )  # fmt: skip
