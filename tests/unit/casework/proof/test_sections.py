"""Sections through a whole case against polygons drawn from its worked sizes with Shapely.

Sizes: the upper of 33 x 39 x 12 1/4 in from the trade constructions (common practice): 23/32
box stock, 7/32 back in rabbets 3/8 deep, horizontals 31 9/16 x 12 1/32, nailers 3 1/2 wide.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from shapely import Polygon, box, unary_union
from shapely.geometry.base import BaseGeometry
from tests.builders import INCH, one_case, plain_style

from casewright.casework.proof.assembled import Assembled

WIDE, DEEP = 33.0, 12.25
PLY, THIN, RABBET = 23 / 32, 7 / 32, 3 / 8


def _left_side() -> Polygon:
    """A side cut square to its length: its inner rear corner is rabbeted away."""
    inner = PLY - RABBET
    return Polygon([(0, 0), (inner, 0), (inner, THIN), (PLY, THIN), (PLY, DEEP), (0, DEEP)])


def _expected(height: float) -> BaseGeometry:
    """The section at a height above the bottom edge, plan view, inches."""
    left = _left_side()
    right = Polygon([(WIDE - x, z) for x, z in left.exterior.coords])
    shapes = [left, right, box(PLY - RABBET, 0, WIDE - PLY + RABBET, THIN)]
    if height < PLY or height > 39 - PLY:
        shapes.append(box(PLY, THIN, WIDE - PLY, DEEP))
    elif height < PLY + 3.5 or height > 39 - PLY - 3.5:
        shapes.append(box(PLY, THIN, WIDE - PLY, THIN + PLY))
    return unary_union(shapes)


@pytest.mark.parametrize("height", ["1/4", "2", "20", "36", "77/2"])
def test_section_of_an_upper_is_the_drawn_one(height: str) -> None:
    """Wherever the upper is cut level, its wood covers the polygon drawn from its sizes."""
    case = Assembled.of(one_case(style=plain_style(cut_step="0"), shelves=0))
    unit = case.units.per_mm * float(INCH)
    y = Fraction(height) * INCH * case.units.per_mm
    cut = [
        box(float(p.x0) / unit, float(p.z0) / unit, float(p.x1) / unit, float(p.z1) / unit)
        for solid in case.solids.values()
        for p in solid.pieces
        if p.y0 < y < p.y1
    ]
    expected = _expected(float(Fraction(height)))
    assert sum(shape.area for shape in cut) == pytest.approx(expected.area, rel=1e-12)
    assert unary_union(cut).symmetric_difference(expected).area == pytest.approx(0, abs=1e-9)
