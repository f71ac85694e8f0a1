"""Dimensions: what is measured from where to where, and the number that belongs to it.

A dimension that claims to be drawn to scale and is not as long as its number is refused when it
is made: a drawing cannot say one thing and show another.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from casewright.dims import Measure
from casewright.drawing.dimension_rows import PaperSpan, row_groups
from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Group, Mark, PaperPoint, Stroke, Tag
from casewright.drawing.pens import DIMENSION, TICK, Ink
from casewright.drawing.shapes import NO_TAG, Length, Point, Single, on_paper
from casewright.drawing.strip import GAP, TEXT_HEIGHT, Side, Strip

__all__ = ["Aligned", "Dimensions", "Span", "dimension"]

_SAME_MM = 1e-6


def _check(drawn: Length, measure: Measure) -> None:
    if isinstance(drawn, float):
        agrees = abs(abs(drawn) - abs(float(measure.value))) <= _SAME_MM
    else:
        agrees = abs(drawn) == abs(measure.value)
    if not agrees:
        msg = f"drawn {float(drawn)} mm long, but the number says {float(measure.value)} mm"
        raise ValueError(msg)


@dataclass(frozen=True, slots=True)
class Span:
    """One measured distance along an axis.

    Parameters
    ----------
    start, end
        Where it begins and ends along the axis [mm of model].
    measure
        Its number.
    start_root, end_root
        Where its extension lines begin, across the axis [mm of model]; None: at the base of the
        dimensions.
    to_scale
        False when the picture is broken or bent; the number is then underlined (ISO 129).
    emphasis
        Semi-bold: the number to cut to.

    Raises
    ------
    ValueError
        When it claims to be to scale and is not as long as its number.
    """

    start: Length
    end: Length
    measure: Measure
    start_root: Length | None = field(default=None, kw_only=True)
    end_root: Length | None = field(default=None, kw_only=True)
    to_scale: bool = field(default=True, kw_only=True)
    emphasis: bool = field(default=False, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def __post_init__(self) -> None:
        if self.to_scale:
            _check(self.end - self.start, self.measure)

    @property
    def full_tag(self) -> Tag:
        """Its tag, with the path of its number when it has none of its own."""
        path = self.tag.path or self.measure.path
        return Tag(path, self.tag.title or self.measure.text, self.tag.target, self.tag.key)


@dataclass(frozen=True, slots=True)
class Dimensions:
    """All dimensions on one side of a view, packed into rows: short ones near, overall far.

    Spans that do not overlap share a row. A number too wide for its gap is lifted out of the row
    on a thin leader and moved aside as little as needed.

    Parameters
    ----------
    side
        below, above, left or right of the view.
    base
        The outline they stand off from, across the axis [mm of model].
    spans
        In any order.
    offset_mm
        Clear distance from the outline to the first row [mm on paper].
    height
        Height of the figures [mm on paper].
    """

    kind: ClassVar[str] = "dimension"
    side: Side
    base: Length
    spans: tuple[Span, ...]
    offset_mm: float = field(default=4.0, kw_only=True)
    height: float = field(default=TEXT_HEIGHT, kw_only=True)

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """One group a span, outermost row first."""
        strip = Strip(self.side, on_paper((self.base, self.base), scale)[0])
        spans = [self._span(span, strip, scale) for span in self.spans]
        return row_groups(strip, spans, self.offset_mm)

    def _span(self, span: Span, strip: Strip, scale: Fraction) -> PaperSpan:
        start, start_root = on_paper((span.start, self._root(span.start_root)), scale)
        end, end_root = on_paper((span.end, self._root(span.end_root)), scale)
        weight = 600 if span.emphasis else 500
        return PaperSpan(
            ends=((start, strip.depth(start_root)), (end, strip.depth(end_root))),
            text=Inscription(span.measure, self.height, weight, span.ink),
            tag=span.full_tag,
            underlined=not span.to_scale,
            ink=span.ink,
        )

    def _root(self, root: Length | None) -> Length:
        return self.base if root is None else root


def dimension(
    a: Point, b: Point, side: Side, measure: Measure, *, base: Length | None = None
) -> Dimensions:
    """A single dimension between two points, on one side.

    Parameters
    ----------
    base
        The outline it stands off from [mm of model]; None: the outer of the two points.
    """
    along, across = (0, 1) if side in ("below", "above") else (1, 0)
    outer = min if side in ("below", "left") else max
    span = Span(a[along], b[along], measure, start_root=a[across], end_root=b[across])
    return Dimensions(side, outer(a[across], b[across]) if base is None else base, (span,))


@dataclass(frozen=True, slots=True)
class Aligned(Single):
    """A dimension along a slanted line: a diagonal, the long point of a mitre.

    Parameters
    ----------
    a, b
        Ends [mm of model].
    measure
        Its number.
    aside_mm
        Distance of the dimension line to the left of a to b [mm on paper]; 0: on the line.
    to_scale
        False when the picture is not as long as the number says.
    ground
        Colour of the patch under the number: what it lies on.

    Raises
    ------
    ValueError
        When it claims to be to scale and is not as long as its number, within a millionth of a
        millimetre.
    """

    kind: ClassVar[str] = "dimension"
    a: Point
    b: Point
    measure: Measure
    aside_mm: float = field(default=0.0, kw_only=True)
    to_scale: bool = field(default=True, kw_only=True)
    height: float = field(default=TEXT_HEIGHT, kw_only=True)
    ground: Ink = field(default=Ink.PAPER, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def __post_init__(self) -> None:
        if self.to_scale:
            dx, dy = (float(q - p) for p, q in zip(self.a, self.b, strict=True))
            _check(math.hypot(dx, dy), self.measure)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """Line, ticks, extension lines and number on paper."""
        a, b = on_paper(self.a, scale), on_paper(self.b, scale)
        if a > b:
            a, b = b, a
        length = math.dist(a, b)
        along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
        left = (-along[1], along[0])
        turned = math.degrees(math.atan2(along[1], along[0]))
        sign = 1.0 if on_paper(self.a, scale) == a else -1.0
        ends = [_step(p, left, sign * self.aside_mm) for p in (a, b)]
        if self.aside_mm:
            for root, end in zip((a, b), ends, strict=True):
                yield Stroke((root, _step(end, left, sign * 1.5)), DIMENSION)
        yield Stroke((ends[0], ends[1]), DIMENSION)
        for end in ends:
            yield _slash(end, turned)
        text = Inscription(self.measure, self.height, 500)
        middle = _step(ends[0], along, length / 2)
        at = _step(middle, left, GAP + text.extent / 2)
        yield text.ground(at, anchor="middle", rotation_deg=turned, fill=self.ground)
        yield from text.marks(at, anchor="middle", rotation_deg=turned)

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """Its marks, under the path of its number."""
        path = self.tag.path or self.measure.path
        tag = Tag(path, self.tag.title or self.measure.text, self.tag.target, self.tag.key)
        yield Group(tag, tuple(self.marks(scale)), self.kind)


def _step(point: PaperPoint, direction: PaperPoint, distance: float) -> PaperPoint:
    return (point[0] + distance * direction[0], point[1] + distance * direction[1])


def _slash(at: PaperPoint, turned_deg: float) -> Stroke:
    turn = math.radians(turned_deg + 45)
    dx, dy = 1.2 * math.cos(turn), 1.2 * math.sin(turn)
    return Stroke(((at[0] - dx, at[1] - dy), (at[0] + dx, at[1] + dy)), TICK)
