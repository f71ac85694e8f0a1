"""Where a wall is usually read (common practice): three heights, two depths, every two feet."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil

from casewright.dims import Unit
from casewright.sources import INCH

__all__ = ["NEAR_HEIGHT", "heights_stood_for", "usual_heights", "usual_stations"]

NEAR_HEIGHT = Fraction(150)
"""How near a usual height a width is read to count as read there [mm]."""

_HEIGHTS: dict[Unit, tuple[Fraction, ...]] = {
    "in": (4 * INCH, 36 * INCH, 84 * INCH),
    "mm": (Fraction(100), Fraction(900), Fraction(2100)),
}
_APART: dict[Unit, Fraction] = {"in": 24 * INCH, "mm": Fraction(600)}
_STEP: dict[Unit, Fraction] = {"in": INCH, "mm": Fraction(10)}


def usual_heights(unit: Unit) -> tuple[Fraction, Fraction, Fraction]:
    """Low, middle and high above the floor [mm]: 4, 36 and 84 in, or 100, 900 and 2100 mm."""
    low, middle, high = _HEIGHTS[unit]
    return low, middle, high


def heights_stood_for(told: Iterable[Fraction], untold: int, unit: Unit) -> tuple[Fraction, ...]:
    """Usual heights that readings stand for whose height was not told [mm].

    Those at which none was told: one reading stands for the middle one of them, two for the
    lowest and the highest, three for all.

    Parameters
    ----------
    told
        Heights of the other readings at the same depth [mm].
    untold
        How many have none [-].
    """
    known = tuple(told)
    free = tuple(
        height
        for height in usual_heights(unit)
        if all(abs(height - each) > NEAR_HEIGHT for each in known)
    )
    if untold >= len(free):
        return free
    return (free[0], free[-1])[:untold] if untold != 1 else (free[len(free) // 2],)


def usual_stations(width: Fraction, unit: Unit) -> tuple[Fraction, ...]:
    """Places along a wall where floor and ceiling are read, from its left end [mm].

    Both ends, and evenly between, no more than about 24 in or 600 mm apart, on whole inches or
    centimetres.

    Examples
    --------
    >>> [int(place / INCH) for place in usual_stations(100 * INCH, "in")]
    [0, 20, 40, 60, 80, 100]
    """
    count, step = max(1, ceil(width / _APART[unit])), _STEP[unit]
    return tuple(round(width * n / count / step) * step for n in range(count + 1))
