"""Requests of the shop: entries for the record, and what a station shows."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Body

from casewright.web.entries import MOST_ENTRIES, take_entries
from casewright.web.schema import EntryAnswer, EntryIn
from casewright.web.site import Site

__all__ = ["shop_routes"]


def shop_routes(site: Site) -> APIRouter:
    """Requests of the shop."""
    routes = APIRouter(prefix="/api")

    @routes.post("/entries")
    def entries(
        given: Annotated[list[EntryIn], Body(max_length=MOST_ENTRIES)],
    ) -> tuple[EntryAnswer, ...]:
        """Put entries into the record; sent twice, each is kept once."""
        answers = take_entries(site.snapshot(at_least=1), site.live.path, given)
        if any(answer.became == "kept" for answer in answers):
            site.live.look_again()
        return answers

    return routes
