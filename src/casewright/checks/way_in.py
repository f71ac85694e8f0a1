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
from casewright.checks.words import reckoning
from casewright.dims import Dim, Way, joined, root, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room
from casewright.survey.specs import Passage

__all__ = ["RULE"]

_NAME = "way in"
_HANDS = Limit("way_in.hands", "1/2", "12", "room for hands on the clear width and height")


class _Size(NamedTuple):
    """A size of a bare box, and how a box of less of it is called."""

    size: Dim
    less: str

    @property
    def mm(self) -> Fraction:
        """The size [mm]."""
        return self.size.value


def _sizes(case: Case) -> tuple[_Size, _Size, _Size]:
    """Of the bare box, the least first."""
    sides = [part.finished.length for part in case.parts if part.role == "side"]
    high = max(sides, default=case.height, key=lambda dim: dim.value)
    least, middle, greatest = sorted(
        (_Size(case.width, "narrower"), _Size(high, "lower"), _Size(case.depth, "shallower")),
        key=lambda size: (size.mm, size.less),
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
                yield _cannot_turn(room, case, passage, sizes[-1])


def _opening(
    room: Room, passage: Passage, sizes: tuple[_Size, ...]
) -> tuple[tuple[_Size, Fraction], tuple[_Size, Fraction]]:
    """The two lesser sizes, each with what is free for it [mm]."""
    hands = _HANDS.of(room.spec.unit)
    way = room.survey.way_in
    free = sorted(way[f"{passage.key}.{name}"].value - hands for name in ("width", "height"))
    return (sizes[0], free[0]), (sizes[1], free[1])


def _free(room: Room, own: Reckoning, passage: Passage) -> tuple[Dim, Dim]:
    """Clear width and height of a door less room for hands, the lesser first [mm]."""
    hands, way = own.limit(_HANDS), room.survey.way_in
    free = (own.let(f"free_{n}", way[f"{passage.key}.{n}"] - hands) for n in ("width", "height"))
    one, other = sorted(free, key=lambda dim: dim.value)
    return one, other


def _stuck(room: Room, case: Case, passage: Passage, sizes: tuple[_Size, _Size, _Size]) -> Breach:
    own, way = reckoning(room, _NAME, f"{case.key}.{passage.key}"), room.survey.way_in
    wide, high = (own.length(way[f"{passage.key}.{n}"]) for n in ("width", "height"))
    taken = [own.length(size.size) for size in sizes[:2]]
    free = _free(room, own, passage)
    less = joined(" and ", (
        tell("{} {}", own.length(size.size - most, size.less), size.less)
        for size, most in zip(sizes, free, strict=False) if size.mm > most.value
    ))  # fmt: skip
    return Breach(
        case.key,
        tell(
            "{} does not come through {}: turned every way it takes {} by {}, and there is {} by "
            "{}",
            case.spec.title, passage.title, *taken, wide, high,
        ),
        measured=joined(" x ", taken),
        limit=joined(" x ", (wide, high)),
        remedies=(
            tell("a box {}", less),
            tell("two boxes: {} by {} go through, with a little for the hands",
                 *(own.length(most) for most in free)),
            "put it together in the room",
            "take the door off its hinges and its stops out, and read the width again",
        ),
        own=own,
    )  # fmt: skip


def _landing(room: Room, passage: Passage) -> Fraction | None:
    """From corner to corner of a landing, upright [mm], down; None: there is none to turn on."""
    landing = room.survey.way_in.get(f"{passage.key}.landing")
    if landing is None:
        return None
    high = room.survey.way_in[f"{passage.key}.height"].value
    return Fraction(math.isqrt(int((landing.value**2 + high**2) * 10_000)), 100)


def _cannot_turn(room: Room, case: Case, passage: Passage, longest: _Size) -> Breach:
    own, way = reckoning(room, _NAME, f"{case.key}.{passage.key}"), room.survey.way_in
    wide, high = way[f"{passage.key}.landing"], way[f"{passage.key}.height"]
    corner = root(wide * wide + high * high)
    long = own.length(longest.size)
    return Breach(
        case.key,
        tell(
            "{}, {} long, cannot be stood up on the landing of {}",
            case.spec.title, long, passage.title,
        ),
        measured=long.text,
        limit=own.about(corner, "corner", Way.DOWN).text,
        remedies=(
            tell(
                "a box {} {}",
                own.about(longest.size - corner, longest.less, Way.UP), longest.less,
            ),
            "two boxes, one on the other or side by side",
            "put it together in the room",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
