"""Where a wall is usually read (common practice): three heights, two depths, every two feet."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil

from casewright.dims import Dim, Origin, Place, Unit
from casewright.sources import INCH

__all__ = [
    "NEAR_HEIGHT", "cited", "heights_stood_for", "usual_height", "usual_heights", "usual_station",
    "usual_stations",
]  # fmt: skip

NEAR_HEIGHT = Fraction(150)
"""How near a usual height a width is read to count as read there [mm]."""

_HEIGHTS: dict[Unit, tuple[Fraction, ...]] = {
    "in": (4 * INCH, 36 * INCH, 84 * INCH),
    "mm": (Fraction(100), Fraction(900), Fraction(2100)),
}
_APART: dict[Unit, Fraction] = {"in": 24 * INCH, "mm": Fraction(600)}
_STEP: dict[Unit, Fraction] = {"in": INCH, "mm": Fraction(10)}
_NAMES = ("low", "middle", "high")


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


def cited(place: Place, name: str, value: Fraction, note: str) -> Dim:
    """A figure of the trade, entered the first time it is told."""
    known = place.chain.nodes.get(f"{place.path}.{name}")
    if known is not None:
        return known
    figure = Dim("", (), value)
    figure.origin = Origin("cited", note, "common practice")
    return place.let(name, figure)


def usual_height(place: Place, height: Fraction, unit: Unit) -> Dim:
    """One of the usual heights above the floor, entered the first time it is told [mm].

    Parameters
    ----------
    place
        Of the form that asks for a reading there.
    """
    name = _NAMES[usual_heights(unit).index(height)]
    return cited(place, f"height_{name}", height, "a height at which walls are usually read")


def usual_station(place: Place, width: Dim, along: Fraction, unit: Unit) -> Dim:
    """One of the usual places along a wall by its width, entered the first time it is told [mm].

    Parameters
    ----------
    place
        Of the form that asks for a reading there.
    """
    places = usual_stations(width.value, unit)
    at, last = places.index(along), len(places) - 1
    if not at:
        return cited(place, "along_0", along, "the wall's left end")
    name = f"along_{at}"
    known = place.chain.nodes.get(f"{place.path}.{name}")
    share = width if at == last else width * Fraction(at, last)
    return known or place.let(name, Dim("round", (share, _STEP[unit]), along))
