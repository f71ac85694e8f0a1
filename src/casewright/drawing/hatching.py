"""Parallel lines clipped to a polygon."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from casewright.drawing.marks import PaperPoint, Stroke
from casewright.drawing.pens import HATCHING, Ink, Pen

__all__ = ["BACK_SECTION", "SECTION", "Hatch", "hatch_lines"]


@dataclass(frozen=True, slots=True)
class Hatch:
    """Parallel lines on cut wood.

    Parameters
    ----------
    angle_deg
        Counter-clockwise from horizontal.
    spacing_mm
        Between lines [mm on paper].
    """

    angle_deg: float
    spacing_mm: float
    pen: Pen = HATCHING
    ink: Ink = Ink.INK


SECTION = Hatch(45.0, 1.6)
"""A part cut through."""
BACK_SECTION = Hatch(135.0, 1.6)
"""The part that touches it, cut through."""


def hatch_lines(outline: Sequence[PaperPoint], hatch: Hatch) -> list[Stroke]:
    """The lines of a hatch inside a closed polygon (even-odd), through a grid fixed on the model.

    Parameters
    ----------
    outline
        Corners [mm on paper].
    """
    turn = math.radians(-hatch.angle_deg)
    cos, sin = math.cos(turn), math.sin(turn)
    turned = [(x * cos - y * sin, x * sin + y * cos) for x, y in outline]
    low, high = min(v for _, v in turned), max(v for _, v in turned)
    step = hatch.spacing_mm
    strokes = []
    for k in range(math.floor(low / step) + 1, math.ceil(high / step)):
        crossings = _crossings(turned, k * step)
        for u0, u1 in zip(crossings[::2], crossings[1::2], strict=False):
            ends = tuple((u * cos + k * step * sin, -u * sin + k * step * cos) for u in (u0, u1))
            strokes.append(Stroke(ends, hatch.pen, hatch.ink))
    return strokes


def _crossings(corners: Sequence[PaperPoint], v: float) -> list[float]:
    """Where a level line meets the edges, in order."""
    found = []
    for (u0, v0), (u1, v1) in zip(corners, [*corners[1:], corners[0]], strict=True):
        if (v0 <= v) != (v1 <= v):
            found.append(u0 + (v - v0) * (u1 - u0) / (v1 - v0))
    return sorted(found)
