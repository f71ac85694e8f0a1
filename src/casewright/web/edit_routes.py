"""Requests that change the job file."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Body

from casewright.job.case_edits import delete_case
from casewright.job.collector import collector_at_rest
from casewright.job.load import LoadedJob, load_job
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
        drawing: list[str] = []

        def draw(before: Snapshot, saved: LoadedJob) -> None:
            if new.shows:
                facts, room = before.recorded.facts, before.worked.room
                drawing.append(redrawn(saved, facts, new.shows, before=room) or "")

        with collector_at_rest():  # a search through all models would take longer than this does
            version, saved = site.editor.edit(
                new.digest,
                lambda snapshot: with_number(snapshot, new.path, new.key, new.value),
                draw,
            )
        return Edited(version=version, digest=saved.file.digest, drawing="".join(drawing))

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
        return _stepped(site, site.editor.undo())

    @routes.post("/redo")
    def redo() -> Edited:
        """Make the edit taken back last again."""
        return _stepped(site, site.editor.redo())

    return routes


def _stepped(site: Site, version: int) -> Edited:
    return Edited(version=version, digest=load_job(site.live.path).file.digest, drawing="")
