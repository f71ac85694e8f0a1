"""Whole units: a step so fine that every size of a cutting problem is a whole number of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from casewright.dims import FINEST, Unit, exact_text
from casewright.sources import INCH

__all__ = ["UnevenLengthError", "WholeUnit", "common_unit"]

_PER_UNIT = {"in": INCH, "mm": Fraction(1)}


class UnevenLengthError(ValueError):
    """A length is no whole number of the unit: a defect of the program."""


@dataclass(frozen=True, slots=True)
class WholeUnit:
    """A step that a problem counts in.

    Parameters
    ----------
    step
        [mm].
    name
        In words: '1/64 in'.
    """

    step: Fraction
    name: str

    def count(self, length: Fraction) -> int:
        """A length in whole steps.

        Raises
        ------
        UnevenLengthError
            When it does not come out even.
        """
        steps = length / self.step
        if steps.denominator != 1:
            msg = f"{length} mm is no whole number of {self.name}"
            raise UnevenLengthError(msg)
        return steps.numerator

    def length(self, count: int) -> Fraction:
        """Steps as a length [mm]."""
        return count * self.step


def common_unit(lengths: Iterable[Fraction], unit: Unit) -> WholeUnit:
    """The coarsest step that divides every length and the tape's finest mark.

    Parameters
    ----------
    lengths
        [mm].
    unit
        Unit of the job: the finest marks are 1/64 in or 0.01 mm.

    Examples
    --------
    >>> common_unit([INCH * 12, INCH * Fraction(95, 8)], "in").name
    '1/64 in'
    >>> common_unit([Fraction(100, 3)], "mm").name
    '1/300 mm'
    """
    step = _PER_UNIT[unit] / FINEST[unit]
    for length in lengths:
        if length:
            step = _common(step, length)
    return WholeUnit(step, f"{exact_text(step / _PER_UNIT[unit])} {unit}")


def _common(one: Fraction, other: Fraction) -> Fraction:
    top = gcd(one.numerator * other.denominator, other.numerator * one.denominator)
    return Fraction(top, one.denominator * other.denominator)
