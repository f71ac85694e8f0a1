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
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import about, by_unit, length
from casewright.dims import Way
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.survey.specs import Passage

__all__ = ["RULE"]


class _Size(NamedTuple):
    """A size of a bare box [mm], and how a box of less of it is called."""

    mm: Fraction
    less: str


def _sizes(case: Case) -> tuple[_Size, _Size, _Size]:
    """Of the bare box, the least first."""
    sides = [part.finished.length.value for part in case.parts if part.role == "side"]
    high = max(sides, default=case.height.value)
    least, middle, greatest = sorted(
        (
            _Size(case.width.value, "narrower"),
            _Size(high, "lower"),
            _Size(case.depth.value, "shallower"),
        )
    )
    return least, middle, greatest


def _examine(room: Room) -> Iterator[Breach]:
    for passage in room.survey.spec.way_in:
        for case in room.boxes:
            sizes = _sizes(case)
            if any(size.mm > most for size, most in _opening(room, passage, sizes)):
                yield _stuck(room, case, passage, sizes)
                continue
            corner = _landing(room, passage)
            if corner is not None and sizes[-1].mm > corner:
                yield _cannot_turn(room, case, passage, sizes[-1], corner)


def _opening(
    room: Room, passage: Passage, sizes: tuple[_Size, ...]
) -> tuple[tuple[_Size, Fraction], tuple[_Size, Fraction]]:
    """The two lesser sizes, each with what is free for it [mm]."""
    hands = by_unit(room, "1/2", "12")
    way = room.survey.way_in
    free = sorted(way[f"{passage.key}.{name}"].value - hands for name in ("width", "height"))
    return (sizes[0], free[0]), (sizes[1], free[1])


def _stuck(room: Room, case: Case, passage: Passage, sizes: tuple[_Size, _Size, _Size]) -> Breach:
    way = room.survey.way_in
    wide, high = (length(room, way[f"{passage.key}.{n}"].value) for n in ("width", "height"))
    taken = " by ".join(length(room, size.mm) for size in sizes[:2])
    free = _opening(room, passage, sizes)
    less = " and ".join(
        f"{length(room, size.mm - most)} {size.less}" for size, most in free if size.mm > most
    )
    room_there = " by ".join(length(room, most) for _, most in free)
    return Breach(
        case.key,
        f"{case.spec.title} does not come through {passage.title}: turned every way it takes "
        f"{taken}, and there is {wide} by {high}",
        measured=taken.replace(" by ", " x "),
        limit=f"{wide} x {high}",
        remedies=(
            f"a box {less}",
            f"two boxes: {room_there} go through, with a little for the hands",
            "put it together in the room",
            "take the door off its hinges and its stops out, and read the width again",
        ),
    )


def _landing(room: Room, passage: Passage) -> Fraction | None:
    """From corner to corner of a landing, upright [mm], down; None: there is none to turn on."""
    landing = room.survey.way_in.get(f"{passage.key}.landing")
    if landing is None:
        return None
    high = room.survey.way_in[f"{passage.key}.height"].value
    return Fraction(math.isqrt(int((landing.value**2 + high**2) * 10_000)), 100)


def _cannot_turn(
    room: Room, case: Case, passage: Passage, longest: _Size, corner: Fraction
) -> Breach:
    less = about(room, float(longest.mm - corner), Way.UP)
    return Breach(
        case.key,
        f"{case.spec.title}, {length(room, longest.mm)} long, cannot be stood up on the landing "
        f"of {passage.title}",
        measured=length(room, longest.mm),
        limit=about(room, float(corner), Way.DOWN),
        remedies=(f"a box {less} {longest.less}",
                  "two boxes, one on the other or side by side",
                  "put it together in the room"),
    )  # fmt: skip


RULE = Rule("way in", Severity.CARE, __doc__ or "", "common practice", _examine)
