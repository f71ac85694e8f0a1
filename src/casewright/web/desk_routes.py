"""Requests of the desk: the job, its drawings, its numbers."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query
from starlette.responses import Response

from casewright.errors import CasewrightError, Location, Problem
from casewright.web.chapters import PLANNED, chapter_html
from casewright.web.drawings import drawn
from casewright.web.numbers import chain_of_plans, why_view
from casewright.web.schema import Chapter, JobView, Short, WhyView
from casewright.web.site import Site
from casewright.web.views import job_view

__all__ = ["NoDrawingError", "NoPageError", "desk_routes"]

_SVG = "image/svg+xml"


class NoPageError(CasewrightError):
    """There is no page of that name, or not yet."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The name."""
        return (Problem(Location("", word=str(self)), "there is nothing here yet", "go back"),)


class NoDrawingError(CasewrightError):
    """There is no drawing of that name."""

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The name."""
        return (Problem(Location("", word=str(self)), "there is no such drawing", "go back"),)


def desk_routes(site: Site) -> APIRouter:
    """Requests of the desk."""
    routes = APIRouter(prefix="/api")

    @routes.get("/job")
    def job() -> JobView:
        """The job as a page shows it first."""
        site.live.wait_for(1, 60)
        return job_view(site.live, site.editor, site.page.build)

    @routes.get("/drawings/{name}", response_class=Response)
    def drawing(name: Short, version: Annotated[int, Query(ge=0)] = 0) -> Response:
        """A drawing as SVG, of a version or a newer one."""
        found = drawn(site.snapshot(at_least=version).worked.room, name)
        if found is None:
            raise NoDrawingError(name)
        return Response(found, media_type=_SVG)

    @routes.get("/why")
    def why(path: Annotated[Short, Query()]) -> WhyView:
        """A number and all that it rests on."""
        snapshot = site.snapshot()
        chain = site.answers.chain(snapshot, path)
        return why_view(snapshot, path, chain or chain_of_plans(snapshot, site.live.planned, path))

    @routes.get("/chapters/{page}")
    def chapter(page: Short, of: Annotated[Short, Query()] = "") -> Chapter:
        """A page of the desk: of what was planned last while new cuts are being planned."""
        snapshot = site.snapshot()
        if page in PLANNED:
            if site.live.planned is None:
                return Chapter(version=0, html="")
            snapshot = site.live.planned
        found = chapter_html(snapshot, page, of)
        if found is None:
            raise NoPageError(page)
        return Chapter(version=snapshot.version, html=found)

    return routes
