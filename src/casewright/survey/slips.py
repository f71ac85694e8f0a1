"""Slips of the eye and of the pencil that turn one reading into another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Unit
from casewright.sources import INCH

__all__ = ["ReadingSlip", "meant"]

_READ_OFF: dict[Unit, tuple[tuple[str, str], ...]] = {
    "in": (("1", "the tape was held at its first inch"), ("10", "one ten off"),
           ("12", "one foot off"), ("100", "one hundred off")),
    "mm": (("10", "the tape was held at its first centimetre"), ("100", "one hundred off"),
           ("1000", "one metre off")),
}  # fmt: skip
"""Usual slips with a tape (common practice)."""

_OTHER_UNIT: dict[Unit, tuple[tuple[Fraction, str], ...]] = {
    "in": ((1 / INCH, "read in millimetres"), (10 / INCH, "read in centimetres")),
    "mm": ((INCH, "read in inches"), (Fraction(10), "read in centimetres")),
}
"""What a reading is to be multiplied by when it was read on the other side of the tape."""

_PLACES = 4


@dataclass(frozen=True, slots=True)
class ReadingSlip:
    """What a reading may have been.

    Parameters
    ----------
    value
        [mm].
    because
        The slip, in words.
    """

    value: Fraction
    because: str


def meant(value: Fraction, near: Fraction, within: Fraction, unit: Unit) -> ReadingSlip | None:
    """The value that a slip would explain, when one lies where the others are.

    Parameters
    ----------
    value
        As read [mm]; under 0 no slip explains it.
    near, within
        Where the other readings put it, and how closely [mm].

    Examples
    --------
    >>> found = meant(181 * INCH, Fraction(118) * INCH, INCH, "in")
    >>> found.value / INCH, found.because
    (Fraction(118, 1), 'two figures swapped')
    """
    if value < 0:
        return None  # no figures of a tape to swap
    found = [each for each in _slips(value, unit) if abs(each.value - near) <= within]
    return min(found, key=lambda each: abs(each.value - near), default=None)


def _slips(value: Fraction, unit: Unit) -> Iterator[ReadingSlip]:
    size = INCH if unit == "in" else Fraction(1)
    yield from (ReadingSlip(each * size, "two figures swapped") for each in _swapped(value / size))
    for step, because in _READ_OFF[unit]:
        for sign in (-1, 1):
            moved = value + sign * int(step) * size
            if moved > 0:
                yield ReadingSlip(moved, because)
    for by, because in _OTHER_UNIT[unit]:
        yield ReadingSlip(value * by, because)


def _swapped(number: Fraction) -> Iterator[Fraction]:
    """A number with two neighbouring figures the other way round, those before the point first."""
    whole, rest = divmod(number, 1)
    yield from (Fraction(each) + rest for each in _pairs_swapped(str(whole)))
    decimals = rest * 10**_PLACES
    if rest and decimals.denominator == 1:
        figures = f"{int(decimals):0{_PLACES}}".rstrip("0")
        yield from (whole + Fraction(f"0.{each}") for each in _pairs_swapped(figures))


def _pairs_swapped(figures: str) -> Iterator[str]:
    for place in range(len(figures) - 1):
        pair = figures[place : place + 2]
        if pair[0] != pair[1]:
            yield f"{figures[:place]}{pair[::-1]}{figures[place + 2 :]}"
