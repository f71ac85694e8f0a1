"""Dimensions: true to what is drawn, readable where it is narrow."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.dims import Measure
from casewright.drawing import (
    Aligned,
    Area,
    Dimensions,
    Element,
    Group,
    Plot,
    Running,
    Scene,
    Span,
    Stop,
    Stroke,
    Tag,
    Word,
    dimension,
    plot,
)
from casewright.drawing.strip import Side

INCH = Fraction("25.4")
SIDES: tuple[Side, ...] = ("below", "above", "left", "right")


def _measure(inches: Fraction | int, path: str = "") -> Measure:
    return Measure(Fraction(inches) * INCH, "in", path)


def _span(start: Fraction | int, end: Fraction | int, path: str = "") -> Span:
    return Span(start * INCH, end * INCH, _measure(Fraction(end) - start, path))


def _plot(*elements: Element, scale: int = 8) -> Plot:
    return plot(Scene(elements), scale)


def _strokes(group: Group) -> list[Stroke]:
    return [mark for mark in group.marks if isinstance(mark, Stroke) and mark.pen is not None]


def _lengths_along(group: Group, axis: int) -> list[float]:
    """Lengths of the straight lines of a group that run along an axis."""
    return [
        abs(s.points[1][axis] - s.points[0][axis])
        for s in _strokes(group)
        if len(s.points) == 2 and s.points[0][1 - axis] == s.points[1][1 - axis]
    ]


def _number_boxes(plotted: Plot) -> list[Area]:
    """Paper that the figures of each number cover; figures have no descenders."""
    words = [[m for m in g.marks if isinstance(m, Word)] for g in plotted.groups]
    return [Area.around(map(_figure_box, found)) for found in words if found]


def _figure_box(word: Word) -> Area:
    (x, y), area = word.at, word.area
    if word.rotation_deg:
        return Area(x - word.height, area.y0, x, area.y1)
    return Area(area.x0, y, area.x1, y + word.height)


def _overlap(a: Area, b: Area) -> bool:
    return a.x0 < b.x1 and b.x0 < a.x1 and a.y0 < b.y1 and b.y0 < a.y1


def _clear_of_each_other(boxes: Sequence[Area]) -> bool:
    return not any(_overlap(a, b) for a, b in combinations(boxes, 2))


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("scale", [1, 8, 12])
def test_dimension_line_is_as_long_as_its_number_says(side: Side, scale: int) -> None:
    """33 in at 1:8 is 33 x 25.4 / 8 mm of paper, on all four sides."""
    drawn = _plot(Dimensions(side, 0, (_span(2, 35),)), scale=scale)
    axis = 0 if side in ("below", "above") else 1
    assert max(_lengths_along(drawn.groups[0], axis)) == pytest.approx(33 * 25.4 / scale, abs=1e-9)


def test_a_number_that_is_not_drawn_true_is_refused() -> None:
    """Neither a span nor a diagonal nor a stop can show one length and say another."""
    with pytest.raises(ValueError, match=r"drawn 25\.4 mm long, but the number says 50\.8 mm"):
        Span(0, INCH, _measure(2))
    with pytest.raises(ValueError, match="but the number says"):
        Aligned((0, 0), (300, 400), Measure(Fraction(501), "mm"))
    with pytest.raises(ValueError, match="but the number says"):
        Running("below", 0, 0, (Stop(INCH, _measure(2)),))


def test_the_smallest_untruth_is_refused() -> None:
    """Exact lengths are compared exactly: a millionth of a millimetre off is off."""
    with pytest.raises(ValueError, match="but the number says"):
        Span(0, INCH + Fraction(1, 10**9), _measure(1))


def test_a_number_not_to_scale_is_underlined() -> None:
    """ISO 129: a broken length carries a line under its number."""
    true = _plot(Dimensions("below", 0, (_span(0, 10),)))
    broken = _plot(
        Dimensions("below", 0, (Span(0, 10 * INCH, _measure(30), to_scale=False),)),
    )
    assert len(_strokes(broken.groups[0])) == len(_strokes(true.groups[0])) + 1


def test_a_diagonal_is_drawn_as_long_as_it_is() -> None:
    """3-4-5: the diagonal of 300 by 400 is 500."""
    drawn = _plot(Aligned((0, 0), (300, 400), Measure(Fraction(500), "mm")), scale=5)
    (longest,) = [
        math.dist(s.points[0], s.points[1])
        for s in _strokes(drawn.groups[0])
        if math.dist(s.points[0], s.points[-1]) > 10
    ]
    assert longest == pytest.approx(100.0)


def test_a_chain_shares_a_row_and_the_whole_stands_outside() -> None:
    """Spans end to end stand in one row, the overall size in the next one out."""
    spans = (_span(0, 33), _span(0, 11), _span(11, 22), _span(22, 33))
    drawn = _plot(Dimensions("below", 0, spans))
    levels = {g.tag.title: _level(g) for g in drawn.groups}
    whole = levels.pop("33")
    (chain,) = set(levels.values())
    assert whole < chain < 0


def _level(group: Group) -> float:
    """Height of the longest horizontal line of a group."""
    lying = [s for s in _strokes(group) if s.points[0][1] == s.points[-1][1]]
    return max(lying, key=lambda s: abs(s.points[1][0] - s.points[0][0])).points[0][1]


_CUTS = st.lists(st.integers(1, 60 * 32), min_size=1, max_size=9, unique=True)


@given(_CUTS, st.sampled_from(SIDES), st.sampled_from([4, 8, 16]))
def test_numbers_of_a_chain_never_run_into_each_other(
    cuts: list[int], side: Side, scale: int
) -> None:
    """However narrow the gaps, each number stands clear of every other."""
    places = [Fraction(0), *(Fraction(cut, 32) for cut in sorted(cuts))]
    spans = tuple(_span(a, b) for a, b in pairwise(places))
    overall = (_span(0, places[-1]),) if len(spans) > 1 else ()
    drawn = _plot(Dimensions(side, 0, (*spans, *overall)), scale=scale)
    assert _clear_of_each_other(_number_boxes(drawn))


@given(_CUTS, st.sampled_from(SIDES))
def test_stops_of_a_tape_never_run_into_each_other(cuts: list[int], side: Side) -> None:
    """A crowd of holes still gives one readable number each."""
    stops = tuple(Stop(Fraction(c, 32) * INCH, _measure(Fraction(c, 32))) for c in cuts)
    drawn = _plot(Running(side, 0, 0, stops))
    assert _clear_of_each_other(_number_boxes(drawn))


@given(_CUTS, st.sampled_from(SIDES))
def test_dimensions_stand_outside_the_view(cuts: list[int], side: Side) -> None:
    """Nothing of a dimension reaches over the outline it stands off from."""
    places = [Fraction(0), *(Fraction(cut, 32) for cut in sorted(cuts))]
    spans = tuple(_span(a, b) for a, b in pairwise(places))
    area = Area.around(group.area for group in _plot(Dimensions(side, 0, spans)).groups)
    inside = {"below": area.y1, "above": -area.y0, "left": area.x1, "right": -area.x0}[side]
    assert inside <= -0.79


def test_every_number_carries_its_path() -> None:
    """A touched number can be asked why."""
    drawn = _plot(
        Dimensions("left", 0, (_span(0, 39, "sink.height"),)),
        Running("right", 0, 0, (Stop(2 * INCH, _measure(2, "sink.pins.1")),)),
        Aligned((0, 0), (300, 400), Measure(Fraction(500), "mm", "sink.diagonal")),
    )
    paths = {group.tag.path for group in drawn.groups} - {""}
    assert paths == {"sink.height", "sink.pins.1", "sink.diagonal"}


def test_own_tag_goes_before_the_path_of_the_number() -> None:
    """A dimension may lead to another page and speak for another path."""
    span = Span(0, INCH, _measure(1, "a"), tag=Tag(path="b", target="card"))
    (group,) = _plot(Dimensions("below", 0, (span,))).groups
    assert (group.tag.path, group.tag.target, group.tag.title) == ("b", "card", "1")


def test_extension_lines_are_drawn_once() -> None:
    """Two spans that meet share their extension line: it is not inked twice."""
    spans = (_span(0, 11), _span(11, 22))
    drawn = _plot(Dimensions("below", 0, spans))
    standing = [
        s.points[0][0]
        for g in drawn.groups
        for s in _strokes(g)
        if len(s.points) == 2 and s.points[0][0] == s.points[1][0]
    ]
    assert len(standing) == len(set(standing)) == 3


def test_a_single_dimension_stands_off_the_outer_of_its_points() -> None:
    """Its extension lines begin at the points themselves."""
    made = dimension((0, 0), (10 * INCH, -5 * INCH), "below", _measure(10))
    assert made.base == -5 * INCH
    assert (made.spans[0].start_root, made.spans[0].end_root) == (0, -5 * INCH)


def test_figures_are_tall_enough_for_arms_length() -> None:
    """Whole numbers on a print are at least 3 mm tall, those of a fraction at least 2 mm."""
    drawn = _plot(Dimensions("below", 0, (_span(0, Fraction(95, 8)),)))
    heights = {m.text: m.height for m in drawn.groups[0].marks if isinstance(m, Word)}
    assert heights["11"] >= 3.0
    assert min(heights["7"], heights["8"]) >= 2.0


def test_same_scene_same_plot() -> None:
    """Drawing twice gives the very same marks."""
    element = Dimensions("left", 0, tuple(_span(i, i + 1) for i in range(5)))
    assert _plot(element) == _plot(element)
