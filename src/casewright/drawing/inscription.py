"""Setting a line of lettering with stacked fractions into marks on paper."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import Literal, NamedTuple

from casewright.dims import Content
from casewright.drawing.lettering import text_width
from casewright.drawing.marks import HELD, Anchor, Mark, PaperPoint, Stroke, Word
from casewright.drawing.pens import Ink, Pen
from casewright.drawing.stacking import Piece, Stack, pieces

__all__ = ["Inscription", "Level"]

Level = Literal["baseline", "middle"]

_SMALL = 0.7  # figures of a fraction against those of the whole number
_BAR = 0.09
_CLEAR = 0.24  # from the middle of the bar to the figures
_OVERHANG = 0.08
_JOIN = 0.2  # between a whole number and its fraction


@lru_cache(maxsize=16384)
def _laid(content: Content, height: float) -> tuple[tuple[Piece, float], ...]:
    """Pieces of a line in order, and the room each needs; asked for at scale after scale."""
    found: list[tuple[Piece, float]] = []
    for piece in pieces(content):
        if isinstance(piece, Stack):
            room = _figures(piece, height) + 2 * _OVERHANG * height
            found.append((piece, room + (_JOIN * height if found else 0.0)))
        else:
            found.append((piece, text_width(piece, height)))
    return tuple(found)


@lru_cache(maxsize=16384)
def _room(content: Content, height: float) -> float:
    """Room along a line."""
    return sum(width for _, width in _laid(content, height))


def _figures(stack: Stack, height: float) -> float:
    """Width of the wider of the two numbers of a fraction."""
    small = height * _SMALL
    return max(text_width(stack.numerator, small), text_width(stack.denominator, small))


class Inscription(NamedTuple):
    """A line of lettering as it will be set.

    Parameters
    ----------
    content
        Words and lengths.
    height
        Height of capitals and figures [mm on paper].
    weight
        400 regular, 500 medium, 600 semi-bold.
    """

    content: Content
    height: float
    weight: int = 400
    ink: Ink = Ink.INK

    @property
    def width(self) -> float:
        """Room along the line [mm on paper]."""
        return _room(self.content, self.height)

    @property
    def has_fraction(self) -> bool:
        """Whether anything on it is stacked."""
        return any(isinstance(piece, Stack) for piece, _ in _laid(self.content, self.height))

    @property
    def extent(self) -> float:
        """Room across the line, about the middle of its figures [mm on paper]."""
        return self.height * (2 * (_CLEAR + _SMALL) if self.has_fraction else 1.0)

    def marks(
        self,
        at: PaperPoint,
        *,
        anchor: Anchor = "start",
        level: Level = "middle",
        rotation_deg: float = 0.0,
    ) -> tuple[Mark, ...]:
        """The line set on paper.

        Parameters
        ----------
        at
            Where the line is held [mm on paper].
        anchor
            Which end, or the middle, is held there.
        level
            Whether the baseline or the middle of the figures is held there.
        rotation_deg
            Counter-clockwise about `at`.
        """
        frame = _frame(at, rotation_deg)
        laid = _laid(self.content, self.height)
        u = -HELD[anchor] * sum([width for _, width in laid])
        v = 0.0 if level == "baseline" else -self.height / 2
        found: list[Mark] = []
        for piece, width in laid:
            if isinstance(piece, Stack):
                found.extend(self._stack(frame, piece, u + width, v + self.height / 2))
            else:
                place = frame.point(u, v)
                found.append(self._word(frame, place, piece, self.height, "start"))
            u += width
        return tuple(found)

    def ground(
        self,
        at: PaperPoint,
        *,
        anchor: Anchor = "start",
        rotation_deg: float = 0.0,
        fill: Ink = Ink.PAPER,
    ) -> Stroke:
        """A patch under the line, so that what it lies on does not run through it."""
        frame = _frame(at, rotation_deg)
        left = -HELD[anchor] * self.width
        edge, half = 0.12 * self.height, self.extent / 2 + 0.12 * self.height
        box = ((left - edge, -half), (left + self.width + edge, half))
        corners = [(u, v) for u in (box[0][0], box[1][0]) for v in (box[0][1], box[1][1])]
        a, b, d, c = (frame.point(u, v) for u, v in corners)
        return Stroke((a, b, c, d), None, closed=True, fill=fill)

    def _stack(self, frame: _Frame, stack: Stack, right: float, middle: float) -> Iterator[Mark]:
        """A fraction that ends at `right`, its bar at `middle`."""
        small = self.height * _SMALL
        half = _figures(stack, self.height) / 2 + _OVERHANG * self.height
        centre = right - half
        clear = _CLEAR * self.height
        over = frame.point(centre, middle + clear)
        under = frame.point(centre, middle - clear - small)
        yield self._word(frame, over, stack.numerator, small, "middle")
        bar = (frame.point(centre - half, middle), frame.point(centre + half, middle))
        yield Stroke(bar, Pen("bar", max(0.15, _BAR * self.height)), self.ink)
        yield self._word(frame, under, stack.denominator, small, "middle")

    def _word(
        self, frame: _Frame, at: PaperPoint, text: str, height: float, anchor: Anchor
    ) -> Word:
        return Word(at, text, height, anchor, frame.rotation_deg, self.weight, self.ink)


class _Frame(NamedTuple):
    """A turned frame on paper."""

    origin: PaperPoint
    rotation_deg: float
    cos: float
    sin: float

    def point(self, u: float, v: float) -> PaperPoint:
        (x, y), cos, sin = self.origin, self.cos, self.sin
        return (x + u * cos - v * sin, y + u * sin + v * cos)


def _frame(origin: PaperPoint, rotation_deg: float) -> _Frame:
    if not rotation_deg:  # nearly always
        return _Frame(origin, rotation_deg, 1.0, 0.0)
    turn = math.radians(rotation_deg)
    return _Frame(origin, rotation_deg, math.cos(turn), math.sin(turn))
