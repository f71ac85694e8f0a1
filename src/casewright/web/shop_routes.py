"""Requests of the shop: the book of its cards, what the record says, entries for it."""

from __future__ import annotations

import gzip
from typing import Annotated

from fastapi import APIRouter, Body, Query, Request
from starlette.responses import Response

from casewright.web.desk_routes import NoDrawingError
from casewright.web.entries import MOST_ENTRIES, EntryDesk
from casewright.web.hand_plan import lies_of
from casewright.web.schema import EntryAnswer, EntryIn, Short
from casewright.web.shop_anew import gone_of, sheets_text
from casewright.web.shop_book import ShopShelf
from casewright.web.shop_drawings import ShopDrawings
from casewright.web.shop_now import NowReader, entries_about
from casewright.web.shop_schema import ShopAsked, ShopBook, ShopEntry, ShopNow, ShopRest
from casewright.web.site import Site

__all__ = ["shop_routes"]

_SVG = "image/svg+xml"


def shop_routes(site: Site) -> APIRouter:
    """Requests of the shop."""
    routes = APIRouter(prefix="/api")
    live = site.live
    shelf, drawings, reader = ShopShelf(live), ShopDrawings(), NowReader(live)
    _take_entries(routes, site)
    _plan_anew(routes, site)

    @routes.get("/shop", response_model=ShopBook)
    def book(request: Request, have: Annotated[Short, Query()] = "") -> Response:
        """The book of the shop; nothing where the page has it already."""
        bound = shelf.book(site.snapshot(at_least=1))
        if have == bound.stamp:
            return Response(status_code=204)
        return _packed(bound.packed, request)

    @routes.get("/shop/now")
    def now() -> ShopNow:
        """What the record says now."""
        snapshot = site.snapshot(at_least=1)
        return reader.now(snapshot.worked.room, snapshot.version)

    @routes.get("/shop/entries")
    def about(about: Annotated[Short, Query()] = "") -> tuple[ShopEntry, ...]:
        """What stands in the record about a thing, the newest first."""
        return entries_about(live, site.snapshot(at_least=1).worked.room, about)

    @routes.get("/shop/drawings/{name}", response_class=Response)
    def drawing(name: Short) -> Response:
        """A drawing that a card names, as SVG."""
        found = drawings.drawn(shelf.book(site.snapshot(at_least=1)), name)
        if found is None:
            raise NoDrawingError(name)
        return Response(found, media_type=_SVG)

    return routes


def _take_entries(routes: APIRouter, site: Site) -> None:
    """The request that writes."""

    def kept() -> int:
        site.news.tell("record", {})  # at once: nothing is worked out before others hear of it
        return site.live.look_again()

    desk = EntryDesk(site.live, kept)

    @routes.post("/entries")
    def entries(
        given: Annotated[list[EntryIn], Body(max_length=MOST_ENTRIES)],
    ) -> tuple[EntryAnswer, ...]:
        """Put entries into the record; sent twice, each is kept once."""
        return desk.take(site.snapshot(at_least=1), given)


def _plan_anew(routes: APIRouter, site: Site) -> None:
    """What was spoiled is laid out anew, with all that lies on sheets nobody has begun."""
    plans = site.live.plans

    @routes.get("/shop/rest")
    def rest() -> ShopRest:
        """What would be planned anew."""
        snapshot = site.snapshot()
        hand = plans.of(snapshot)
        kept, left = plans.rests(snapshot)[-1]
        room = snapshot.worked.room
        stocks = {f"plan.{part.stock}" for part in room.parts if part.path in left.lost}
        stays = {key for plan in kept for key in plan.sheets or () if key[0] in stocks}
        every = {lie.key for plan in hand.plans for _, lie in lies_of(plan) if lie.sheet >= 0}
        free = {key for key in every - stays if key[0] in stocks}
        return ShopRest(
            plan=hand.name,
            state=plans.state,
            gone=gone_of(room, left.lost),
            stays=sheets_text(room, hand.plans, sorted(stays)),
            anew=sheets_text(room, hand.plans, sorted(free)),
        )

    @routes.post("/shop/rest")
    def anew(asked: ShopAsked) -> ShopRest:
        """Plan the rest anew; news tell when it is done."""
        plans.begin_anew(site.snapshot(), asked.plan)
        return rest()


def _packed(content: bytes, request: Request) -> Response:
    """Content that is compressed already, as whoever asks can take it."""
    if "gzip" in request.headers.get("accept-encoding", ""):
        headers = {"content-encoding": "gzip", "vary": "Accept-Encoding"}
        return Response(content, media_type="application/json", headers=headers)
    return Response(gzip.decompress(content), media_type="application/json")
