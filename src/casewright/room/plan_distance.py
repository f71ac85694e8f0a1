"""How far two shapes are from each other in plan."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.room.open_fronts import meet
from casewright.room.wall_stands import Spot

__all__ = ["apart_squared"]


def apart_squared(one: Sequence[Spot], other: Sequence[Spot]) -> Fraction:
    """Square of the distance between two convex shapes, exactly; 0 where they meet [mm2].

    Parameters
    ----------
    one, other
        Corners in order; a single one is a place, which lies outside of the other.
    """
    if meet(one, other):
        return Fraction(0)
    return min(
        _to_line(spot, ends)
        for spots, shape in ((one, other), (other, one))
        for spot in spots
        for ends in _edges(shape)
    )


def _edges(shape: Sequence[Spot]) -> Iterator[tuple[Spot, Spot]]:
    for number, spot in enumerate(shape):
        yield shape[number - 1], spot


def _to_line(spot: Spot, ends: tuple[Spot, Spot]) -> Fraction:
    """Square of the distance of a place from a line between two others [mm2]."""
    (x, y), ((x0, y0), (x1, y1)) = spot, ends
    dx, dy = x1 - x0, y1 - y0
    long = dx * dx + dy * dy
    share = ((x - x0) * dx + (y - y0) * dy) / long if long else Fraction(0)
    share = min(max(share, Fraction(0)), Fraction(1))
    off_x, off_y = x0 + share * dx - x, y0 + share * dy - y
    return off_x * off_x + off_y * off_y
