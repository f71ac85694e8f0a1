"""Requests about other answers of the layout: each drawn, one of them taken."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Body, Path, Query

from casewright.web.layout_answers import Choices, NoLayoutError, picture
from casewright.web.numbers import only_read, why_view
from casewright.web.schema import (
    Edited,
    HindranceView,
    LayoutAnswerView,
    LayoutView,
    Short,
    WhyView,
    sentence_of,
)
from casewright.web.site import Site
from casewright.web.snapshot import Snapshot

__all__ = ["layout_routes"]


def layout_routes(site: Site) -> APIRouter:
    """Requests about layouts: `run.<key>`, `island.<key>` or `heights`."""
    routes = APIRouter(prefix="/api")

    @routes.get("/layouts/{of}")
    def answers(of: Short) -> LayoutView:
        """Up to five answers that differ in kind, the best first."""
        snapshot = site.snapshot()
        return _view(snapshot, site.answers.choices(snapshot, of))

    @routes.get("/layouts/{of}/{number}/why")
    def why(
        of: Short, number: Annotated[int, Path(ge=1)], path: Annotated[Short, Query()]
    ) -> WhyView:
        """A number of the room as it would be with an answer, and all that it rests on there."""
        snapshot = site.snapshot()
        if number > len(site.answers.choices(snapshot, of).answers):
            raise NoLayoutError(of)
        return only_read(why_view(site.answers.then(snapshot, of, number), path))

    @routes.post("/layouts/{of}")
    def take(
        of: Short,
        number: Annotated[int, Body(ge=1)],
        digest: Annotated[Short, Body()],
    ) -> Edited:
        """Write an answer into the job file, with what spoke for it."""

        def change(snapshot: Snapshot) -> str:
            found = site.answers.choices(snapshot, of)
            if number > len(found.answers):
                raise NoLayoutError(of)
            return found.accepted(snapshot.loaded.file.text, number)

        version, saved = site.editor.edit(digest, change, lambda *_: None)
        site.snapshot(at_least=version)
        return Edited(version=version, digest=saved.file.digest, drawing="")

    return routes


def _view(snapshot: Snapshot, found: Choices) -> LayoutView:
    text = snapshot.loaded.file.text
    return LayoutView(
        version=snapshot.version,
        answers=tuple(
            LayoutAnswerView(
                number=number, trade=tuple(map(sentence_of, each.trade)),
                sizes=tuple(map(sentence_of, each.sizes)), proved=each.proved,
                taken=found.accepted(text, number) == text,
                drawing=picture(snapshot, found, number),
            )
            for number, each in enumerate(found.answers, start=1)
        ),
        hindrances=tuple(
            HindranceView(what=sentence_of(each.what),
                          reliefs=tuple(map(sentence_of, each.reliefs)))
            for each in found.hindrances
        ),
    )  # fmt: skip
