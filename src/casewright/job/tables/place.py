"""The place on the floor of an island, or of a case that is in no run."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Key, LongLine, OneOrMore, Table

__all__ = ["IslandSolvedTable", "PlaceTable"]

_Off = Annotated[Length, Between("0", "480", "0", "12000")]


class PlaceTable(Table):
    """Where an island, or a case in no run, stands: so far off a wall or a run, so far along it.

    Distances go to the edges of the counter of an island, which stands out beyond its doors.
    """

    wall: Key | None = None
    """The wall it is measured from, by its name under [wall.NAME]."""

    run: Key | None = None
    """Instead of a wall: the run it is measured from, which stands on a surveyed wall. Its deepest
    place counts, doors and counter included."""

    off: Annotated[list[_Off], Field(min_length=1, max_length=2), OneOrMore(_Off)] | None = None
    """How far off it stands from that wall or run: the aisle between them. Two numbers are the
    least and the greatest that `casewright layout` may choose from. Default: laid out, with the
    aisle that planning guidelines ask for."""

    along: _Off | None = None
    """From the left end of the wall to its left edge, as seen by who faces the wall. Default: laid
    out, unless it has a centre."""

    centre: Key | None = None
    """What its middle is to stand before: a case, an appliance or a thing on that wall."""

    side: Literal["front", "back", "left", "right"] | None = None
    """Which side of it looks to that wall. Default: the front of an island, the back of a case."""

    floor: (
        Annotated[
            list[Annotated[Length, Between("1", "120", "25", "3000")]],
            Field(min_length=4, max_length=4),
        ]
        | None
    ) = None
    """From the level line down to the floor at its four corners: nearest the wall at the left and
    at the right, then farthest at the right and at the left."""


class IslandSolvedTable(Table):
    """An answer of `casewright layout` that was accepted, written by it."""

    off: _Off
    """How far off it stands, unless its place says so."""

    along: _Off
    """How far along the wall, unless its place says so."""

    side: Literal["front", "back", "left", "right"] | None = None
    """Which side of it looks to the wall, unless its place says so."""

    widths: dict[Key, Length] = Field(default_factory=dict, max_length=60)
    """Widths of the cases that have none of their own."""

    because: LongLine | None = None
    """What spoke for it."""
