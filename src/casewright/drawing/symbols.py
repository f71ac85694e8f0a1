"""Signs of the shop drawing: each has a shape of its own, so that colour never speaks alone."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Literal

from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import ArcMark, Mark, PaperPoint, Stroke, Tag
from casewright.drawing.pens import THIN, Ink, Pen
from casewright.drawing.shapes import NO_TAG, Point, Single, on_paper

__all__ = ["SIGNS", "GrainArrow", "Sign", "SignKind"]

SignKind = Literal[
    "datum", "left", "right", "face A", "face B", "measure first", "look", "ask", "caution"
]

_BOLD = Pen("sign", 0.4)
_GRAIN = Pen("grain", 0.13)


@dataclass(frozen=True, slots=True)
class Sign(Single):
    """A sign at a point of the model.

    Parameters
    ----------
    sign
        datum: a triangle whose point touches the datum edge or end; left, right: the hand of a
        part; face A, face B: the show face and the other; measure first: measure before cutting;
        look: look here; ask: a question is open; caution: someone can be hurt.
    at
        Where its foot is [mm of model].
    toward_deg
        Which way it stands from its foot, for the datum; 90 is up.
    size_mm
        Its height [mm on paper].
    shift_mm
        Moves it on paper, right and up [mm].
    """

    kind: ClassVar[str] = "sign"
    sign: SignKind
    at: Point
    toward_deg: float = field(default=90.0, kw_only=True)
    size_mm: float = field(default=4.0, kw_only=True)
    shift_mm: tuple[float, float] = field(default=(0.0, 0.0), kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """The sign on paper."""
        x, y = on_paper(self.at, scale)
        at = (x + self.shift_mm[0], y + self.shift_mm[1])
        if self.sign == "datum":
            return _datum(at, self.size_mm, self.toward_deg)
        return _SHAPES[self.sign](at, self.size_mm)


@dataclass(frozen=True, slots=True)
class GrainArrow(Single):
    """Which way the grain runs: a long double arrow with two strokes beside it.

    Parameters
    ----------
    at
        Its middle [mm of model].
    length_mm
        [mm on paper].
    along_deg
        Direction of the grain; 0 lies, 90 stands.
    shift_mm
        Moves it on paper, right and up [mm].
    """

    kind: ClassVar[str] = "grain"
    at: Point
    length_mm: float = 16.0
    along_deg: float = field(default=0.0, kw_only=True)
    shift_mm: tuple[float, float] = field(default=(0.0, 0.0), kw_only=True)
    ink: Ink = field(default=Ink.SOFT, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)

    def marks(self, scale: Fraction) -> Iterable[Mark]:
        """The arrow on paper."""
        x, y = on_paper(self.at, scale)
        place = _turned((x + self.shift_mm[0], y + self.shift_mm[1]), self.along_deg)
        half = self.length_mm / 2
        yield Stroke((place(-half, 0), place(half, 0)), THIN, self.ink)
        for end, way in ((-half, 1.0), (half, -1.0)):
            head = (place(end + way * 2.2, 0.9), place(end, 0), place(end + way * 2.2, -0.9))
            yield Stroke(head, THIN, self.ink)
        for side in (1.1, -1.1):
            reach = half * 0.42
            yield Stroke((place(-reach, side), place(reach, side)), _GRAIN, self.ink)


def _turned(origin: PaperPoint, angle_deg: float) -> Callable[[float, float], PaperPoint]:
    turn = math.radians(angle_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    return lambda u, v: (origin[0] + u * cos - v * sin, origin[1] + u * sin + v * cos)


def _datum(at: PaperPoint, size: float, toward_deg: float) -> Iterator[Mark]:
    place = _turned(at, toward_deg)
    half = 0.45 * size
    corners = (place(0, 0), place(0.8 * size, half), place(0.8 * size, -half))
    yield Stroke(corners, None, closed=True, fill=Ink.INK)


def _letter(at: PaperPoint, letter: str, height: float, ink: Ink) -> tuple[Mark, ...]:
    return Inscription(letter, height, 600, ink).marks(at, anchor="middle")


def _hand(at: PaperPoint, size: float, way: float, letter: str) -> Iterator[Mark]:
    """A plate pointing to the hand's side, with its letter."""
    x, y = at
    half, body, nose = size / 2, 0.5 * size, 1.0 * size
    corners = (
        (x - way * body, y - half),
        (x + way * body, y - half),
        (x + way * nose, y),
        (x + way * body, y + half),
        (x - way * body, y + half),
    )
    yield Stroke(corners, _BOLD, closed=True, fill=Ink.PAPER)
    yield from _letter((x + way * 0.12 * size, y), letter, 0.6 * size, Ink.INK)


def _left(at: PaperPoint, size: float) -> Iterator[Mark]:
    return _hand(at, size, -1.0, "L")


def _right(at: PaperPoint, size: float) -> Iterator[Mark]:
    return _hand(at, size, 1.0, "R")


def _face_a(at: PaperPoint, size: float) -> Iterator[Mark]:
    yield ArcMark(at, size / 2, None, fill=Ink.INK)
    yield from _letter(at, "A", 0.52 * size, Ink.PAPER)


def _face_b(at: PaperPoint, size: float) -> Iterator[Mark]:
    yield ArcMark(at, size / 2 - _BOLD.width_mm / 2, _BOLD, fill=Ink.PAPER)
    yield from _letter(at, "B", 0.52 * size, Ink.INK)


def _measure_first(at: PaperPoint, size: float) -> Iterator[Mark]:
    """A rule between two stops: measure before cutting."""
    x, y = at
    half, tall = 0.85 * size, 0.36 * size
    box = ((x - half, y - tall), (x + half, y - tall), (x + half, y + tall), (x - half, y + tall))
    yield Stroke(box, _BOLD, Ink.MEASURE, closed=True, fill=Ink.PAPER)
    for k in range(1, 8):
        u = x - half + k * half / 4
        depth = 0.42 * size if k == 4 else 0.3 * size if k % 2 == 0 else 0.18 * size
        yield Stroke(((u, y + tall), (u, y + tall - depth)), THIN, Ink.MEASURE)


def _look(at: PaperPoint, size: float) -> Iterator[Mark]:
    """A pennant planted on the spot."""
    x, y = at
    yield Stroke((at, (x, y + size)), _BOLD, Ink.LOOK)
    flag = ((x, y + size), (x + 0.85 * size, y + 0.74 * size), (x, y + 0.46 * size))
    yield Stroke(flag, None, closed=True, fill=Ink.LOOK)
    yield ArcMark(at, 0.11 * size, None, fill=Ink.LOOK)


def _ask(at: PaperPoint, size: float) -> Iterator[Mark]:
    x, y = at
    half = 0.62 * size
    corners = ((x, y - half), (x + half, y), (x, y + half), (x - half, y))
    yield Stroke(corners, _BOLD, Ink.ASK, closed=True, fill=Ink.PAPER)
    yield from _letter(at, "?", 0.55 * size, Ink.ASK)


def _caution(at: PaperPoint, size: float) -> Iterator[Mark]:
    """The general warning triangle (shape of ISO 7010 W001, in our inks)."""
    x, y = at
    half = size / math.sqrt(3)
    low, high = y - 0.45 * size, y + 0.55 * size
    corners = ((x - half, low), (x + half, low), (x, high))
    yield Stroke(corners, _BOLD, Ink.LOOK, closed=True, fill=Ink.PAPER)
    yield Stroke(((x, y + 0.2 * size), (x, y - 0.13 * size)), Pen("sign", 0.12 * size), Ink.LOOK)
    yield ArcMark((x, y - 0.29 * size), 0.065 * size, None, fill=Ink.LOOK)


_SHAPES: dict[SignKind, Callable[[PaperPoint, float], Iterator[Mark]]] = {
    "left": _left,
    "right": _right,
    "face A": _face_a,
    "face B": _face_b,
    "measure first": _measure_first,
    "look": _look,
    "ask": _ask,
    "caution": _caution,
}

SIGNS: dict[SignKind, str] = {
    "datum": "datum: hook the tape or set the fence here",
    "left": "left-hand part",
    "right": "right-hand part",
    "face A": "face A, into the box or the room",
    "face B": "face B, the other face",
    "measure first": "measure before cutting",
    "look": "look here",
    "ask": "a question is open",
    "caution": "caution",
}
"""What each sign says, for the key to the drawings."""
