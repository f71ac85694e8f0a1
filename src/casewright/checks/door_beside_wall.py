"""Doors hinged beside a wall that cannot open to a right angle.

An open door stands across the end of its case, and its pull points at the wall. The filler must
be as wide as the pull stands out, and a little more. How far the open leaf itself stands out past
its closed edge is the hinge's own affair: the sheet in its box tells (`stand_off`).

Passes
------
A filler of 1 1/2 beside a door with a pull that stands out 30 mm.

Fails
-----
A filler of 3/4 there.

Sources
-------
`common practice`: the projection of the pull, what the hinge asks for, and 1/8 in, or 3 mm.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Door
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import hinge_of, pull_of, reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.door_fillers import doors_toward, filler_for_door
from casewright.room.model import Filler, Room, Run

__all__ = ["RULE"]

_NAME = "door beside wall"
_AIR = Limit("door_beside_wall.air", "1/8", "3", "air beside an open door and its pull")


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        for filler in run.fillers:
            doors = doors_toward(run.cases[0 if filler.side == "left" else -1], filler.side)
            if doors:
                yield from _judge(room, run, filler, doors)


def _judge(room: Room, run: Run, filler: Filler, doors: list[Door]) -> Iterator[Breach]:
    case, door = run.cases[0 if filler.side == "left" else -1], doors[0]
    hardware, unit = room.spec.hardware, room.spec.unit
    if filler.width.value >= filler_for_door(hardware, unit, case, door, filler.side):
        return
    own = reckoning(room, _NAME, door.path)
    pull, out = pull_of(room, own, "projection"), hinge_of(room, own, "stand_off")
    bare = door.x if filler.side == "left" else case.width - door.x - door.width
    need = own.let("filler", pull + out + own.limit(_AIR) - bare)
    flat, wide, asked = pull - need + filler.width, own.length(filler.width), own.length(need)
    yield Breach(
        door.path,
        tell(
            "the {} does not open to a right angle: the filler beside it is {} wide; its pull "
            "stands out {}, and the open leaf {} by the hinge's sheet",
            door.title, wide, own.length(pull), own.length(out),
        ),
        measured=wide.text,
        limit=asked.text,
        remedies=(
            tell("a filler of {} or more", asked),
            "the door hinged on its other side",
            tell("a knob or a pull that stands out {} at most", own.length(flat, "pull"))
            if flat.value > 0
            else "a door without a pull",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
