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
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.door_fillers import doors_toward, filler_for_door
from casewright.room.model import Filler, Room, Run

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        for filler in run.fillers:
            doors = doors_toward(run.cases[0 if filler.side == "left" else -1], filler.side)
            if doors:
                yield from _judge(room, run, filler, doors)


def _judge(room: Room, run: Run, filler: Filler, doors: list[Door]) -> Iterator[Breach]:
    pull = room.spec.hardware.pull.projection.value
    out = room.spec.hardware.hinge.stand_off.value
    wide = filler.width.value
    case = run.cases[0 if filler.side == "left" else -1]
    need = filler_for_door(room.spec.hardware, room.spec.unit, case, doors[0], filler.side)
    if wide < need:
        yield Breach(
            doors[0].path,
            f"the {doors[0].title} does not open to a right angle: the filler beside it is "
            f"{length(room, wide)} wide; its pull stands out {length(room, pull)}, and the open "
            f"leaf {length(room, out)} by the hinge's sheet",
            measured=length(room, wide),
            limit=length(room, need),
            remedies=(
                f"a filler of {length(room, need)} or more",
                "the door hinged on its other side",
                f"a knob or a pull that stands out {length(room, pull - need + wide)} at most"
                if pull - need + wide > 0
                else "a door without a pull",
            ),
        )


RULE = Rule("door beside wall", Severity.CARE, __doc__ or "", "common practice", _examine)
