"""A row that stands, levelled from the highest floor: how much goes under it, and where."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, total
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.survey.specs import Depth
from casewright.survey.walls import SurveyedWall

__all__ = ["FloorShim", "floor_shims"]


@dataclass(frozen=True, slots=True)
class FloorShim:
    """What goes under a row at one place.

    Parameters
    ----------
    at
        From the wall's left end [mm].
    depth
        At the wall, or where the fronts will be.
    shim
        From the floor up to the level of the highest floor [mm].
    says
        What stands there.
    """

    at: Dim
    depth: Depth
    shim: Dim
    says: str


_Read = list[tuple[Fraction, Dim]]


def floor_shims(
    numbers: Numbers, wall: SurveyedWall, places: Iterable[WallPlace]
) -> tuple[FloorShim, ...]:
    """Shims under the sides of the cases that stand, left to right.

    The floor is taken as straight from one reading to the next, and as level beyond the last.
    """
    highest = numbers.room.survey.floor
    if highest is None:
        return ()
    found: list[FloorShim] = []
    own = numbers.wall(wall.spec.key)
    edges = tuple(_edges(places))
    depths: tuple[Depth, Depth] = ("back", "front")
    for depth in depths:
        read = _floor(wall, depth)
        for n, (at, says) in enumerate(edges if read else (), start=1):
            shim = own.at("floor").let(f"shim_{depth}_{n}", _down_at(read, at.value) - highest)
            found.append(FloorShim(at, depth, shim, says))
    return tuple(found)


def _edges(places: Iterable[WallPlace]) -> Iterator[tuple[Dim, str]]:
    """Sides of the cases that stand; two that meet are one place."""
    edges: dict[Fraction, tuple[Dim, list[str]]] = {}
    for place in places:
        if not place.is_hung:
            for dim in (place.left, place.right):
                edges.setdefault(dim.value, (dim, []))[1].append(place.case.spec.title)
    for _, (dim, titles) in sorted(edges.items()):
        yield dim, " | ".join(titles)


def _floor(wall: SurveyedWall, depth: Depth) -> _Read:
    """Places along the wall and the floor below the level line there, left to right."""
    found: _Read = []
    for n, station in enumerate(wall.spec.stations, start=1):
        if station.depth != depth:
            continue
        down, up, whole = (wall.read.get(f"station_{n}.{w}") for w in ("down", "up", "whole"))
        if down is None and up is not None and whole is not None:
            down = whole - up
        if down is not None:
            found.append((station.along, down))
    return sorted(found, key=lambda row: row[0])


def _down_at(read: _Read, at: Fraction) -> Dim:
    """The floor below the level line at a place between two readings."""
    before = [row for row in read if row[0] <= at]
    after = [row for row in read if row[0] >= at]
    if not before or not after or before[-1][0] == after[0][0]:
        return (before[-1] if before else after[0])[1]
    (x0, d0), (x1, d1) = before[-1], after[0]
    share = (at - x0) / (x1 - x0)
    return total(d0 * (1 - share), d1 * share)
