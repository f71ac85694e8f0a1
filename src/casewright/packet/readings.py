"""What is measured on the way, what it should be, and blanks to write on."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.dims import Dim, measure_of
from casewright.outputs.blocks import Block, Callout, Column, Heading, Row, Table
from casewright.outputs.inlines import Blank, Inline, Link, Rich, Strong
from casewright.room.model import Room

__all__ = ["BOXES", "OPENINGS", "STOCK", "reading_blocks"]

STOCK, BOXES, OPENINGS = "readings:stock", "readings:boxes", "readings:openings"
"""Anchors of the tables."""

_PLACES = 6  # readings of a thickness
_STOCK = (
    Column("Stock", share=3.0), Column("Planned as", share=1.2),
    *(Column(str(place), share=1.0) for place in range(1, _PLACES + 1)),
)  # fmt: skip
_BOXES = (
    Column("Case", share=2.0), Column("Within"), Column("Width", share=1.6),
    Column("Height", share=1.6), Column("Depth", share=1.6),
)  # fmt: skip
_OPENINGS = (
    Column("Case", share=2.0), Column("Within"), Column("Clear width", share=1.6),
    Column("Clear heights, from the bottom up", share=3.2),
)  # fmt: skip


def reading_blocks(room: Room) -> Iterator[Block]:
    """Tables of stock, of boxes and of openings; what to do when one is off."""
    yield Heading("Readings", 2)
    yield Heading(
        "Thickness in six places, spread over all its sheets or boards, before the first cut",
        3,
        STOCK,
    )
    yield Table(_STOCK, tuple(_stock_rows(room)), small=True)
    yield Heading(_boxes_title(room), 3, BOXES)
    yield Table(
        _BOXES,
        tuple(_box_row(case, room) for case in room.cases if case.spec.is_box or case.is_plinth),
        small=True,
    )
    openings = tuple(_opening_row(case, room) for case in room.boxes if case.fronts)
    if openings:
        yield Heading(
            "Each opening, before its doors and drawers are cut"
            if any(case.drawers for case in room.cases)
            else "Each opening, before its doors are cut",
            3,
            OPENINGS,
        )
        yield Table(_OPENINGS, openings, small=True)
    yield Callout(
        "measure first",
        "Stop. Stock: write all six readings in the job file, which takes their mean, and print "
        f"the packet again. {_off(room)}: put it right while that can be done, and cut nothing "
        "that belongs to it until it is.",
        "When one is off",
    )


def _boxes_title(room: Room) -> str:
    if len(room.cases) > 1:
        return "Each box, outside, as it stands clamped; the first one before the others"
    return "The box, outside, as it stands clamped"


def _off(room: Room) -> str:
    return "A box or an opening" if any(case.fronts for case in room.cases) else "A box"


def _stock_rows(room: Room) -> Iterator[Row]:
    for key in dict.fromkeys(part.stock for part in room.parts):
        dim = room.chain.nodes.get(f"stock.{key}.thickness")
        planned: Rich = "" if dim is None else measure_of(dim, room.spec.unit)
        blanks = tuple(Blank(12.5) for _ in range(_PLACES))
        yield Row((room.spec.stock[key].title, planned, *blanks))


def _box_row(case: Case, room: Room) -> Row:
    dims = (case.width, case.height, case.depth)
    return Row((_name(case), _within(case, room), *(_read(dim, room) for dim in dims)))


def _opening_row(case: Case, room: Room) -> Row:
    if case.frame is not None:
        return _frame_row(case, room)
    wide = room.chain.nodes.get(f"{case.key}.clear_width")
    heights: list[Inline] = []
    for clear in case.clear_heights:
        heights += ["    " if heights else "", *_read(clear.size, room)]
    width = _read(wide, room) if wide is not None else (Blank(),)
    return Row((_name(case), _within(case, room), width, tuple(heights)))


def _frame_row(case: Case, room: Room) -> Row:
    """The openings of a face frame: fronts and drawers go into these."""
    openings = () if case.frame is None else case.frame.openings
    heights: list[Inline] = []
    for _, _, tall in openings:
        heights += ["    " if heights else "", *_read(tall, room)]
    width = [item for _, wide, _ in openings[:1] for item in _read(wide, room)]
    return Row((_name(case), _within(case, room), tuple(width), tuple(heights)))


def _name(case: Case) -> Rich:
    return Link(case.spec.title, case.key)


def _within(case: Case, room: Room) -> Rich:
    return ("± ", measure_of(case.tolerance, room.spec.unit))


def _read(dim: Dim, room: Room) -> tuple[Inline, ...]:
    return (Strong(measure_of(dim, room.spec.unit)), "  ", Blank(15.0))
