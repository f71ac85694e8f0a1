"""Requests of a device that joins, and of the desk that shows how."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Body, Request
from starlette.responses import JSONResponse

from casewright.web.guard import COOKIE, is_this_machine
from casewright.web.schema import Joining, Refusal, Short
from casewright.web.site import Site

__all__ = ["joining_routes"]

_YEAR_S = 365 * 24 * 3600


def joining_routes(site: Site) -> APIRouter:
    """Requests about joining."""
    routes = APIRouter(prefix="/api")

    @routes.get("/join")
    def joining(request: Request) -> Joining:
        """Where other devices find the job; the code only on this machine's own screen."""
        here = is_this_machine(request.client.host if request.client else "")
        joined = here or site.devices.knows(request.cookies.get(COOKIE))
        code = site.devices.code if here and site.addresses else ""
        return Joining(addresses=site.addresses if joined else (), code=code, joined=joined)

    @routes.post("/join")
    def join(code: Annotated[Short, Body(embed=True)]) -> JSONResponse:
        """Join with the code from the desk's screen."""
        key = site.devices.join(code)
        if key is None and site.devices.is_paused:
            want = "wait half a minute, then type the one that the desk shows now"
            refusal = Refusal(what="too many wrong codes were typed", want=want)
            return JSONResponse(refusal.model_dump(), 429)
        if key is None:
            want = "type the one that the desk shows now"
            return JSONResponse(Refusal(what="this is not the code", want=want).model_dump(), 403)
        answer = JSONResponse({"joined": True})
        answer.set_cookie(
            COOKIE, key, max_age=_YEAR_S, httponly=True, samesite="strict", secure=False
        )
        return answer

    return routes
