"""Requests that change the job file."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Body

from casewright.job.case_edits import delete_case
from casewright.job.load import LoadedJob, load_job
from casewright.web.drawings import drawn
from casewright.web.numbers import with_number
from casewright.web.redrawing import redrawn
from casewright.web.schema import Edited, NewNumber, Short
from casewright.web.site import Site
from casewright.web.snapshot import Snapshot

__all__ = ["edit_routes"]


def edit_routes(site: Site) -> APIRouter:
    """Requests that change the job file."""
    routes = APIRouter(prefix="/api")

    @routes.post("/numbers")
    def number(new: NewNumber) -> Edited:
        """Change a number in the job file."""
        drawing: list[str | None] = []

        def draw(before: Snapshot, saved: LoadedJob) -> None:
            drawing.append(redrawn(saved, before.recorded.facts, new.shows))

        version, saved = site.editor.edit(
            new.digest,
            lambda snapshot: with_number(snapshot, new.path, new.key, new.value),
            draw,
        )
        digest = saved.file.digest
        if drawing[0] is None:
            return _edited(site, version, digest, new.shows)
        return Edited(version=version, digest=digest, drawing=drawing[0])

    @routes.post("/cases/{key}/out")
    def take_out(key: Short, digest: Annotated[Short, Body(embed=True)]) -> Edited:
        """Take a case out of the job file, and out of its run."""
        version, saved = site.editor.edit(
            digest, lambda snapshot: delete_case(snapshot.loaded.file.text, key), lambda *_: None
        )
        return Edited(version=version, digest=saved.file.digest, drawing="")

    @routes.post("/undo")
    def undo() -> Edited:
        """Take the last edit back."""
        return _edited(site, site.editor.undo(), load_job(site.live.path).file.digest, "")

    @routes.post("/redo")
    def redo() -> Edited:
        """Make the edit taken back last again."""
        return _edited(site, site.editor.redo(), load_job(site.live.path).file.digest, "")

    return routes


def _edited(site: Site, version: int, digest: str, shows: str) -> Edited:
    drawing = ""
    if shows:
        drawing = drawn(site.snapshot(at_least=version).worked.room, shows) or ""
    return Edited(version=version, digest=digest, drawing=drawing)
