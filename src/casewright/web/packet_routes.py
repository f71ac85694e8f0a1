"""Requests about the packet: to make it, and to fetch its files."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.responses import Response

from casewright.web.desk_routes import NoPageError
from casewright.web.schema import PacketView, Short
from casewright.web.site import Site

__all__ = ["packet_routes"]

_KINDS = {"pdf": "application/pdf", "csv": "text/csv; charset=utf-8"}


def packet_routes(site: Site) -> APIRouter:
    """Requests about the packet."""
    routes = APIRouter(prefix="/api")

    @routes.get("/packet")
    def packet() -> PacketView:
        """How far it has come."""
        state = site.packets.state
        return PacketView(
            stage=state.stage,
            fingerprint=state.fingerprint,
            files=tuple(sorted(state.files)),
            says=state.says,
        )

    @routes.post("/packet", status_code=202)
    def make() -> PacketView:
        """Make it anew."""
        site.packets.make()
        return packet()

    @routes.get("/packet/{name}", response_class=Response)
    def file(name: Short) -> Response:
        """One of its files."""
        content = site.packets.state.files.get(name)
        if content is None:
            raise NoPageError(name)
        kind = _KINDS.get(name.rpartition(".")[2], "application/octet-stream")
        saved = f'attachment; filename="{site.live.path.stem}-{name}"'
        shown = "inline" if kind == _KINDS["pdf"] else saved.encode("ascii", "replace").decode()
        return Response(content, media_type=kind, headers={"content-disposition": shown})

    return routes
