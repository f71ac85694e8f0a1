"""The application: every request that a page makes, put together."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable, Iterable
from contextlib import AbstractAsyncContextManager, asynccontextmanager, suppress
from pathlib import Path
from typing import Any

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException
from starlette.middleware.gzip import GZipMiddleware

from casewright.errors import CasewrightError
from casewright.job.reasons import NoSuchPathError
from casewright.job.splicing import EditError
from casewright.outputs.files import OutputError
from casewright.web.announcer import Announcer
from casewright.web.built_page import BuiltPage
from casewright.web.desk_routes import NoDrawingError, NoPageError, desk_routes
from casewright.web.devices import Devices
from casewright.web.edit_routes import edit_routes
from casewright.web.editing import Editor
from casewright.web.guard import Guard
from casewright.web.joining_routes import joining_routes
from casewright.web.layout_answers import NoLayoutError
from casewright.web.layout_routes import layout_routes
from casewright.web.live_job import LiveJob
from casewright.web.news_routes import news_routes
from casewright.web.packet_maker import PacketMaker
from casewright.web.packet_routes import packet_routes
from casewright.web.page_routes import page_routes
from casewright.web.schema import ProblemView, Refusal, Steps
from casewright.web.shop_routes import shop_routes
from casewright.web.site import Site
from casewright.web.snapshot import Standing
from casewright.web.solid_routes import solid_routes
from casewright.web.watching import watch

__all__ = ["application"]

_REFUSALS: dict[int | str, dict[str, Any]] = {
    404: {"model": Refusal},
    409: {"model": Refusal},
    422: {"model": Refusal},
}


def application(
    job: Path, page: BuiltPage, addresses: Iterable[str] = (), hosts: Iterable[str] = ()
) -> FastAPI:
    """The server of one job.

    Parameters
    ----------
    job
        The job file.
    page
        What a browser is sent.
    addresses
        Where other devices find it, to be shown on the desk's screen.
    hosts
        Names and addresses of this machine that it is served by, beside those of itself alone.
    """
    news = Announcer()

    def told(standing: Standing) -> None:
        news.tell("steps", Steps.of(standing, live.version).model_dump())

    live = LiveJob(job, told, lambda: news.tell("record", {}), lambda: news.tell("plan", {}))
    pages = next(iter(addresses), "")
    packets = PacketMaker(job, lambda: news.tell("packet", {}), pages)
    site = Site(live, Editor(live), news, Devices(), page, packets, tuple(addresses))
    app = FastAPI(
        title="Casewright", openapi_url=None, docs_url=None, redoc_url=None,
        lifespan=_lifespan(site), responses=_REFUSALS,
    )  # fmt: skip
    for routes in (
        desk_routes,
        edit_routes,
        layout_routes,
        packet_routes,
        news_routes,
        shop_routes,
        solid_routes,
        joining_routes,
        page_routes,
    ):
        app.include_router(routes(site))
    app.add_exception_handler(CasewrightError, _refuse)
    app.add_exception_handler(RequestValidationError, _malformed)
    app.add_exception_handler(HTTPException, _turned_away)
    app.add_middleware(GZipMiddleware, minimum_size=1000, compresslevel=6)
    app.add_middleware(Guard, devices=site.devices, hosts=tuple(hosts))
    app.state.site = site
    return app


def _lifespan(site: Site) -> Callable[[FastAPI], AbstractAsyncContextManager[None]]:
    @asynccontextmanager
    async def lifespan(_: FastAPI) -> AsyncIterator[None]:
        site.news.open()
        site.live.start()
        watcher = asyncio.create_task(watch(site.live.look))
        yield
        watcher.cancel()
        with suppress(asyncio.CancelledError):
            await watcher
        site.news.close()
        site.live.stop()

    return lifespan


async def _refuse(_: Request, error: Exception) -> JSONResponse:
    """An error that is told to a person, as data."""
    if not isinstance(error, CasewrightError):
        raise error
    problems = error.problems
    status = 409 if isinstance(error, EditError | OutputError) else 422
    missing = NoSuchPathError | NoDrawingError | NoPageError | NoLayoutError
    status = 404 if isinstance(error, missing) else status
    what = problems[0].what if len(problems) == 1 else str(error)
    refusal = Refusal(
        what=what,
        want=problems[0].want if len(problems) == 1 else "",
        problems=tuple(map(ProblemView.of, problems)),
    )
    return JSONResponse(refusal.model_dump(), status)


async def _malformed(_: Request, error: Exception) -> JSONResponse:
    """A request that is none of the page's."""
    if not isinstance(error, RequestValidationError):
        raise error
    said = [f"{'.'.join(map(str, each['loc']))}: {each['msg']}" for each in error.errors()[:5]]
    what = f"this request has no meaning: {'; '.join(said)}"
    return JSONResponse(Refusal(what=what, want="load the page again").model_dump(), 422)


async def _turned_away(_: Request, error: Exception) -> JSONResponse:
    """A request that nothing here is for, or whose body cannot be read."""
    if not isinstance(error, HTTPException):
        raise error
    what = f"this request has no meaning: {error.detail}"
    refusal = Refusal(what=what, want="load the page again")
    return JSONResponse(refusal.model_dump(), error.status_code, headers=error.headers)
