"""The page itself: one document for every address, and its files."""

from __future__ import annotations

from urllib.parse import quote

from fastapi import APIRouter
from starlette.responses import RedirectResponse, Response

from casewright.web.schema import Refusal
from casewright.web.site import Site

__all__ = ["page_routes"]

_LONG = "public, max-age=31536000, immutable"
_MONTH = "private, max-age=2592000"


def page_routes(site: Site) -> APIRouter:
    """Requests for the page's own files; any other address shows the page."""
    routes = APIRouter(include_in_schema=False)
    page = site.page
    mark = f'<head><meta name="build" content="{page.build}">'.encode()
    front_page = page.front.content.replace(b"<head>", mark, 1)

    @routes.get("/assets/{name:path}")
    def asset(name: str) -> Response:
        found = page.files.get(f"assets/{name}")
        if found is None:
            return _missing("there is no such file")
        return Response(found.content, media_type=found.kind, headers={"cache-control": _LONG})

    @routes.get("/api/{name:path}")
    def nothing(name: str) -> Response:
        return _missing("there is nothing to ask for by this name")

    @routes.get("/P/{mark}")
    def label(mark: str) -> Response:
        """What the code of a label says."""
        return RedirectResponse(f"/shop/part/{quote(mark, safe='')}")

    @routes.get("/{name:path}")
    def front(name: str) -> Response:
        found = page.files.get(name) if "/" not in name else None
        if found is not None and found is not page.front:
            return Response(found.content, media_type=found.kind)
        # A phone opens the shop again without a signal; the news tell it when that page is old.
        keeps = _MONTH if name.partition("/")[0] == "shop" else "no-cache"
        return Response(front_page, media_type=page.front.kind, headers={"cache-control": keeps})

    return routes


def _missing(what: str) -> Response:
    body = Refusal(what=what, want="load the page again").model_dump_json()
    return Response(body, 404, media_type="application/json")
