"""Standard scales, the choice among them, and the bar that proves a print is true."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims.units import Unit
from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Group, Mark, PaperPoint, Stroke, Tag
from casewright.drawing.pens import THIN, Ink

__all__ = [
    "FINE_SCALES", "SCALES", "ScaleError", "check_bar", "check_bar_width", "scale_text",
]  # fmt: skip

SCALES: dict[Unit, tuple[Fraction, ...]] = {
    "in": tuple(map(Fraction, (1, 2, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96))),
    "mm": tuple(map(Fraction, (1, 2, 4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 75, 100))),
}
"""Scales of shop drawings, largest picture first: feet and inches in the one, ISO 5455 and the
steps between in the other (common practice)."""

FINE_SCALES = tuple(Fraction(scale) for scale in (*range(10, 40, 2), *range(40, 100, 5), 100))
"""For pictures that say everything in numbers and that nobody lays a scale on: as large as the
paper lets them be, largest picture first."""

_FEET = {2: "6 in", 4: "3 in", 6: "2 in", 8: "1 1/2 in", 12: "1 in", 16: "3/4 in", 24: "1/2 in",
         32: "3/8 in", 48: "1/4 in", 64: "3/16 in", 96: "1/8 in"}  # fmt: skip
_INCH = 25.4


class ScaleError(ValueError):
    """No standard scale is small enough for the picture to fit on the paper it was given.

    A defect of the program: who places a picture gives it room.
    """


def scale_text(scale: Fraction, unit: Unit) -> str:
    """A scale in words: '1:8 (1 1/2 in to the foot)'.

    Parameters
    ----------
    scale
        Millimetres of model to one of paper.
    """
    ratio = f"1:{scale}" if scale >= 1 else f"{1 / scale}:1"
    if scale == 1:
        return "full size"
    if unit == "in" and (foot := _FEET.get(int(scale))):
        return f"{ratio} ({foot} to the foot)"
    return ratio


def check_bar_width(unit: Unit) -> float:
    """Length of the check bar: 4 in or 100 mm [mm]."""
    return 4 * _INCH if unit == "in" else 100.0


def check_bar(unit: Unit, at: PaperPoint = (0.0, 0.0)) -> Group:
    """A bar that must measure 4 in or 100 mm on the print, from its lower left end.

    Parameters
    ----------
    at
        Lower left end [mm on paper].
    """
    x, y = at
    width = check_bar_width(unit)
    parts = 4 if unit == "in" else 10
    step = width / parts
    marks: list[Mark] = [Stroke(((x, y), (x + width, y)), THIN)]
    for k in range(parts + 1):
        tall = 2.2 if k in (0, parts) else 1.4
        marks.append(Stroke(((x + k * step, y), (x + k * step, y + tall)), THIN))
    for k in range(0, parts, 2):
        cells = ((x + k * step, y), (x + (k + 1) * step, y))
        top = tuple((u, v + 0.8) for u, v in reversed(cells))
        marks.append(Stroke((*cells, *top), None, closed=True, fill=Ink.INK))
    size = "4 in" if unit == "in" else "100 mm"
    words = Inscription(f"this bar measures {size} on a true print", 1.9, ink=Ink.SOFT)
    marks.extend(words.marks((x + width / 2, y + 3.4), anchor="middle"))
    return Group(Tag(key="check-bar"), tuple(marks), "check bar")
