"""Cases side by side."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Key, Line, LongLine, OneOrMore, Table
from casewright.job.tables.trims import CrownTable, LightRail, ScribeMouldingTable, ToeSkin
from casewright.room.specs import RunEnd

__all__ = ["RunTable", "SolvedTable"]

_Reading = Annotated[Length, Between("6", "600", "150", "15000")]

_Seam = Annotated[Length, Between("0", "600", "0", "15000")]

_Gap = Annotated[Length, Between("1/8", "30", "3", "760")]


class SolvedTable(Table):
    """An answer of `casewright layout` that was accepted, written by it.

    The widths hold until it is taken out or another answer is accepted; a new reading of the wall
    moves the fillers first.
    """

    widths: Annotated[dict[Key, Length], Field(min_length=1, max_length=60)]
    """Widths of the cases that have none of their own."""

    left_filler: Annotated[Length, Between("0", "12", "0", "300")] | None = None
    """Width of the left filler between two walls, unless the run says otherwise."""

    because: LongLine | None = None
    """What spoke for it."""


class RunTable(Table):
    """Cases side by side along a wall, left to right."""

    cases: Annotated[list[Key], Field(min_length=1, max_length=60)]
    """Keys of its cases, left to right, and of the appliances beside them."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    wall: Annotated[list[_Reading], Field(max_length=30), OneOrMore(_Reading)] = Field(
        default_factory=list
    )
    """Readings of the width between the two ends, low, middle and high; the least governs."""

    on: Key | None = None
    """The wall it stands on, by its name under [wall.NAME], from end to end: then the readings
    there count, instead of those here."""

    after: Key | None = None
    """On a wall: it begins at the right edge of this thing there, or of this case or appliance of
    another run there, not at the wall's end. Where the case moves, the run follows."""

    before: Key | None = None
    """On a wall: it ends at the left edge of this thing there, or of this case or appliance of
    another run: before = "pantry"."""

    centre: dict[Key, Key] = Field(default_factory=dict)
    """What is to stand on the middle of what: a case, and a thing on the wall or a case or an
    appliance of another run there, sink = "window", hood = "range". `casewright layout` goes by
    it; a run that is open at both ends stands so."""

    seams: dict[Key, _Seam] = Field(default_factory=dict)
    """Seams that are pinned: a case or an appliance, and how far its left side is to stand from
    the wall's left end, sink = 52. `casewright layout` goes by it."""

    order: Literal["free"] | None = None
    """If "free", `casewright layout` may put its cases and appliances in another order. Default:
    they stand as listed."""

    beside: dict[Key, Key] = Field(default_factory=dict)
    """What must stand beside what, where the order is free: dishwasher = "sink"."""

    proportions: dict[Key, Annotated[int, Field(ge=1, le=9)]] = Field(default_factory=dict)
    """How widths that are left open compare, pots = 3, bins = 2: three to two. `casewright layout`
    goes by it, as near as the marks of the tape and the other wishes let it."""

    over: Key | None = None
    """Another run on the same wall: seams here are best to stand on its seams."""

    solved: SolvedTable | None = None
    """An answer of `casewright layout` that was accepted."""

    left_filler: Annotated[Length, Between("0", "12", "0", "300")] | None = None
    """Width of the left filler between two walls; the rest goes to the right. Default: both
    alike."""

    left: RunEnd | None = None
    """What stands at the left end: a wall, or what it begins after, with a filler before it; in an
    inside corner the fronts of the run on the wall round it, with a filler that clears its doors
    and pulls; flush, against what it begins after without a filler; or nothing: then a row that
    is much shorter than its wall stands at its other end, with a usual filler at a wall there.
    Default: wall where there are readings, else open."""

    right: RunEnd | None = None
    """The same at the right end."""

    left_gap: Annotated[list[_Gap], Field(min_length=3, max_length=3)] | None = None
    """The gap at the left end as read beside the hung case: low, middle and high. The filler is
    cut for the widest."""

    right_gap: Annotated[list[_Gap], Field(min_length=3, max_length=3)] | None = None
    """The same at the right end."""

    one_lid: bool | None = None
    """Whether one lid lies over all its cases, which are window seats with lids of one kind.
    Default: false, each has its own."""

    toe_skin: ToeSkin | None = None
    """Thin sheet over its toe boards: true, or a table."""

    light_rail: LightRail | None = None
    """A strip under the front of its wall cases: true, or a table."""

    scribe_moulding: ScribeMouldingTable | None = None
    """Strips over the joints between its open ends and the wall behind."""

    crown: CrownTable | None = None
    """A crown over it, with backing and frieze."""
