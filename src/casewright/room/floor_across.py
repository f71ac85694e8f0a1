"""Places on the floor that are measured from one wall, as seen from another, on a chain."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, NamedTuple

from casewright.dims import Chain, Dim, Origin, greatest, total
from casewright.room.aisles import Aisle
from casewright.room.footprints import Footprint
from casewright.room.model import Appliance, Room, Run
from casewright.room.style_numbers import style_number
from casewright.room.wall_stands import Spot, WallFrame, wall_frames

__all__ = ["FLOOR", "Axis", "FloorNumbers"]

FLOOR = "floor"
"""Under which numbers of the floor stand on the chain."""

Axis = Literal["along", "out"]
"""Of a wall, from its left end, or out into the room."""

_AXES: Mapping[Axis, int] = {"along": 0, "out": 1}
_WALL = Origin("chosen", "the wall itself")
_TURNED = Origin("made", "follows from the corners as read")


class _Term(NamedTuple):
    """A length that a place follows.

    Parameters
    ----------
    sign
        1 where it is added, -1 where it is taken away.
    by
        How far a step along it goes in the direction that is asked for [-].
    """

    sign: int
    by: Fraction
    word: str
    size: Dim


_DimSpot = tuple[Dim, Dim]
"""Along a wall and out from it [mm]."""


@dataclass(frozen=True, slots=True)
class FloorNumbers:
    """Shows what is across as numbers.

    Parameters
    ----------
    chain
        One that holds the room's numbers, to which those are added that it lacks.
    """

    room: Room
    chain: Chain
    _frames: Mapping[str, WallFrame] = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_frames", wall_frames(self.room.survey))

    def nearest(self, aisle: Aisle) -> Dim:
        """Where what is across comes nearest, in the measure of the wall of what stands free."""
        stand, shape = aisle.stand, aisle.across
        axis: Axis = "out" if aisle.way in ("near", "far") else "along"
        frame, by = self._frames[stand.wall], _AXES[axis]
        spots, there = self._corners(shape), frame.seen(aisle.ends[1])
        seen = [frame.seen(spot) for spot in shape.corners]
        for spot, place in zip(spots, seen, strict=True):
            if place[by] == there[by]:
                return self.seen(stand.wall, axis, shape.wall, spot)
        for number, place in enumerate(seen):
            share = _share(seen[number - 1], place, there)
            if share is not None:
                own, way = self.chain.place(FLOOR).at(stand.key), aisle.way
                one, other = (
                    own.let(f"{way}_{name}", self.seen(stand.wall, axis, shape.wall, spots[each]))
                    for name, each in (("corner", number - 1), ("next_corner", number))
                )
                return one + (other - one) * self._ratio(f"{stand.key}.{way}_share", share)
        msg = f"{shape.key} is not where it is said to be nearest"
        raise ValueError(msg)

    def seen(self, wall: str, axis: Axis, other: str, spot: _DimSpot) -> Dim:
        """A place that is measured from one wall, along another wall or out from that.

        Parameters
        ----------
        wall, axis
            By which it is seen.
        other, spot
            By which it is measured.
        """
        frame = self._frames[wall]
        scale = frame.cos * frame.cos + frame.sin * frame.sin
        x, y = frame.cos / scale, frame.sin / scale
        if axis == "out":
            x, y = y, -x
        terms = [
            _Term(sign, self._turned(each, "along", (x, y)), f"{each}.along", self._width(each))
            for each, sign in self._between(wall, other)
        ]
        for way, size in zip(_AXES, spot, strict=True):
            by = self._turned(other, way, (x, y))
            terms.append(_Term(1, by, f"{other}.{way}", size))
        return self._sum(f"{wall}.{axis}.", terms)

    def _sum(self, name: str, terms: list[_Term]) -> Dim:
        """Lengths, each as often as it lies in a direction."""
        adds: list[Dim] = []
        takes: list[Dim] = []
        for sign, by, word, size in terms:
            if not by or not size.value:
                continue
            is_square = abs(by) == 1
            part = size if is_square else size * self._ratio(f"{name}{word}", by)
            is_added = (sign * by > 0) if is_square else sign > 0
            (adds if is_added else takes).append(part)
        found = _total(adds) if adds else self._zero
        return found - _total(takes) if takes else found

    @property
    def _zero(self) -> Dim:
        known = self.chain.nodes.get(f"{FLOOR}.wall")
        return known or self.chain.place(FLOOR).enter("wall", Fraction(0), _WALL)

    def _ratio(self, name: str, value: Fraction) -> Dim:
        path = f"{FLOOR}.{name}"
        known = self.chain.nodes.get(path)
        if known is not None:
            return known
        ratio = Dim("", (), value, 0)
        ratio.origin = _TURNED
        return self.chain.register(path, ratio)

    def _turned(self, wall: str, axis: Axis, by: Spot) -> Fraction:
        """How far a step along a wall, or out from it, goes in a direction [-]."""
        frame = self._frames[wall]
        x, y = (frame.cos, frame.sin) if axis == "along" else (frame.sin, -frame.cos)
        return x * by[0] + y * by[1]

    def _between(self, wall: str, other: str) -> Iterator[tuple[str, int]]:
        """Walls that lie between the left ends of two, joined one to the next."""
        order = list(self._frames)  # as they are joined, left to right
        one, two = order.index(wall), order.index(other)
        sign = 1 if one < two else -1
        for key in order[min(one, two) : max(one, two)]:
            yield key, sign

    def _width(self, wall: str) -> Dim:
        width = self.room.survey.walls[wall].width
        if width is None:
            msg = f"nothing is measured over {wall}, whose width is not known"
            raise ValueError(msg)  # `joined_walls` was asked first
        return width

    def _corners(self, shape: Footprint) -> tuple[_DimSpot, ...]:
        """Corners of what takes up floor, by the wall that it is measured from, in their order."""
        left, right, near, far = self._edges(shape)
        return (left, near), (right, near), (right, far), (left, far)

    def _edges(self, shape: Footprint) -> tuple[Dim, Dim, Dim, Dim]:
        zero = self._zero
        if shape.kind == "wall":
            return zero, self._width(shape.wall), zero, zero
        for stand in self.room.free:
            if stand.key == shape.key:
                return stand.counter
        for run in self.room.runs:
            for case, start in zip(run.cases, run.starts, strict=True):
                if case.key == shape.key:
                    left = _total([run.begins, start])
                    return left, left + case.overall_width, zero, self._reach(run, case.key)
            for each in run.appliances:
                if f"appliance.{each.spec.key}" == shape.key:
                    left = _total([run.begins, each.start])
                    return left, left + each.width, zero, self._depth(run, each)
        return self._thing(shape)

    def _reach(self, run: Run, *keys: str) -> Dim:
        """How far out cases reach at the deepest, doors and the counters on them included."""
        reach = []
        for case in run.cases:
            if case.key in keys:
                deep = case.overall_depth
                if case.spec.kind == "base" and case.spec.lid is None:
                    deep += style_number(self.room, self.chain, "island_front_overhang")
                reach.append(deep)
        return greatest(*reach) if len(reach) > 1 else reach[0]

    def _depth(self, run: Run, each: Appliance) -> Dim:
        if each.spec.depth is None:
            return self._reach(run, *(case.key for case in run.cases))
        path = f"{FLOOR}.appliance.{each.spec.key}.depth"
        known = self.chain.nodes.get(path)
        place = self.chain.place(f"{FLOOR}.appliance.{each.spec.key}")
        return known or place.given("depth", each.spec.depth)

    def _thing(self, shape: Footprint) -> tuple[Dim, Dim, Dim, Dim]:
        wall = self.room.survey.walls[shape.wall]
        thing = next(each for each in wall.things if each.spec.key == shape.key)
        if thing.left is None or thing.right is None or thing.spec.out is None:
            msg = f"{shape.key} takes up no floor that is known"
            raise ValueError(msg)
        out = wall.at[f"fixed.{shape.key}.out"]
        return thing.left, thing.right, self._zero, out


def _share(before: Spot, after: Spot, there: Spot) -> Fraction | None:
    """How far from one corner to the next a place lies; None where it is not between them."""
    (x0, y0), (x1, y1), (x, y) = before, after, there
    by = 0 if x0 != x1 else 1
    low, high, at = (x0, x1, x) if by == 0 else (y0, y1, y)
    if low == high:
        return None
    share = (at - low) / (high - low)
    on_line = x0 + share * (x1 - x0) == x and y0 + share * (y1 - y0) == y
    return share if on_line and 0 <= share <= 1 else None


def _total(sizes: list[Dim]) -> Dim:
    """A sum of lengths without those that are nothing and have no name."""
    there = [size for size in sizes if size.value or size.path] or sizes[:1]
    return total(*there) if len(there) > 1 else there[0]
