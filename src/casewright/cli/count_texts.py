"""Whole numbers of a unit as the shop would say them."""

from __future__ import annotations

from fractions import Fraction

from casewright.cutting.solution import Rect
from casewright.dims import Unit, parse_length, shop_text
from casewright.errors import LengthError

__all__ = ["Tape"]


class Tape:
    """Reads counts of a problem's unit off a tape.

    Parameters
    ----------
    name
        Of the unit. '1/32 in', '0.1 mm' and 'mm' are lengths, told in inches or millimetres; of
        any other name the bare counts are told.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        self.step = _step(name)
        self.unit: Unit = "in" if any(mark in name for mark in ("in", '"', "ft", "'")) else "mm"

    @property
    def note(self) -> str:
        """What the numbers are."""
        if self.step is None:
            return f'numbers count the unit of the problem, "{self.name}"'
        return "lengths in inches" if self.unit == "in" else "lengths in mm"

    def text(self, count: int) -> str:
        """One length."""
        return str(count) if self.step is None else shop_text(count * self.step, self.unit)

    def size(self, rect: Rect) -> str:
        """Length by width."""
        return f"{self.text(rect.length)} x {self.text(rect.width)}"


def _step(name: str) -> Fraction | None:
    """The unit's length [mm]; None when its name is no length."""
    for text in (name, f"1 {name}"):
        try:
            found: set[Fraction] = {parse_length(text, "in"), parse_length(text, "mm")}
        except LengthError:
            continue
        if len(found) == 1 and min(found) > 0:
            return found.pop()
    return None
