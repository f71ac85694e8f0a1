"""Bowls that do not hang in their sink base.

A bowl hangs between the sides of its case, behind the rail on edge that carries the false front
and before the nailers, and its clips are reached from below: half an inch all round it is kept
free. Across a diagonal corner the legs decide how much that is: the farther a bowl goes into the
corner, the narrower it has to be, since nailers run along both walls. There it hangs square to the
doors, in the middle; one too wide to go between the corner blocks hangs behind them, and more than
3 in (75 mm) behind the rail it is far to reach.

Passes
------
A bowl of 30 by 18 in in a sink base 36 in wide.

Fails
-----
One of 36 by 18 in there.

Sources
-------
`common practice`; across a corner, plane geometry. The sink's own sheet governs.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.dims import Way, round_to
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_ROOT = Fraction(math.sqrt(2)).limit_denominator(10**6)
_MORE = {"width": "wider", "depth": "deeper"}
_LEAST = Fraction(200)
"""A bowl smaller than that is none [mm]."""


def _examine(room: Room) -> Iterator[Breach]:
    air = by_unit(room, "1/2", "13")
    for case in room.boxes:
        if case.spec.bowl is None:
            continue
        wide, deep = (size.value + 2 * air for size in case.spec.bowl)
        if case.mouth is None:
            yield from _between_sides(room, case, (wide, deep), air)
        else:
            yield from _across(room, case, _corner(case), (wide, deep), air)


def _between_sides(
    room: Room, case: Case, wants: tuple[Fraction, Fraction], air: Fraction
) -> Iterator[Breach]:
    sides = [part for part in case.parts if part.role == "side"]
    clear = case.width.value - sum(part.finished.thickness.value for part in sides)
    deep = _front(case) - _rear(case)
    for word, room_for, want in (("width", clear, wants[0]), ("depth", deep, wants[1])):
        if room_for >= want:
            continue
        yield Breach(
            f"{case.key}.{word}",
            f"{case.spec.title} leaves {length(room, room_for - 2 * air)} for a bowl of "
            f"{length(room, want - 2 * air)} {'across' if word == 'width' else 'front to back'}",
            measured=length(room, room_for - 2 * air),
            limit=length(room, want - 2 * air),
            remedies=(
                f"a case {length(room, want - room_for)} {_MORE[word]}",
                "a smaller bowl",
            ),
        )


def _front(case: Case) -> Fraction:
    """Case z of the back of what stands before the bowl [mm]."""
    front = [p for p in case.parts if p.path in (f"{case.key}.front_rail",)]
    planes = [extent(part, 2)[0].value for part in front]
    planes += [extent(p, 2)[0].value for p in case.parts if "frame.backer" in p.path]
    return min(planes, default=case.depth.value)


def _rear(case: Case) -> Fraction:
    """How far the nailers stand out from the wall [mm]."""
    nailers = [part for part in case.parts if part.role == "nailer"]
    return max((part.finished.thickness.value for part in nailers), default=Fraction(0))


class _Corner(NamedTuple):
    """What bounds a bowl across a corner.

    Parameters
    ----------
    leg, side
        Of the case; depth of its return sides [mm].
    rail
        How far the back of the rail lies behind the face [mm].
    block, back
        How far a corner block reaches from the outside of its side, and back from the side's
        front [mm].
    thick
        Of a return side [mm].
    rear
        Nailers out from either wall [mm].
    """

    leg: Fraction
    side: Fraction
    rail: Fraction
    block: Fraction
    back: Fraction
    thick: Fraction
    rear: Fraction

    @property
    def before(self) -> Fraction:
        """From the corner of the walls, square to the face, to the back of the rail [mm]."""
        return (self.leg + self.side) / _ROOT - self.rail

    def beside(self, wide: Fraction) -> Fraction:
        """How near the face a bowl so wide comes, clear of blocks and sides [mm].

        It ends beside the inner ends of the blocks, or behind them.
        """
        between = _ROOT * (self.leg - self.block) - wide / 2
        behind = (self.leg - self.block + self.side - self.back) / _ROOT
        return min(max(between, behind), _ROOT * (self.leg - self.thick) - wide / 2)

    def deepest(self, wide: Fraction) -> Fraction:
        """What lies between rail or blocks and nailers, so wide a bowl in the middle [mm]."""
        return min(self.before, self.beside(wide)) - _ROOT * self.rear - wide / 2

    def widest(self, deep: Fraction) -> Fraction:
        """How wide a bowl may be that is so deep [mm]."""
        far = _ROOT * self.rear + deep
        between = _ROOT * (self.leg - self.block) - far
        behind = (self.leg - self.block + self.side - self.back) * _ROOT - 2 * far
        sides = _ROOT * (self.leg - self.thick) - far
        return min(2 * (self.before - far), max(between, min(behind, sides)))

    def legs(self, wide: Fraction, deep: Fraction) -> Fraction:
        """The least legs for that [mm]."""
        far = _ROOT * self.rear + wide / 2 + deep
        between = (far + wide / 2) / _ROOT + self.block
        behind = _ROOT * far + self.block - self.side + self.back
        sides = (far + wide / 2) / _ROOT + self.thick
        return max(_ROOT * (far + self.rail) - self.side, min(between, max(behind, sides)))


def _corner(case: Case) -> _Corner:
    rail = next(part for part in case.parts if part.path == f"{case.key}.front_rail")
    block = next(part for part in case.parts if part.role == "corner block")
    side = next(part for part in case.parts if part.role == "side")
    return _Corner(
        max(case.width.value, case.depth.value), case.face_plane.value,
        case.leaf_plane.value - rail.placed.z.value,
        block.finished.length.value + side.finished.thickness.value,
        block.finished.length.value, side.finished.thickness.value, _rear(case),
    )  # fmt: skip


def _across(
    room: Room, case: Case, corner: _Corner, wants: tuple[Fraction, Fraction], air: Fraction
) -> Iterator[Breach]:
    wide, deep = wants
    left = corner.deepest(wide)
    if left >= deep:
        yield from _far_behind(room, case, corner, wide, air)
        return
    step = by_unit(room, "1/4", "5")
    legs, _ = round_to(corner.legs(wide, deep), step, Way.UP)
    shallower, narrower = (
        round_to(most - 2 * air, step, Way.DOWN)[0] for most in (left, corner.widest(deep))
    )
    given = (length(room, wide - 2 * air), length(room, deep - 2 * air))
    free = length(room, max(left - 2 * air, Fraction(0)))
    bowls = []
    if shallower >= _LEAST:
        bowls.append(f"a bowl {length(room, shallower)} at most from front to back")
    if narrower >= _LEAST:
        bowls.append(f"a bowl {length(room, narrower)} at most across")
    yield Breach(
        f"{case.key}.width",
        f"legs of {length(room, corner.leg)} leave {free} from front to back for a bowl "
        f"{given[0]} across, and it is {given[1]}: it would hang in the nailers",
        measured=free,
        limit=given[1],
        remedies=(f"legs of {length(room, legs)} or more", *bowls),
    )


def _far_behind(
    room: Room, case: Case, corner: _Corner, wide: Fraction, air: Fraction
) -> Iterator[Breach]:
    most, step = by_unit(room, "3", "75"), by_unit(room, "1/4", "5")
    behind = corner.before - corner.beside(wide)
    if behind <= most:
        return
    past = 2 * corner.block + corner.side  # legs at which a bowl of no width reaches the rail
    legs, _ = round_to(past + _ROOT * (wide / 2 - corner.rail - most), step, Way.UP)
    fits = 2 * ((corner.leg - past) / _ROOT + corner.rail + most)
    narrower, _ = round_to(fits - 2 * air, step, Way.DOWN)
    ways: tuple[str, ...] = (f"legs of {length(room, legs)} or more",)
    if narrower >= _LEAST:
        ways += (f"a bowl {length(room, narrower)} at most across",)
    yield Breach(
        f"{case.key}.width",
        f"a bowl {length(room, wide - 2 * air)} across goes in {length(room, behind)} behind the "
        f"rail of {case.spec.title}, clear of its corner blocks: far to reach",
        measured=length(room, behind),
        limit=length(room, most),
        remedies=ways,
        severity=Severity.CARE,
    )


RULE = Rule("bowl room", Severity.STOP, __doc__ or "", "common practice", _examine)
