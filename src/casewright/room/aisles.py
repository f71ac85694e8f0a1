"""Aisles round what stands free: how much floor each side of it leaves, and up to what."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.room.floor_spec import FloorSide
from casewright.room.footprints import Footprint, footprints
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.room.wall_stands import Spot, WallFrame, joined_walls, wall_frames

__all__ = ["Aisle", "AisleWay", "aisles", "own_side", "own_sides", "reach_from", "reach_into"]

AisleWay = Literal["near", "far", "left", "right"]
"""Seen from the wall that a thing is measured from: toward it, away from it, to either hand."""

_WAYS: tuple[AisleWay, ...] = ("near", "far", "left", "right")
_OWN: Mapping[FloorSide, tuple[FloorSide, FloorSide, FloorSide, FloorSide]] = {
    "front": ("front", "back", "right", "left"),
    "back": ("back", "front", "left", "right"),
    "left": ("left", "right", "front", "back"),
    "right": ("right", "left", "back", "front"),
}
"""By what looks to the wall: which sides look near, far, left and right."""


@dataclass(frozen=True, slots=True)
class Aisle:
    """Floor between one side of what stands free and the nearest thing across.

    Parameters
    ----------
    way
        Seen from the wall that it is measured from.
    own
        The side of the thing itself that lies there.
    clear
        From counter to counter, front or wall; below 0 where they overlap [mm].
    across
        What is nearest.
    ends
        Where it is narrowest: at the thing, and across [mm in plan].
    """

    stand: FreeStand
    way: AisleWay
    own: FloorSide
    clear: Fraction
    across: Footprint
    ends: tuple[Spot, Spot]


def own_sides(side: FloorSide) -> tuple[FloorSide, FloorSide, FloorSide, FloorSide]:
    """Which of its own sides lie near, far, left and right where one looks to the wall."""
    return _OWN[side]


def own_side(stand: FreeStand, way: AisleWay) -> FloorSide:
    """Which of its own sides lies there."""
    return _OWN[stand.side][_WAYS.index(way)]


def aisles(room: Room) -> tuple[Aisle, ...]:
    """Every side of everything that stands free, where something is across."""
    if not room.free:
        return ()
    frames, all_of_it = wall_frames(room.survey), footprints(room)
    found = []
    for stand in room.free:
        near = joined_walls(room.survey, stand.wall)
        there = [each for each in all_of_it if each.wall in near]
        for way in _WAYS:
            aisle = _aisle(stand, way, frames[stand.wall], there)
            found += [aisle] if aisle is not None else []
    return tuple(found)


def _aisle(
    stand: FreeStand, way: AisleWay, frame: WallFrame, others: Sequence[Footprint]
) -> Aisle | None:
    found: tuple[Fraction, Fraction, Footprint] | None = None
    left, right, near, far = (edge.value for edge in stand.counter)
    middle = (left + right if way in ("near", "far") else near + far) / 2
    for other in others:
        if other.key == stand.key:
            continue
        reach = reach_into(stand, way, tuple(frame.seen(spot) for spot in other.corners))
        if reach is None:
            continue
        rank = (reach[0], abs(reach[1] - middle))
        if found is None or rank < (found[0], abs(found[1] - middle)):
            found = (*reach, other)
    if found is None:
        return None
    clear, at, other = found
    ends = {
        "near": ((at, near), (at, near - clear)), "far": ((at, far), (at, far + clear)),
        "left": ((left, at), (left - clear, at)), "right": ((right, at), (right + clear, at)),
    }[way]  # fmt: skip
    one, across = (frame.at(*end) for end in ends)
    return Aisle(stand, way, own_side(stand, way), clear, other, (one, across))


def reach_into(
    stand: FreeStand, way: AisleWay, corners: Sequence[Spot]
) -> tuple[Fraction, Fraction] | None:
    """How far a side is from a shape before it, and where along that side it comes nearest.

    Of several such places the one nearest the side's middle.

    Parameters
    ----------
    corners
        Of a convex shape, along the wall that the thing is measured from, and out from it.

    Returns
    -------
    None where the shape is not before that side.
    """
    left, right, near, far = (edge.value for edge in stand.counter)
    return reach_from((left, right, near, far), way, corners)


def reach_from(
    edges: tuple[Fraction, Fraction, Fraction, Fraction], way: AisleWay, corners: Sequence[Spot]
) -> tuple[Fraction, Fraction] | None:
    """`reach_into` from a rectangle: its left, right, near and far edge [mm]."""
    left, right, near, far = edges
    across = way in ("near", "far")
    low, high = (left, right) if across else (near, far)
    here = {"near": near, "far": far, "left": left, "right": right}[way]
    sign = 1 if way in ("far", "right") else -1
    middle, along = (near + far) / 2, (left + right) / 2
    if not across:
        middle, along = along, middle
    turned = [(x, z) if across else (z, x) for x, z in corners]
    cut = list(_between(turned, low, high))
    if not cut or not _is_before(cut, middle, sign):
        return None
    nearest = min(sign * v for _, v in cut)
    places = [u for u, v in cut if sign * v == nearest]
    return nearest - sign * here, max(min(places), min(max(places), along))


def _is_before(cut: Sequence[Spot], middle: Fraction, sign: int) -> bool:
    """Whether the shape lies on that hand of the thing's middle line."""
    return sum((v for _, v in cut), Fraction(0)) * sign > middle * len(cut) * sign


def _between(corners: Sequence[Spot], low: Fraction, high: Fraction) -> Sequence[Spot]:
    """A convex shape cut off at two upright lines, so that some of it lies between them."""
    if max(u for u, _ in corners) <= low or min(u for u, _ in corners) >= high:
        return ()
    right_of = list(_cut(corners, low, 1))
    return list(_cut(right_of, high, -1)) if right_of else ()


def _cut(corners: Sequence[Spot], at: Fraction, sign: int) -> Iterator[Spot]:
    """What lies right of an upright line, or left of it."""
    for number, (u, v) in enumerate(corners):
        before = corners[number - 1]
        inside, was_inside = sign * (u - at) >= 0, sign * (before[0] - at) >= 0
        if inside != was_inside:
            share = (at - before[0]) / (u - before[0])
            yield at, before[1] + share * (v - before[1])
        if inside:
            yield u, v
