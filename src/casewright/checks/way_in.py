"""Boxes that do not come through the door.

A box passes a door when two of its three sizes do, with a little room for hands. Doors, plinths of
their own and shelves come off first, so the bare box counts. On a stair with a turn it must be
stood up on the landing besides.

Passes
------
A box 36 wide, 34 1/2 high and 24 deep through a door of 31 1/2 by 79.

Fails
-----
A box 60 wide, 40 high and 34 deep through the same door.

Sources
-------
`common practice`: 1/2 in, or 12 mm, of room on the clear width and height.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.survey.specs import Passage

__all__ = ["RULE"]


def _sizes(case: Case) -> tuple[Fraction, Fraction, Fraction]:
    """Of the bare box, the least first [mm]."""
    sides = [part.finished.length.value for part in case.parts if part.role == "side"]
    high = max(sides, default=case.height.value)
    least, middle, greatest = sorted((case.width.value, high, case.depth.value))
    return least, middle, greatest


def _examine(room: Room) -> Iterator[Breach]:
    room_for_hands = by_unit(room, "1/2", "12")
    for passage in room.survey.spec.way_in:
        wide, high = (
            room.survey.way_in[f"{passage.key}.{name}"].value - room_for_hands
            for name in ("width", "height")
        )
        for case in room.boxes:
            least, middle, greatest = _sizes(case)
            if least > min(wide, high) or middle > max(wide, high):
                yield _stuck(room, case, passage, (least, middle))
            elif _cannot_turn(room, passage, greatest):
                yield Breach(
                    case.key,
                    f"{case.spec.title}, {length(room, greatest)} long, cannot be stood up on the "
                    f"landing of {passage.title}",
                    measured=length(room, greatest),
                    remedies=("build it as two boxes, one on the other or side by side",),
                )


def _stuck(room: Room, case: Case, passage: Passage, sizes: tuple[Fraction, Fraction]) -> Breach:
    least, middle = (length(room, each) for each in sizes)
    way = room.survey.way_in
    wide, high = (length(room, way[f"{passage.key}.{n}"].value) for n in ("width", "height"))
    return Breach(
        case.key,
        f"{case.spec.title} does not come through {passage.title}: turned every way it takes "
        f"{least} by {middle}, and there is {wide} by {high}",
        measured=f"{least} x {middle}",
        limit=f"{wide} x {high}",
        remedies=(
            "build it as two boxes", "put it together in the room",
            "take the door off its hinges and its stops out, and read the width again",
        ),
    )  # fmt: skip


def _cannot_turn(room: Room, passage: Passage, longest: Fraction) -> bool:
    """Whether a box is longer than the landing is from corner to corner, upright."""
    landing = room.survey.way_in.get(f"{passage.key}.landing")
    if landing is None:
        return False
    high = room.survey.way_in[f"{passage.key}.height"].value
    return float(longest) > math.hypot(float(landing.value), float(high))


RULE = Rule("way in", Severity.CARE, __doc__ or "", "common practice", _examine)
