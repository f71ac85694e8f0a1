"""Sections through doors: what is left of a stile beside its groove or rebate, true to size."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import APPLIED, GLASS, MITRED, PANEL, length, one_case

from casewright.casework.specs import FrontSpec
from casewright.drawing.dimension import Dimensions
from casewright.drawing.door_section import door_section_scene
from casewright.drawing.shapes import Polyline


def _area(outline: Polyline) -> Fraction:
    """Area of a polygon by the shoelace formula [mm2]."""
    points = [(Fraction(x), Fraction(y)) for x, y in outline.points]
    turned = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum((a[0] * b[1] - b[0] * a[1] for a, b in turned), Fraction(0))) / 2


@pytest.mark.parametrize(
    ("front", "taken", "told"),
    [
        # 2 1/2 x 3/4 less a groove 13/32 deep, as wide as a panel of 7/32 and 1/200
        (PANEL, length("13/32") * (length("7/32") + length("1/200")), {"13/32", "1/4"}),
        (MITRED, length("13/32") * (length("7/32") + length("1/200")), {"13/32", "1/4"}),
        # less a rebate 3/8 wide and 1/4 deep: a pane of 1/8 and its retainers
        (GLASS, length("3/8") * length("1/4"), {"3/8", "1/4"}),
        (APPLIED, Fraction(0), {"2 1/2"}),
    ],
    ids=lambda value: getattr(value, "construction", ""),
)
def test_a_section_shows_what_is_cut_away(
    front: FrontSpec, taken: Fraction, told: set[str]
) -> None:
    """The stile's outline has the area that wood is left in; each cut has its numbers."""
    case = one_case(width="18", front=replace(front, hinge="right"), shelves=0)
    (door,) = case.doors
    scene = door_section_scene(case, door, "in")
    stile = case.part("upper.door.stile_left").finished
    outline = next(
        each for each in scene.elements
        if isinstance(each, Polyline) and each.tag.path == "upper.door.stile_left"
    )  # fmt: skip
    assert _area(outline) == stile.width.value * stile.thickness.value - taken
    spans = [s for each in scene.elements if isinstance(each, Dimensions) for s in each.spans]
    assert told <= {span.measure.text for span in spans}
    assert "2 1/2" in {span.measure.text for span in spans}
