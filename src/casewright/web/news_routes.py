"""The stream of news that every open page listens to."""

from __future__ import annotations

import json

from fastapi import APIRouter
from starlette.responses import StreamingResponse

from casewright.web.schema import Steps
from casewright.web.site import Site

__all__ = ["news_routes"]


def news_routes(site: Site) -> APIRouter:
    """The stream of news."""
    routes = APIRouter(prefix="/api")

    @routes.get("/events", response_class=StreamingResponse)
    def events() -> StreamingResponse:
        """News as they come: how far the job is worked out, what others wrote."""
        now = {
            "build": site.page.build,
            **Steps.of(site.live.standing, site.live.version).model_dump(),
        }
        first = f"event: steps\ndata: {json.dumps(now)}\n\n"
        return StreamingResponse(
            site.news.stream(first),
            media_type="text/event-stream",
            headers={"cache-control": "no-store", "x-accel-buffering": "no"},
        )

    return routes
