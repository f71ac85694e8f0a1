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
from casewright.checks.words import by_unit, reckoning
from casewright.dims import Dim, Given, Origin, Way, greatest, least, tell, total
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "bowl room"
_ROOT = Given(
    Fraction(math.sqrt(2)).limit_denominator(10**6), Origin("cited", "root of 2: plane geometry")
)
_AIR = Limit("bowl_room.air", "1/2", "13", "air all round a bowl, for its clips")
_FAR = Limit("bowl_room.far", "3", "75", "as far behind the rail as is easy to reach")
_MORE = {"width": "wider", "depth": "deeper"}
_LEAST = Fraction(200)
"""A bowl smaller than that is none [mm]."""


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.boxes:
        if case.spec.bowl is None:
            continue
        own = reckoning(room, _NAME, case.key)
        air = own.limit(_AIR)
        across, back = case.spec.bowl
        wide = own.given(f"{case.key}.bowl_width", across)
        deep = own.given(f"{case.key}.bowl_depth", back)
        bowl = _Bowl(case, own, wide, deep, air)
        if case.mouth is None:
            yield from _between_sides(bowl)
        else:
            yield from _across(room, bowl, _corner(case, own))


class _Bowl(NamedTuple):
    """A bowl in its case, and the air that it wants on each side [mm].

    `wide` and `deep` are its own [mm].
    """

    case: Case
    own: Reckoning
    wide: Dim
    deep: Dim
    air: Dim

    @property
    def wants(self) -> tuple[Dim, Dim]:
        """Across and from front to back, with its air [mm]."""
        return self.wide + 2 * self.air, self.deep + 2 * self.air


def _between_sides(bowl: _Bowl) -> Iterator[Breach]:
    case, own, air = bowl.case, bowl.own, bowl.air
    sides = [part for part in case.parts if part.role == "side"]
    clear = case.width - total(*(part.finished.thickness for part in sides))
    given = (("width", clear, bowl.wide), ("depth", _front(case) - _rear(case, own), bowl.deep))
    for word, room_for, size in given:
        if room_for.value >= size.value + 2 * air.value:
            continue
        left, asked = own.length(room_for - 2 * air, f"left_{word}"), own.length(size)
        more = own.length(size + 2 * air - room_for, f"more_{word}")
        yield Breach(
            f"{case.key}.{word}",
            tell(
                "{} leaves {} for a bowl of {} {}",
                case.spec.title, left, asked, "across" if word == "width" else "front to back",
            ),
            measured=left.text,
            limit=asked.text,
            remedies=(tell("a case {} {}", more, _MORE[word]), "a smaller bowl"),
            own=own,
        )  # fmt: skip


def _front(case: Case) -> Dim:
    """Case z of the back of what stands before the bowl [mm]."""
    front = [p for p in case.parts if p.path in (f"{case.key}.front_rail",)]
    planes = [extent(part, 2)[0] for part in front]
    planes += [extent(p, 2)[0] for p in case.parts if "frame.backer" in p.path]
    return least(*planes) if planes else case.depth


def _rear(case: Case, own: Reckoning) -> Dim:
    """How far the nailers stand out from the wall [mm]."""
    nailers = [part.finished.thickness for part in case.parts if part.role == "nailer"]
    return greatest(*nailers) if nailers else own.none


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
    root
        The root of 2 [-].
    """

    leg: Dim
    side: Dim
    rail: Dim
    block: Dim
    back: Dim
    thick: Dim
    rear: Dim
    root: Dim

    @property
    def before(self) -> Dim:
        """From the corner of the walls, square to the face, to the back of the rail [mm]."""
        return (self.leg + self.side) / self.root - self.rail

    def beside(self, wide: Dim) -> Dim:
        """How near the face a bowl so wide comes, clear of blocks and sides [mm].

        It ends beside the inner ends of the blocks, or behind them.
        """
        between = self.root * (self.leg - self.block) - wide / 2
        behind = (self.leg - self.block + self.side - self.back) / self.root
        return least(greatest(between, behind), self.root * (self.leg - self.thick) - wide / 2)

    def deepest(self, wide: Dim) -> Dim:
        """What lies between rail or blocks and nailers, so wide a bowl in the middle [mm]."""
        return least(self.before, self.beside(wide)) - self.root * self.rear - wide / 2

    def widest(self, deep: Dim) -> Dim:
        """How wide a bowl may be that is so deep [mm]."""
        far = self.root * self.rear + deep
        between = self.root * (self.leg - self.block) - far
        behind = (self.leg - self.block + self.side - self.back) * self.root - 2 * far
        sides = self.root * (self.leg - self.thick) - far
        return least(2 * (self.before - far), greatest(between, least(behind, sides)))

    def legs(self, wide: Dim, deep: Dim) -> Dim:
        """The least legs for that [mm]."""
        far = self.root * self.rear + wide / 2 + deep
        between = (far + wide / 2) / self.root + self.block
        behind = self.root * far + self.block - self.side + self.back
        sides = (far + wide / 2) / self.root + self.thick
        rail = self.root * (far + self.rail) - self.side
        return greatest(rail, least(between, greatest(behind, sides)))


def _corner(case: Case, own: Reckoning) -> _Corner:
    rail = next(part for part in case.parts if part.path == f"{case.key}.front_rail")
    block = next(part for part in case.parts if part.role == "corner block")
    side = next(part for part in case.parts if part.role == "side")
    back = block.finished.length
    return _Corner(
        own.let("leg", greatest(case.width, case.depth)), case.face_plane,
        own.let("rail", case.leaf_plane - rail.placed.z),
        own.let("block", back + side.finished.thickness), back, side.finished.thickness,
        _rear(case, own), own.given("root_of_2", _ROOT, 0),
    )  # fmt: skip


def _across(room: Room, bowl: _Bowl, corner: _Corner) -> Iterator[Breach]:
    own, air, (wide, deep) = bowl.own, bowl.air, bowl.wants
    left = corner.deepest(wide)
    if left.value >= deep.value:
        yield from _far_behind(room, bowl, corner)
        return
    step = by_unit(room, "1/4", "5")
    legs = own.rounded("legs", corner.legs(wide, deep), step, Way.UP)
    shallower = own.rounded("shallower", left - 2 * air, step, Way.DOWN)
    narrower = own.rounded("narrower", corner.widest(deep) - 2 * air, step, Way.DOWN)
    free = own.length(greatest(left - 2 * air, own.none), "free")
    across, asked = own.length(bowl.wide), own.length(bowl.deep)
    bowls = []
    if shallower.value >= _LEAST:
        bowls.append(tell("a bowl {} at most from front to back", own.length(shallower)))
    if narrower.value >= _LEAST:
        bowls.append(tell("a bowl {} at most across", own.length(narrower)))
    yield Breach(
        f"{bowl.case.key}.width",
        tell(
            "legs of {} leave {} from front to back for a bowl {} across, and it is {}: it would "
            "hang in the nailers",
            own.length(corner.leg), free, across, asked,
        ),
        measured=free.text,
        limit=asked.text,
        remedies=(tell("legs of {} or more", own.length(legs)), *bowls),
        own=own,
    )  # fmt: skip


def _far_behind(room: Room, bowl: _Bowl, corner: _Corner) -> Iterator[Breach]:
    own, (wide, _) = bowl.own, bowl.wants
    most, step = own.limit(_FAR), by_unit(room, "1/4", "5")
    behind = corner.before - corner.beside(wide)
    if behind.value <= most.value:
        return
    # Legs at which a bowl of no width reaches the rail.
    past = own.let("past", 2 * corner.block + corner.side)
    exact = past + corner.root * (wide / 2 - corner.rail - most)
    legs = own.length(own.rounded("legs", exact, step, Way.UP))
    fits = 2 * ((corner.leg - past) / corner.root + corner.rail + most)
    narrower = own.rounded("narrower", fits - 2 * bowl.air, step, Way.DOWN)
    ways: tuple[str, ...] = (tell("legs of {} or more", legs),)
    if narrower.value >= _LEAST:
        ways += (tell("a bowl {} at most across", own.length(narrower)),)
    told, limit = own.length(behind, "behind"), own.length(most)
    yield Breach(
        f"{bowl.case.key}.width",
        tell(
            "a bowl {} across goes in {} behind the rail of {}, clear of its corner blocks: far "
            "to reach",
            own.length(bowl.wide), told, bowl.case.spec.title,
        ),
        measured=told.text,
        limit=limit.text,
        remedies=ways,
        severity=Severity.CARE,
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
