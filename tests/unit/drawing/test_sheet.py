"""Views on a sheet at a standard scale."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

import pytest

from casewright.dims import Measure, Unit
from casewright.drawing import (
    SCALES,
    Area,
    Dimensions,
    ScaleError,
    Scene,
    Span,
    Stroke,
    View,
    Word,
    largest,
    plot,
    rectangle,
    scale_text,
    sheet,
)

INCH = Fraction("25.4")


def _box(width: int, height: int, title: str = "", low: int = 0) -> View:
    top = (low + height) * INCH
    span = Span(0, width * INCH, Measure(width * INCH, "in"))
    tall = Span(low * INCH, top, Measure(height * INCH, "in"))
    scene = Scene(
        (
            rectangle((0, low * INCH), (width * INCH, top)),
            Dimensions("below", low * INCH, (span,)),
            Dimensions("left", 0, (tall,)),
        ),
        title,
    )
    return View(scene, title or "Front")


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_the_largest_scale_that_fits_is_taken(unit: Unit) -> None:
    """One step larger would run off the paper."""
    scene = _box(33, 39).scene
    chosen = largest(scene, 180, 160, unit)
    assert chosen.scale is not None
    assert chosen.area.width <= 180
    assert chosen.area.height <= 160
    larger = max(s for s in SCALES[unit] if s < chosen.scale)
    too_big = plot(scene, larger)
    assert too_big.area.width > 180 or too_big.area.height > 160


def test_a_picture_is_not_blown_up_past_what_is_wanted() -> None:
    """A small part may be held at a scale."""
    drawn = largest(_box(2, 3).scene, 180, 160, "in", at_most=Fraction(4))
    assert drawn.scale == 4


def test_what_fits_at_no_scale_is_an_error_that_names_it() -> None:
    """A wall a mile long on a letter sheet."""
    with pytest.raises(ScaleError, match=r"long wall does not fit 180 x 160 mm"):
        largest(_box(63360, 96, "long wall").scene, 180, 160, "in")


def test_views_share_one_scale_and_do_not_overlap() -> None:
    """Front and section of one case stand side by side at one scale on the sheet."""
    views = [[_box(33, 39, "Front"), _box(14, 39, "Section")], [_box(33, 14, "Plan")]]
    drawn = sheet(views, 186, 240, "in")
    boxes = [
        group.area
        for group in drawn.groups
        if group.kind == "line" and isinstance(group.marks[0], Stroke)
    ]
    assert drawn.scale is not None
    assert sorted(box.width * float(drawn.scale) / 25.4 for box in boxes) == pytest.approx(
        [14, 33, 33]
    )
    assert not any(
        a.x0 < b.x1 and b.x0 < a.x1 and a.y0 < b.y1 and b.y0 < a.y1
        for a, b in combinations(boxes, 2)
    )
    assert all(box.x0 >= 0 and box.x1 <= 186 for box in boxes)
    assert drawn.area.height <= 240


def test_views_of_a_row_stand_on_one_floor() -> None:
    """What is at one height in the room is at one height on the sheet."""
    drawn = sheet([[_box(33, 35, "Base"), _box(33, 39, "Upper", low=54)]], 250, 240, "in")
    scale = float(drawn.scale or 1)
    base, upper = [g.area for g in drawn.groups if g.kind == "line"]
    assert (upper.y0 - base.y0) * scale == pytest.approx(54 * 25.4)


def test_all_of_a_view_stays_on_the_sheet_and_off_its_neighbour() -> None:
    """Dimensions count: nothing runs off the paper or into the next view."""
    views = [[_box(33, 39, "Front"), _box(14, 39, "Section")]]
    drawn = sheet(views, 150, 240, "in")
    whole = Area.around(group.area for group in drawn.groups)
    assert whole.x0 >= 0
    assert whole.x1 <= 150
    assert whole.height <= drawn.area.height
    standing = sorted(
        (group.area for group in drawn.groups if group.area.height > group.area.width + 30),
        key=lambda area: area.x0,
    )
    outlines = sorted(g.area for g in drawn.groups if g.kind == "line")
    (between,) = [area for area in standing if outlines[0].x1 < area.x0 < outlines[1].x0]
    assert between.x0 > outlines[0].x1 + 5


def test_each_view_says_its_name_and_scale() -> None:
    """Whoever finds the sheet on the floor knows what it shows."""
    drawn = sheet([[_box(33, 39, "Doors removed")]], 186, 200, "in")
    words = " ".join(m.text for g in drawn.groups for m in g.marks if isinstance(m, Word))
    assert "Doors removed" in words
    assert f"1:{drawn.scale}" in words


@pytest.mark.parametrize(("unit", "length"), [("in", 101.6), ("mm", 100.0)])
def test_the_check_bar_is_as_long_as_it_says(unit: Unit, length: float) -> None:
    """4 in or 100 mm between its end strokes."""
    drawn = sheet([[_box(33, 39)]], 186, 200, unit)
    (bar,) = [group for group in drawn.groups if group.kind == "check bar"]
    ends = {mark.points[0][0] for mark in bar.marks if isinstance(mark, Stroke) and mark.pen}
    assert max(ends) - min(ends) == pytest.approx(length)
    words = " ".join(mark.text for mark in bar.marks if isinstance(mark, Word))
    assert ("4 in" if unit == "in" else "100 mm") in words


@pytest.mark.parametrize(
    ("scale", "unit", "text"),
    [
        (8, "in", "1:8 (1 1/2 in to the foot)"),
        (12, "in", "1:12 (1 in to the foot)"),
        (48, "in", "1:48 (1/4 in to the foot)"),
        (10, "mm", "1:10"),
        (1, "mm", "full size"),
    ],
)
def test_scales_are_said_as_the_trade_says_them(scale: int, unit: Unit, text: str) -> None:
    """12 divided by the scale is the inches to the foot."""
    assert scale_text(Fraction(scale), unit) == text


def test_every_scale_in_feet_and_inches_is_computed_right() -> None:
    """The words agree with 12 in over the scale."""
    for scale in SCALES["in"][1:]:
        inches = Measure(Fraction(12) / scale * INCH, "in").text
        assert scale_text(scale, "in") == f"1:{scale} ({inches} in to the foot)"
