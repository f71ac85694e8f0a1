"""What a drawing is on paper: strokes, arcs and words in millimetres of paper, y upward."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal, NamedTuple

from casewright.drawing.lettering import text_width
from casewright.drawing.pens import Ink, Pen

__all__ = [
    "HELD", "Anchor", "ArcMark", "Area", "Group", "Mark", "PaperPoint", "Stroke", "Tag", "Word",
]  # fmt: skip

PaperPoint = tuple[float, float]
Anchor = Literal["start", "middle", "end"]

HELD: dict[Anchor, float] = {"start": 0.0, "middle": 0.5, "end": 1.0}
"""How far along a word it is held [-]."""


class Area(NamedTuple):
    """A rectangle on paper [mm], y upward."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        """From left to right [mm]."""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """From bottom to top [mm]."""
        return self.y1 - self.y0

    def moved(self, dx: float, dy: float) -> Area:
        """The same area elsewhere."""
        return Area(self.x0 + dx, self.y0 + dy, self.x1 + dx, self.y1 + dy)

    @classmethod
    def around(cls, areas: Iterable[Area]) -> Area:
        """The smallest area that holds all of them; empty at the origin for none."""
        found = list(areas)
        if not found:
            return cls(0.0, 0.0, 0.0, 0.0)
        x0, y0, x1, y1 = zip(*found, strict=True)
        return cls(min(x0), min(y0), max(x1), max(y1))


@dataclass(frozen=True, slots=True)
class Tag:
    """What an element stands for.

    Parameters
    ----------
    path
        Path on the chain of dimensions, or of the part.
    title
        Words shown when the element is touched.
    target
        Anchor that the element leads to.
    key
        Identifier of the element, unique in its drawing.
    """

    path: str = ""
    title: str = ""
    target: str = ""
    key: str = ""


class Stroke(NamedTuple):
    """A line through points, filled when closed and a fill is given."""

    points: tuple[PaperPoint, ...]
    pen: Pen | None
    ink: Ink = Ink.INK
    closed: bool = False
    fill: Ink | None = None
    round_ends: bool = False

    @property
    def area(self) -> Area:
        """What it covers, without the width of the pen."""
        if len(self.points) == 2:  # asked for very often
            (x0, y0), (x1, y1) = self.points
            return Area(
                x0 if x0 < x1 else x1, y0 if y0 < y1 else y1,
                x1 if x0 < x1 else x0, y1 if y0 < y1 else y0,
            )  # fmt: skip
        xs, ys = zip(*self.points)  # noqa: B905 (pairs)
        return Area(min(xs), min(ys), max(xs), max(ys))

    def moved(self, dx: float, dy: float) -> Stroke:
        """The same stroke elsewhere."""
        return self._replace(points=tuple((x + dx, y + dy) for x, y in self.points))

    def reduced(self, by: float) -> Stroke:
        """The same stroke, so many times as long, about the origin."""
        return self._replace(points=tuple((x * by, y * by) for x, y in self.points))


class ArcMark(NamedTuple):
    """An arc, or a circle when the sweep is 360 degrees; counted counter-clockwise from +x."""

    centre: PaperPoint
    radius: float
    pen: Pen | None
    ink: Ink = Ink.INK
    start_deg: float = 0.0
    sweep_deg: float = 360.0
    fill: Ink | None = None

    @property
    def is_circle(self) -> bool:
        """Whether it closes on itself."""
        return self.sweep_deg >= 360.0

    def point(self, angle_deg: float) -> PaperPoint:
        """The point of the circle at an angle."""
        turn = math.radians(angle_deg)
        return (
            self.centre[0] + self.radius * math.cos(turn),
            self.centre[1] + self.radius * math.sin(turn),
        )

    @property
    def area(self) -> Area:
        """What it covers."""
        x, y = self.centre
        if self.is_circle:
            r = self.radius
            return Area(x - r, y - r, x + r, y + r)
        end = self.start_deg + self.sweep_deg
        first = math.ceil(self.start_deg / 90) * 90
        angles = [self.start_deg, *(float(a) for a in range(first, math.ceil(end), 90)), end]
        xs, ys = zip(*(self.point(a) for a in angles), strict=True)
        return Area(min(xs), min(ys), max(xs), max(ys))

    def moved(self, dx: float, dy: float) -> ArcMark:
        """The same arc elsewhere."""
        return self._replace(centre=(self.centre[0] + dx, self.centre[1] + dy))

    def reduced(self, by: float) -> ArcMark:
        """The same arc, so many times as large, about the origin."""
        x, y = self.centre
        return self._replace(centre=(x * by, y * by), radius=self.radius * by)


class Word(NamedTuple):
    """A run of lettering on its baseline.

    Parameters
    ----------
    height
        Height of capitals and figures [mm on paper].
    rotation_deg
        Counter-clockwise about `at`.
    """

    at: PaperPoint
    text: str
    height: float
    anchor: Anchor = "start"
    rotation_deg: float = 0.0
    weight: int = 400
    ink: Ink = Ink.INK

    @property
    def area(self) -> Area:
        """What it covers, descenders included."""
        width = text_width(self.text, self.height)
        left = -HELD[self.anchor] * width
        low, high = -0.3 * self.height, 1.05 * self.height
        if not self.rotation_deg:
            x, y = self.at
            return Area(x + left, y + low, x + left + width, y + high)
        turn = math.radians(self.rotation_deg)
        cos, sin = math.cos(turn), math.sin(turn)
        corners = [(u, v) for u in (left, left + width) for v in (low, high)]
        xs = [self.at[0] + u * cos - v * sin for u, v in corners]
        ys = [self.at[1] + u * sin + v * cos for u, v in corners]
        return Area(min(xs), min(ys), max(xs), max(ys))

    def moved(self, dx: float, dy: float) -> Word:
        """The same word elsewhere."""
        return self._replace(at=(self.at[0] + dx, self.at[1] + dy))

    def reduced(self, by: float) -> Word:
        """The same word, so many times as large, about the origin."""
        return self._replace(at=(self.at[0] * by, self.at[1] * by), height=self.height * by)


Mark = Stroke | ArcMark | Word


@dataclass(frozen=True)
class Group:
    """The marks of one element, with what it stands for.

    Parameters
    ----------
    keep_clear
        Lettering must not lie over it: a hole, a pocket.
    """

    tag: Tag
    marks: tuple[Mark, ...]
    kind: str = ""
    keep_clear: bool = False

    @cached_property
    def area(self) -> Area:
        """What the marks cover."""
        return Area.around(mark.area for mark in self.marks)

    def moved(self, dx: float, dy: float) -> Group:
        """The same group elsewhere."""
        return replace(self, marks=tuple(mark.moved(dx, dy) for mark in self.marks))

    def reduced(self, by: float) -> Group:
        """The same group, so many times as large, about the origin."""
        return replace(self, marks=tuple(mark.reduced(by) for mark in self.marks))

    def __iter__(self) -> Iterator[Mark]:
        return iter(self.marks)
