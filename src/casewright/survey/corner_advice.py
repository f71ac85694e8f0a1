"""Which further reading of a corner would tell most of how its walls meet."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.survey.angles import angle_of
from casewright.survey.corners import SurveyedCorner
from casewright.survey.readings import Accuracy

__all__ = ["WANDER_DEGREES", "CornerAdvice", "advise_corner", "spread_degrees"]

_EYE_DEGREES = 1.0
"""How far a corner that nobody read is off square, as a standard deviation (own judgement)."""

WANDER_DEGREES = 0.3
"""How far walls that are not flat turn an angle from one reading to the other (own judgement)."""

_WORTH_MM = 0.5
"""Least that a reading takes off the deviation at the fronts to be worth asking for [mm]."""

_FINE = 10**6  # parts of a millimetre

_LEGS = (1200.0, 900.0)
"""Sides of a triangle that is laid out, 4 and 3 parts (common practice) [mm]."""


@dataclass(frozen=True, slots=True)
class CornerAdvice:
    """The further reading of a corner that would cut the risk most.

    Parameters
    ----------
    read
        What to read.
    before_mm, after_mm
        Standard deviation of how far a wall departs from square at the fronts, without it and with
        it [mm]; infinite: known only by eye.
    """

    read: Literal["triangle", "diagonal"]
    before_mm: float
    after_mm: float

    @property
    def spread(self) -> Fraction | None:
        """The first of them to a millionth of a millimetre; None: known only by eye [mm]."""
        return _fine(self.before_mm) if math.isfinite(self.before_mm) else None

    @property
    def spread_then(self) -> Fraction:
        """The other one, likewise [mm]."""
        return _fine(self.after_mm)


def _fine(size_mm: float) -> Fraction:
    return Fraction(round(size_mm * _FINE), _FINE)


def spread_degrees(left_mm: float, right_mm: float, cosine: float, sigma_mm: float) -> float:
    """How well an angle is known from two sides and what lies across, each read alike [deg].

    First-order propagation of the law of cosines: dc/dl = 1/r - c/l, dc/dr = 1/l - c/r,
    dc/da = -a / (l r), each times the deviation of its reading, over the sine.

    Parameters
    ----------
    left_mm, right_mm
        Sides.
    cosine
        Of the angle between them.
    sigma_mm
        Standard deviation of a reading.
    """
    across = math.sqrt(left_mm**2 + right_mm**2 - 2 * left_mm * right_mm * cosine)
    slopes = (
        1 / right_mm - cosine / left_mm,
        1 / left_mm - cosine / right_mm,
        across / (left_mm * right_mm),
    )
    sine = math.sqrt(1 - cosine**2)
    return math.degrees(math.hypot(*slopes) * sigma_mm / sine)


def advise_corner(
    corner: SurveyedCorner,
    sides: tuple[Fraction | None, Fraction | None],
    accuracy: Accuracy,
    depth: Fraction,
) -> CornerAdvice | None:
    """The better of a triangle and of the diagonal of both walls, where it tells enough.

    Each way of reading adds what it knows to what is known: variances as weights (Gauss).

    Parameters
    ----------
    sides
        Widths of the two walls [mm]; None: not read, so that their diagonal tells nothing.
    accuracy
        Of a reading with the tape.
    depth
        Of the cases that stand there [mm].
    """
    sigma = float(accuracy.sigma)
    known = [_wandering(angle_of(way.cosine).sigma_degrees) for way in corner.ways]
    cosine = float(corner.cosine.value) if corner.cosine is not None else 0.0
    now = _together([_EYE_DEGREES, *known])
    read = {way.name for way in corner.ways}
    after: dict[Literal["triangle", "diagonal"], float] = {}
    if "triangle" not in read:
        spread = spread_degrees(*_LEGS, cosine, sigma)
        after["triangle"] = _with([_EYE_DEGREES, *known], spread)
    left, right = sides
    if "diagonal" not in read and left and right:
        spread = spread_degrees(float(left), float(right), cosine, sigma)
        after["diagonal"] = _with([_EYE_DEGREES, *known], spread)
    if not after:
        return None
    best = min(after, key=lambda each: after[each])
    before_mm, after_mm = (float(depth) * math.radians(each) for each in (now, after[best]))
    if before_mm - after_mm < _WORTH_MM:
        return None
    return CornerAdvice(best, before_mm if known else math.inf, after_mm)


def _wandering(degrees: float) -> float:
    return math.hypot(degrees, WANDER_DEGREES)


def _with(known: list[float], more: float) -> float:
    return _together([*known, _wandering(more)])


def _together(spreads: list[float]) -> float:
    """Standard deviation of what several independent readings say together [deg]."""
    return 1 / math.sqrt(sum(1 / each**2 for each in spreads))
