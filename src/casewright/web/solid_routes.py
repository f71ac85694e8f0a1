"""Requests for solids: the room, a case or a part as a glTF file."""

from __future__ import annotations

import threading
from typing import Annotated

from fastapi import APIRouter, Query
from starlette.responses import Response

from casewright.solids.room_solids import room_glb
from casewright.web.desk_routes import NoPageError
from casewright.web.schema import Short
from casewright.web.site import Site

__all__ = ["solid_routes"]


def solid_routes(site: Site) -> APIRouter:
    """Requests for solids; the last one made is kept."""
    routes = APIRouter(prefix="/api")
    lock = threading.Lock()
    kept: dict[tuple[int, str], bytes] = {}

    @routes.get("/solids", response_class=Response)
    def solids(of: Annotated[Short, Query()] = "") -> Response:
        """The room, or what has that key or path."""
        snapshot = site.snapshot()
        key = (snapshot.version, of)
        with lock:
            if key not in kept:
                found = room_glb(snapshot.worked.room, of)
                if found is None:
                    raise NoPageError(of)
                kept.clear()
                kept[key] = found
            return Response(kept[key], media_type="model/gltf-binary")

    return routes
