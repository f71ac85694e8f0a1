"""`buy_list(room, breakdown)`: everything to buy, each with the sum that says how many."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import get_args

from casewright.breakdown import Breakdown
from casewright.buying.consumables import consumables
from casewright.buying.door_hardware import door_hardware
from casewright.buying.edges import edges
from casewright.buying.fasteners import fasteners
from casewright.buying.lids import lid_goods
from casewright.buying.line import Aisle, BuyLine
from casewright.buying.panes import films, panes
from casewright.buying.slides import slide_lines
from casewright.buying.stock_lines import stock_lines
from casewright.buying.wall import NOT_FOUND, AtStuds, wall_goods
from casewright.room.model import Room

__all__ = ["COLUMNS", "buy_list", "buy_rows", "room_lines"]

COLUMNS = (
    "aisle", "buy", "unit", "what", "need", "spare", "measure", "why", "note", "for",
)  # fmt: skip
"""Heads of `buy_rows`."""

_MEASURES = {"pieces": "pieces", "length": "mm", "volume": "ml"}


def buy_list(
    room: Room, breakdown: Breakdown, at_studs: AtStuds = NOT_FOUND
) -> tuple[BuyLine, ...]:
    """What to buy for a room, from the model and its cutting plans, aisle by aisle.

    Parameters
    ----------
    breakdown
        Of the same room: sheets and boards are counted on its plans.
    at_studs
        Wall screws of cases whose studs were found.
    """
    lines = [*stock_lines(room, breakdown), *room_lines(room, at_studs)]
    order = get_args(Aisle)
    return tuple(sorted(lines, key=lambda line: order.index(line.aisle)))


def room_lines(room: Room, at_studs: AtStuds = NOT_FOUND) -> Iterator[BuyLine]:
    """What is counted on the model alone: all but sheets and boards."""
    yield from edges(room)
    yield from panes(room)
    yield from films(room)
    yield from door_hardware(room)
    yield from lid_goods(room)
    yield from slide_lines(room)
    yield from fasteners(room)
    yield from wall_goods(room, at_studs)
    yield from consumables(room)


def buy_rows(lines: tuple[BuyLine, ...]) -> Iterator[tuple[str, ...]]:
    """The list as rows of text under `COLUMNS`; lengths in millimetres."""
    for line in lines:
        yield (
            line.aisle,
            str(line.count),
            line.unit,
            line.what,
            _amount(line.need),
            _amount(line.spare),
            _MEASURES[line.measure],
            line.why,
            line.note,
            " ".join(line.paths),
        )


def _amount(value: Fraction) -> str:
    """A number as a spreadsheet takes it: whole, else to a tenth, never as a ratio."""
    tenths = round(value * 10)
    return str(value) if value == int(value) else f"{tenths // 10}.{tenths % 10}"
