"""Jigs as they are made: a template from its two stops, a corner to round, a square."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.drawing.dimension import Aligned, Dimensions, Span
from casewright.drawing.hatching import SECTION
from casewright.drawing.marks import Area, Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CENTRE, CUT, THIN, VISIBLE, Pen
from casewright.drawing.running import Running, Stop
from casewright.drawing.scales import check_bar, check_bar_width
from casewright.drawing.scene import Plot, Scene, plot
from casewright.drawing.shapes import Arc, Element, Polyline, circle, line, rectangle
from casewright.jigs import CornerTemplate, Square, Template

__all__ = ["STOP", "corner_scene", "full_size", "hole_marks", "square_scene", "template_scene"]

STOP = Fraction(7)
"""Thickness of a stop as drawn [mm]."""

_BAR = 9.0  # for the check bar [mm]
_ZERO = Fraction(0)


def template_scene(template: Template, unit: Unit) -> Scene:
    """The plate seen from above: the end's stop below, the edge's at the left."""
    long, wide = template.length.value, template.width.value
    tag = Tag(path=template.path, title=template.title)
    elements: list[Element] = [
        rectangle((-STOP, -STOP), (_ZERO, long), CUT, hatch=SECTION, tag=tag),
        rectangle((_ZERO, -STOP), (wide, _ZERO), CUT, hatch=SECTION, tag=tag),
        rectangle((_ZERO, _ZERO), (wide, long), VISIBLE, tag=tag),
    ]
    for hole in template.holes:
        at = (hole.across.value, hole.along.value)
        elements.extend(hole_marks(at, hole.diameter.value))
    marks = template.middles or tuple(hole.along for hole in template.holes)
    elements.append(_stops("right", wide, marks, unit, template.length))
    across = tuple(hole.across for hole in template.holes)
    elements.append(_stops("above", long, across, unit, template.width))
    elements.append(Text((wide / 2, -STOP), "stop for the end", 2.2, shift_mm=(0.0, -3.0)))
    elements.append(
        Text((-STOP, long / 2), "stop for the edge", 2.2, rotation_deg=90.0,
             shift_mm=(-3.0, 0.0))
    )  # fmt: skip
    return Scene(tuple(elements), template.title)


def hole_marks(at: tuple[Fraction, Fraction], diameter: Fraction) -> Iterator[Element]:
    """A hole with its centre lines."""
    half = diameter / 2
    arm = half + 3
    yield circle(at, half, VISIBLE)
    yield line((at[0] - arm, at[1]), (at[0] + arm, at[1]), CENTRE)
    yield line((at[0], at[1] - arm), (at[0], at[1] + arm), CENTRE)


def _stops(side: str, base: Fraction, dims: Sequence[Dim], unit: Unit, whole: Dim) -> Running:
    """Every distance from the stop, once, and the size of the plate."""
    known = {dim.value: dim for dim in dims}
    stops = [Stop(value, measure_of(known[value], unit), emphasis=True) for value in sorted(known)]
    stops.append(Stop(whole.value, measure_of(whole, unit)))
    if side == "right":
        return Running("right", base, _ZERO, tuple(stops))
    return Running("above", base, _ZERO, tuple(stops))


def corner_scene(template: CornerTemplate, unit: Unit) -> Scene:
    """A corner template, full size; thin, the pane that it is laid on, the stops outside it."""
    r, long = template.radius.value, template.leg.value
    off = _ZERO if template.offset is None else template.offset.value
    tag = Tag(path=template.path, title=template.title)
    elements: list[Element] = [*_rounded(off, r, long, VISIBLE, tag)]
    below = [Span(off, r, measure_of(template.inner, unit), emphasis=True)]
    if template.offset is not None:
        elements.extend(_rounded(_ZERO, r, long, THIN, tag))
        elements.append(rectangle((r, -STOP), (long, _ZERO), CUT, hatch=SECTION, tag=tag))
        elements.append(rectangle((-STOP, r), (_ZERO, long), CUT, hatch=SECTION, tag=tag))
        below.append(Span(_ZERO, off, measure_of(template.offset, unit)))
        below.append(Span(_ZERO, r, measure_of(template.radius, unit)))
    below.append(Span(_ZERO, long, measure_of(template.leg, unit)))
    elements.append(Dimensions("below", -STOP, tuple(below), offset_mm=3.0))
    return Scene(tuple(elements), template.title)


def _rounded(
    edge: Fraction, radius: Fraction, long: Fraction, pen: Pen, tag: Tag
) -> Iterator[Element]:
    """Two edges that far in, round one middle, and the far sides."""
    yield Arc((radius, radius), radius - edge, pen, start_deg=180.0, sweep_deg=90.0)
    yield line((radius, edge), (long, edge), pen)
    yield line((edge, radius), (edge, long), pen)
    yield Polyline(((long, edge), (long, long), (edge, long)), pen, tag=tag)


def square_scene(square: Square, unit: Unit) -> Scene:
    """One of the triangles, its long leg upright, its right angle at the lower left."""
    long, short = square.long.value, square.short.value
    off = short / 10
    outline = ((off, _ZERO), (short, _ZERO), (_ZERO, long), (_ZERO, off))
    tag = Tag(path=square.path, title=square.title)
    elements: list[Element] = [
        Polyline(outline, VISIBLE, closed=True, tag=tag),
        Dimensions("below", _ZERO, (Span(_ZERO, short, measure_of(square.short, unit)),)),
        Dimensions("left", _ZERO, (Span(_ZERO, long, measure_of(square.long, unit)),)),
        Aligned((short, _ZERO), (_ZERO, long), measure_of(square.across, unit)),
    ]
    return Scene(tuple(elements), square.title)


def full_size(scene: Scene, unit: Unit) -> Plot:
    """A scene as large as it is made, over a bar that says whether the print is true."""
    drawn = plot(scene, 1)
    area = drawn.area
    bar = check_bar(unit, (area.x0, area.y0 - _BAR + 1.0))
    right = max(area.x1, area.x0 + math.ceil(check_bar_width(unit)) + 2.0)
    whole = Area(area.x0, area.y0 - _BAR, right, area.y1)
    return replace(drawn, groups=(*drawn.groups, bar), area=whole)
