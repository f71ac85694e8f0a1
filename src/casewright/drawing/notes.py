"""Lettering, notes and marks of parts: held at a point of the model, sized on paper."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from casewright.dims import Content, Measure, parts_of, plain_text
from casewright.drawing.inscription import Inscription, Level
from casewright.drawing.marks import Anchor, ArcMark, Group, Mark, PaperPoint, Stroke, Tag
from casewright.drawing.pens import DIMENSION, TICK, Ink, Pen
from casewright.drawing.shapes import NO_TAG, Point, Single, on_paper

__all__ = ["Balloon", "Leader", "Text"]

_RING = Pen("ring", 0.25)


def _half_circle(first_deg: int) -> tuple[PaperPoint, ...]:
    """Points on half of a circle of radius 1."""
    turns = (math.radians(first_deg + more) for more in range(0, 181, 15))
    return tuple((math.cos(turn), math.sin(turn)) for turn in turns)


def _of_number(content: Content) -> Tag:
    """What a line of lettering stands for, where one length of the chain is told in it."""
    told = [part for part in parts_of(content) if isinstance(part, Measure) and part.path]
    return Tag(path=told[0].path, title=plain_text(content)) if len(told) == 1 else NO_TAG


_LEFT, _RIGHT = _half_circle(90), _half_circle(270)


@dataclass(frozen=True, slots=True)
class Text(Single):
    """Lettering held at a point of the model.

    Parameters
    ----------
    content
        Words and lengths; lengths are set with stacked fractions.
    height
        Height of capitals and figures [mm on paper].
    shift_mm
        Moves it on paper, right and up [mm].
    ground
        Colour of a patch under it, or none.
    """

    kind: ClassVar[str] = "text"
    at: Point
    content: Content
    height: float = 2.5
    anchor: Anchor = field(default="middle", kw_only=True)
    level: Level = field(default="middle", kw_only=True)
    rotation_deg: float = field(default=0.0, kw_only=True)
    weight: int = field(default=400, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    shift_mm: tuple[float, float] = field(default=(0.0, 0.0), kw_only=True)
    ground: Ink | None = field(default=None, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """The words as one group; where they tell one length and stand for nothing, for that."""
        tag = self.tag if self.tag != NO_TAG else _of_number(self.content)
        yield Group(tag, tuple(self.marks(scale)), self.kind)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """The words on paper."""
        x, y = on_paper(self.at, scale)
        at = (x + self.shift_mm[0], y + self.shift_mm[1])
        line_of_text = Inscription(self.content, self.height, self.weight, self.ink)
        if self.ground is not None:
            yield line_of_text.ground(
                at, anchor=self.anchor, rotation_deg=self.rotation_deg, fill=self.ground
            )
        yield from line_of_text.marks(
            at, anchor=self.anchor, level=self.level, rotation_deg=self.rotation_deg
        )


@dataclass(frozen=True, slots=True)
class Leader(Single):
    """A note beside the drawing, with a thin line to what it speaks of.

    Parameters
    ----------
    tip
        What is pointed at.
    reach_mm
        From the tip to the shoulder where the words begin, right and up [mm on paper].
    lines
        What is said, line under line.
    ends_on_edge
        An oblique stroke for an edge, a dot for a surface.
    ground
        Colour of the patch under the words: what they lie on.
    """

    kind: ClassVar[str] = "leader"
    tip: Point
    reach_mm: tuple[float, float]
    lines: tuple[Content, ...]
    height: float = field(default=2.5, kw_only=True)
    ends_on_edge: bool = field(default=False, kw_only=True)
    ground: Ink = field(default=Ink.PAPER, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """Tip, line, shoulder and words on paper."""
        tip = on_paper(self.tip, scale)
        x, y = tip[0] + self.reach_mm[0], tip[1] + self.reach_mm[1]
        side = 1.0 if self.reach_mm[0] >= 0 else -1.0
        yield Stroke((tip, (x, y), (x + 2.0 * side, y)), DIMENSION, self.ink)
        if self.ends_on_edge:
            ends = ((tip[0] - 0.8, tip[1] - 0.8), (tip[0] + 0.8, tip[1] + 0.8))
            yield Stroke(ends, TICK, self.ink)
        else:
            yield ArcMark(tip, 0.55, None, fill=self.ink)
        anchor: Anchor = "start" if side > 0 else "end"
        for words in self.lines:
            set_line = Inscription(words, self.height, ink=self.ink)
            at = (x + 3.0 * side, y)
            yield set_line.ground(at, anchor=anchor, fill=self.ground)
            yield from set_line.marks(at, anchor=anchor)
            y -= max(1.75 * self.height, set_line.extent + 0.4 * self.height)


@dataclass(frozen=True, slots=True)
class Balloon(Single):
    """The mark of a part in a ring, with a thin line to the part when it stands aside.

    Parameters
    ----------
    at
        The part.
    mark
        What stands in the ring.
    reach_mm
        From the part to the middle of the ring, right and up [mm on paper].
    """

    kind: ClassVar[str] = "balloon"
    at: Point
    mark: str
    reach_mm: tuple[float, float] = (0.0, 0.0)
    height: float = field(default=2.5, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """Line, ring and mark on paper."""
        tip = on_paper(self.at, scale)
        centre = (tip[0] + self.reach_mm[0], tip[1] + self.reach_mm[1])
        words = Inscription(self.mark, self.height, 600, self.ink)
        if self.reach_mm != (0.0, 0.0):
            yield Stroke((tip, centre), DIMENSION, self.ink)
            yield ArcMark(tip, 0.55, None, fill=self.ink)
        yield from _ring(centre, words.width, self.height, self.ink)
        yield from words.marks(centre, anchor="middle")


def _ring(centre: PaperPoint, width: float, height: float, ink: Ink) -> Sequence[Mark]:
    """A circle round a short mark; a lozenge with round ends round a long one."""
    radius = 1.15 * height
    straight = max(0.0, width / 2 + 0.3 * height - radius * 0.8)
    if straight == 0.0:
        return [ArcMark(centre, radius, _RING, ink, fill=Ink.PAPER)]
    x, y = centre
    left, right = x - straight, x + straight
    ends = (
        *((left + radius * u, y + radius * v) for u, v in _LEFT),
        *((right + radius * u, y + radius * v) for u, v in _RIGHT),
    )
    return [Stroke(ends, _RING, ink, closed=True, fill=Ink.PAPER)]
