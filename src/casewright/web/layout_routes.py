"""Requests about other answers for a run: each drawn, one of them taken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated

from fastapi import APIRouter, Body

from casewright.errors import CasewrightError, Location, Problem
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.load import read_job
from casewright.room.build import build
from casewright.web.drawings import drawn
from casewright.web.redrawing import redrawn
from casewright.web.schema import Edited, LayoutAnswerView, LayoutView, Short
from casewright.web.site import Site
from casewright.web.snapshot import Snapshot

__all__ = ["NoLayoutError", "layout_routes"]


class NoLayoutError(CasewrightError):
    """There is no such answer for a run."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What would be right."""
        want = "leave the width of a case of it open, between two walls"
        return (Problem(Location("", word=str(self)), "this run has no other answers", want),)


def layout_routes(site: Site) -> APIRouter:
    """Requests about layouts."""
    routes = APIRouter(prefix="/api")

    @routes.get("/layouts/{run}")
    def answers(run: Short) -> LayoutView:
        """Up to five answers for a run that differ in kind, the best first."""
        snapshot = site.snapshot()
        found = _found(snapshot, run)
        return LayoutView(
            version=snapshot.version,
            answers=tuple(_answers(snapshot, found)),
            conflicts=tuple(map(found.conflict_text, found.conflicts)),
        )

    @routes.post("/layouts/{run}")
    def take(
        run: Short,
        number: Annotated[int, Body(ge=1)],
        digest: Annotated[Short, Body()],
    ) -> Edited:
        """Write an answer into the job file, with what spoke for it."""

        def change(snapshot: Snapshot) -> str:
            found = _found(snapshot, run)
            if number > len(found.answers):
                raise NoLayoutError(run)
            return accepted(snapshot.loaded.file.text, found, number)

        version, saved = site.editor.edit(digest, change, lambda *_: None)
        drawing = drawn(site.snapshot(at_least=version).worked.room, f"run.{run}") or ""
        return Edited(version=version, digest=saved.file.digest, drawing=drawing)

    return routes


def _found(snapshot: Snapshot, key: str) -> RunLayout:
    for each in layouts(snapshot.worked.room):
        if each.key == key:
            return each
    raise NoLayoutError(key)


def _answers(snapshot: Snapshot, found: RunLayout) -> Iterator[LayoutAnswerView]:
    loaded, name = snapshot.loaded, f"run.{found.key}"
    for number, answer in enumerate(found.answers, start=1):
        text = accepted(loaded.file.text, found, number)
        spec = read_job(text, loaded.file.name)
        then = replace(loaded, spec=spec)
        facts = snapshot.recorded.facts
        drawing = redrawn(then, facts, name) or drawn(build(spec, facts), name) or ""
        layout = answer.layout
        yield LayoutAnswerView(
            number=number,
            trade=answer.trade,
            widths=tuple(
                f"{place.key} {found.text(width)}"
                for place, width in zip(layout.task.places, layout.widths, strict=True)
            ),
            proved=layout.is_proved,
            drawing=drawing,
        )
