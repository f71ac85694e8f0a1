"""Shapes, hatches, notes and signs on paper."""

from __future__ import annotations

from fractions import Fraction

import pytest
from shapely import LineString, Polygon

from casewright.dims import Measure
from casewright.drawing import (
    CUT,
    HIDDEN,
    SECTION,
    SIGNS,
    VISIBLE,
    Arc,
    ArcMark,
    Balloon,
    GrainArrow,
    Group,
    Hatch,
    Ink,
    Leader,
    Pen,
    Polyline,
    Scene,
    Sign,
    Stroke,
    Tag,
    Text,
    Word,
    circle,
    line,
    plot,
    rectangle,
)
from casewright.drawing import pens as all_pens
from casewright.drawing.hatching import hatch_lines

INCH = Fraction("25.4")
# ISO 128-20, 4.1: the series of line widths, each root two times the one before. From memory.
ISO_WIDTHS = {0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0}


def test_line_widths_are_of_the_standard_series() -> None:
    """Every pen has a width of ISO 128."""
    pens = [value for value in vars(all_pens).values() if isinstance(value, Pen)]
    assert len(pens) >= 8
    assert {pen.width_mm for pen in pens} <= ISO_WIDTHS


def test_what_is_cut_is_thicker_than_what_is_seen_and_that_than_what_is_hidden() -> None:
    """The eye finds the section first."""
    assert CUT.width_mm > VISIBLE.width_mm > HIDDEN.width_mm


def _only(scene: Scene, scale: int = 1) -> Group:
    (group,) = plot(scene, scale).groups
    return group


def test_a_rectangle_keeps_its_corners_at_scale() -> None:
    """33 by 39 in at 1:8."""
    group = _only(Scene((rectangle((0, 0), (33 * INCH, 39 * INCH)),)), 8)
    area = group.area
    assert (area.width, area.height) == (float(33 * INCH / 8), float(39 * INCH / 8))


def test_exact_and_float_points_land_on_the_same_paper() -> None:
    """Pictures may be float."""
    exact = _only(Scene((line((0, 0), (INCH / 3, INCH)),)), 8)
    drawn = _only(Scene((line((0.0, 0.0), (25.4 / 3, 25.4)),)), 8)
    assert exact.area == pytest.approx(drawn.area)


def test_a_circle_covers_its_diameter_and_an_arc_only_its_quarter() -> None:
    """Bounds of arcs know where the arc is."""
    assert _only(Scene((circle((10, 10), 5),))).area == pytest.approx((5, 5, 15, 15))
    quarter = _only(Scene((Arc((0, 0), 10, start_deg=0, sweep_deg=90),)))
    assert quarter.area == pytest.approx((0, 0, 10, 10), abs=1e-9)
    over_the_top = _only(Scene((Arc((0, 0), 10, start_deg=45, sweep_deg=90),)))
    assert over_the_top.area.y1 == pytest.approx(10)


@pytest.mark.parametrize("angle", [0.0, 30.0, 45.0, 90.0, 135.0])
def test_hatch_lines_stay_inside_a_notched_outline(angle: float) -> None:
    """Clipping agrees with a geometry library on an L-shaped part."""
    corners = [(0.0, 0.0), (40.0, 0.0), (40.0, 25.0), (22.0, 25.0), (22.0, 11.0), (0.0, 11.0)]
    shape = Polygon(corners)
    lines = hatch_lines(corners, Hatch(angle, 1.7))
    assert len(lines) > 5
    for stroke in lines:
        assert shape.buffer(1e-6).contains(LineString(stroke.points))
    covered = sum(LineString(stroke.points).length for stroke in lines) * 1.7
    assert covered == pytest.approx(shape.area, rel=0.1)


def test_hatches_of_neighbours_meet_on_one_grid() -> None:
    """Two parts hatched apart look as if hatched together."""
    left = hatch_lines([(0, 0), (10, 0), (10, 10), (0, 10)], SECTION)
    both = hatch_lines([(0, 0), (20, 0), (20, 10), (0, 10)], SECTION)
    starts = {tuple(round(c, 6) for c in s.points[0]) for s in both}
    shared = [s for s in left if tuple(round(c, 6) for c in s.points[0]) in starts]
    assert len(shared) == len(left)


def test_a_filled_shape_has_its_outline_on_top() -> None:
    """Fill, then hatch, then line."""
    group = _only(Scene((rectangle((0, 0), (20, 10), CUT, fill=Ink.SHADE, hatch=SECTION),)))
    first, *_, last = group.marks
    assert isinstance(first, Stroke)
    assert isinstance(last, Stroke)
    assert (first.fill, first.pen) == (Ink.SHADE, None)
    assert (last.fill, last.pen) == (None, CUT)


def test_lettering_does_not_shrink_with_the_model() -> None:
    """Text is in millimetres of paper at any scale."""
    scene = Scene((Text((100, 100), "sink", 2.5),))
    heights = [
        mark.height
        for scale in (1, 8, 48)
        for mark in plot(scene, scale).groups[0].marks
        if isinstance(mark, Word)
    ]
    assert heights == [2.5, 2.5, 2.5]


def test_a_fraction_is_stacked_over_a_bar() -> None:
    """Numerator above, denominator below, a bar between as wide as the wider of them."""
    group = _only(Scene((Text((0, 0), Measure(Fraction(95, 8) * INCH, "in"), 3.0),)))
    words = {m.text: m for m in group.marks if isinstance(m, Word)}
    (bar,) = [m for m in group.marks if isinstance(m, Stroke)]
    assert words["7"].at[1] > bar.points[0][1] > words["8"].at[1] + words["8"].height
    assert bar.points[0][0] >= words["11"].area.x1
    assert words["7"].at[0] == words["8"].at[0]


def test_turned_lettering_turns_about_its_point() -> None:
    """A quarter turn swaps width and height."""
    flat = _only(Scene((Text((0, 0), "stile", 3.0),))).area
    turned = _only(Scene((Text((0, 0), "stile", 3.0, rotation_deg=90),))).area
    assert (turned.width, turned.height) == pytest.approx((flat.height, flat.width))


def test_a_balloon_grows_with_its_mark() -> None:
    """A long mark still stands inside its ring."""
    for mark in ("1", "12", "12-14"):
        group = _only(Scene((Balloon((0, 0), mark),)))
        words = [m for m in group.marks if isinstance(m, Word)]
        ring = group.area
        assert ring.x0 < words[0].area.x0
        assert words[0].area.x1 < ring.x1


def test_a_leader_points_at_its_thing() -> None:
    """The line begins at the tip and the words stand beyond its shoulder, on either side."""
    for reach in ((18.0, 9.0), (-18.0, 9.0)):
        group = _only(Scene((Leader((5, 5), reach, ("back", "rabbeted")),)))
        first = group.marks[0]
        assert isinstance(first, Stroke)
        assert first.points[0] == (5.0, 5.0)
        for word in (m for m in group.marks if isinstance(m, Word)):
            beyond = word.area.x0 - 23 if reach[0] > 0 else -13 - word.area.x1
            assert beyond > 0


def test_signs_differ_in_shape_and_not_in_colour_alone() -> None:
    """Printed in black, each sign is still itself."""
    shapes = set()
    for sign in SIGNS:
        group = _only(Scene((Sign(sign, (0, 0)),)))
        shapes.add(repr([_without_colour(mark) for mark in group.marks]))
    assert len(shapes) == len(SIGNS)


def _without_colour(mark: object) -> object:
    if isinstance(mark, Stroke):
        return mark.points
    if isinstance(mark, ArcMark):
        return (mark.centre, mark.radius)
    return getattr(mark, "text", None)


def test_hands_are_mirrored() -> None:
    """The plate of a left part points left by as much as that of a right one points right."""
    left = _only(Scene((Sign("left", (0, 0)),))).area
    right = _only(Scene((Sign("right", (0, 0)),))).area
    assert (left.x0, left.x1) == pytest.approx((-right.x1, -right.x0))


@pytest.mark.parametrize(("toward", "point"), [(90, "y0"), (270, "y1"), (0, "x0"), (180, "x1")])
def test_the_datum_triangle_touches_its_edge(toward: float, point: str) -> None:
    """Its point lies on the edge it marks, from whichever side."""
    area = _only(Scene((Sign("datum", (0, 0), toward_deg=toward),))).area
    assert getattr(area, point) == pytest.approx(0, abs=1e-9)


def test_a_grain_arrow_lies_along_the_grain() -> None:
    """Standing grain stands."""
    area = _only(Scene((GrainArrow((0, 0), 20, along_deg=90),))).area
    assert area.height == pytest.approx(20)
    assert area.width < 4


def test_moving_a_plot_moves_everything() -> None:
    """Area and marks travel together."""
    drawn = plot(Scene((rectangle((0, 0), (10, 10), tag=Tag(path="a")), Text((5, 5), "a"))))
    moved = drawn.moved(3, -4)
    assert moved.area == pytest.approx(drawn.area.moved(3, -4))
    assert moved.groups[0].area == pytest.approx(drawn.groups[0].area.moved(3, -4))
    assert moved.groups[0].tag.path == "a"


def test_an_open_line_is_not_closed() -> None:
    """A polyline ends where it ends."""
    group = _only(Scene((Polyline(((0, 0), (1, 0), (1, 1))),)))
    (stroke,) = group.marks
    assert isinstance(stroke, Stroke)
    assert not stroke.closed
