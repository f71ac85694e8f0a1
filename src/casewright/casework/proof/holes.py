"""Holes as circles with a depth, pockets as boxes, in part axes and whole units."""

from __future__ import annotations

from typing import NamedTuple

from casewright.casework.features import Bores
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import Units
from casewright.geometry import Box

__all__ = ["Hole", "Row", "circle_meets", "pocket_box", "row_of"]

# A pocket meets the face at 15 degrees (common practice), so that its mouth is longer than it
# is wide by 1 / sin 15 = 3.8637 at most.
_MOUTH = (3864, 1000)


class Hole(NamedTuple):
    """One hole: centre along length and width, radius, from where to where in the thickness."""

    length: int
    width: int
    radius: int
    low: int
    high: int


class Row(NamedTuple):
    """One set of bores.

    Parameters
    ----------
    bores
        The feature.
    holes
        In the order of its places.
    box
        Encloses them all, in part axes. A pocket is enclosed with its mouth, right through.
    """

    bores: Bores
    holes: tuple[Hole, ...]
    box: Box


def row_of(solid: Solid, bores: Bores, units: Units) -> Row:
    """The bores of one feature in its part."""
    length, width, thickness = solid.size
    of = units.of
    radius = of(bores.diameter) // 2
    depth = thickness if bores.depth is None else of(bores.depth)
    low, high = (thickness - depth, thickness) if bores.face == "A" else (0, depth)
    far_l, far_w = bores.datum_l == "l1", bores.datum_w == "w1"
    holes = tuple(
        Hole(
            length - of(along) if far_l else of(along),
            width - of(across) if far_w else of(across),
            radius, low, high,
        )
        for along, across in bores.places
    )  # fmt: skip
    reach = _reach(radius) if bores.kind == "pocket" else radius
    along = [hole.length for hole in holes]
    across = [hole.width for hole in holes]
    by_l, by_w = (reach, radius) if bores.toward in ("l0", "l1") else (radius, reach)
    box = Box(
        min(along) - by_l, max(along) + by_l, min(across) - by_w, max(across) + by_w, low, high
    )
    return Row(bores, holes, box)


def _reach(radius: int) -> int:
    """Half the length of a pocket's mouth, rounded up."""
    return -(-radius * _MOUTH[0] // _MOUTH[1])


def pocket_box(row: Row, hole: Hole, size: tuple[int, int, int]) -> Box:
    """What one pocket takes up at the most, from its mouth to the end it leaves."""
    radius = hole.radius
    reach = _reach(radius)
    length, width, thickness = size
    match row.bores.toward:
        case "l0":
            spans = (0, hole.length + reach, hole.width - radius, hole.width + radius)
        case "l1":
            spans = (hole.length - reach, length, hole.width - radius, hole.width + radius)
        case "w0":
            spans = (hole.length - radius, hole.length + radius, 0, hole.width + reach)
        case _:
            spans = (hole.length - radius, hole.length + radius, hole.width - reach, width)
    return Box(*spans, 0, thickness)


def circle_meets(hole: Hole, box: Box) -> bool:
    """Whether a round hole takes anything from a box."""
    if hole.high <= box.z0 or box.z1 <= hole.low:
        return False
    off_l = max(box.x0 - hole.length, 0, hole.length - box.x1)
    off_w = max(box.y0 - hole.width, 0, hole.width - box.y1)
    return off_l * off_l + off_w * off_w < hole.radius * hole.radius
