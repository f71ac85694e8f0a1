"""Shapes of a scene, in millimetres of the model."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import ClassVar, Protocol

from casewright.drawing.hatching import Hatch, hatch_lines
from casewright.drawing.marks import ArcMark, Group, Mark, PaperPoint, Stroke, Tag
from casewright.drawing.pens import VISIBLE, Ink, Pen

__all__ = [
    "NO_TAG", "Arc", "Element", "Length", "Point", "Polyline", "Single", "circle", "line", "moved",
    "on_paper", "rectangle",
]  # fmt: skip

Length = int | Fraction | float
"""A length of the model [mm]; pictures may be float."""

Point = tuple[Length, Length]
"""A point of the model [mm], x to the right, y upward."""

NO_TAG = Tag()


class Element(Protocol):
    """Anything that can be drawn."""

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """What it is on paper, at so many millimetres of model to one of paper."""
        ...


class Single(ABC):
    """An element that is one thing with one tag."""

    __slots__ = ()
    kind: ClassVar[str]
    tag: Tag

    @abstractmethod
    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """What it is on paper, at so many millimetres of model to one of paper."""

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """Its marks as one group."""
        keep_clear = getattr(self, "keep_clear", False)
        yield Group(self.tag, tuple(self.marks(scale)), self.kind, keep_clear)


def on_paper(point: Point, scale: Fraction) -> PaperPoint:
    """A point of the model on paper [mm]; exact until the last step."""
    return (_shrunk(point[0], scale), _shrunk(point[1], scale))


def _shrunk(length: Length, scale: Fraction) -> float:
    if isinstance(length, float):
        return length / float(scale)
    over, under = length.as_integer_ratio()  # a fraction of its own each time would cost more
    return (over * scale.denominator) / (under * scale.numerator)


@dataclass(frozen=True, slots=True)
class Polyline(Single):
    """A line through points; closed, it may be filled and hatched.

    Parameters
    ----------
    keep_clear
        Lettering must not lie over it.
    """

    kind: ClassVar[str] = "line"
    points: tuple[Point, ...]
    pen: Pen | None = VISIBLE
    closed: bool = field(default=False, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    fill: Ink | None = field(default=None, kw_only=True)
    hatch: Hatch | None = field(default=None, kw_only=True)
    keep_clear: bool = field(default=False, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """Fill, hatch and outline on paper."""
        points = tuple(on_paper(p, scale) for p in self.points)
        if self.fill is not None:
            yield Stroke(points, None, closed=True, fill=self.fill)
        if self.hatch is not None:
            yield from hatch_lines(points, self.hatch)
        if self.pen is not None:
            yield Stroke(points, self.pen, self.ink, self.closed)


def line(
    a: Point, b: Point, pen: Pen = VISIBLE, *, ink: Ink = Ink.INK, tag: Tag = NO_TAG
) -> Polyline:
    """A straight line."""
    return Polyline((a, b), pen, ink=ink, tag=tag)


def moved(outline: Polyline, dx: Fraction, dy: Fraction) -> Polyline:
    """The same line elsewhere in the model."""
    points = tuple((Fraction(x) + dx, Fraction(y) + dy) for x, y in outline.points)
    return replace(outline, points=points)


def rectangle(
    low: Point,
    high: Point,
    pen: Pen | None = VISIBLE,
    *,
    fill: Ink | None = None,
    hatch: Hatch | None = None,
    keep_clear: bool = False,
    tag: Tag = NO_TAG,
) -> Polyline:
    """An upright rectangle between two corners."""
    (x0, y0), (x1, y1) = low, high
    corners = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    return Polyline(
        corners, pen, closed=True, fill=fill, hatch=hatch, keep_clear=keep_clear, tag=tag
    )


@dataclass(frozen=True, slots=True)
class Arc(Single):
    """An arc, or a circle when the sweep is 360 degrees.

    Parameters
    ----------
    keep_clear
        Lettering must not lie over it.
    """

    kind: ClassVar[str] = "arc"
    centre: Point
    radius: Length
    pen: Pen | None = VISIBLE
    start_deg: float = field(default=0.0, kw_only=True)
    sweep_deg: float = field(default=360.0, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    fill: Ink | None = field(default=None, kw_only=True)
    keep_clear: bool = field(default=False, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """The arc on paper."""
        radius = _shrunk(self.radius, scale)
        centre = on_paper(self.centre, scale)
        yield ArcMark(
            centre, radius, self.pen, self.ink, self.start_deg, self.sweep_deg, self.fill
        )


def circle(
    centre: Point,
    radius: Length,
    pen: Pen | None = VISIBLE,
    *,
    fill: Ink | None = None,
    keep_clear: bool = False,
    tag: Tag = NO_TAG,
) -> Arc:
    """A full circle."""
    return Arc(centre, radius, pen, fill=fill, keep_clear=keep_clear, tag=tag)
