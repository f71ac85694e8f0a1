"""The lifting equation: what a pair of hands may be asked to lift, and the figures it multiplies.

From the Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) Publication
94-110 (revised 2021), pages 7 to 15, read in a secondary copy. It holds for two hands, standing,
a smooth lift of a load that keeps still. One hand, kneeling, carrying, pushing, tight rooms and
slippery floors are outside of it (page 6).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from casewright.sources.inch import INCH
from casewright.sources.pound import POUND

__all__ = ["LiftingTask", "hands_from_ankles", "lifting_multipliers", "weight_limit"]

_Unit = Literal["in", "mm"]


class _Figures(NamedTuple):
    """Constants of the equation in one of its two systems: inches and pounds, cm and kg."""

    unit: Fraction
    load: Fraction
    near: Fraction
    far: Fraction
    best: Fraction
    slope: Fraction
    highest: Fraction
    rise: Fraction
    least_rise: Fraction
    base: tuple[Fraction, Fraction, Fraction]


def _figures(unit: Fraction, load: Fraction, *texts: str) -> _Figures:
    near, far, best, slope, highest, rise, least, low, high, under = map(Fraction, texts)
    return _Figures(
        unit, load, near, far, best, slope, highest, rise, least, (low, high, under)
    )  # fmt: skip


_SYSTEMS = {
    "in": _figures(INCH, 51 * POUND, "10", "25", "30", ".0075", "70", "1.8", "10",
                   "10", "8", "10"),
    "mm": _figures(Fraction(10), Fraction(23), "25", "63", "75", ".003", "175", "4.5", "25",
                   "25", "20", "25"),
}  # fmt: skip
_FLAT = Fraction(82, 100)
_TWIST, _MOST_TWIST = Fraction(32, 10000), 135


@dataclass(frozen=True, slots=True)
class LiftingTask:
    """One lift, at the end of it where the hands are as told.

    Parameters
    ----------
    out
        H, from between the ankles to between the hands, level [mm].
    height
        V, of the hands above the floor [mm].
    rise
        D, how far the hands travel up or down [mm].
    twist
        A, from straight before the body [degrees].
    often
        Frequency multiplier FM: 1 for a lift in five minutes or fewer, for an hour at most [-].
    grip
        Coupling multiplier CM: 0.90 for a load without handles that is awkward to hold [-].
    """

    out: Fraction
    height: Fraction
    rise: Fraction
    twist: int = 0
    often: Fraction = Fraction(1)
    grip: Fraction = Fraction(9, 10)


def hands_from_ankles(deep: Fraction, height: Fraction, unit: _Unit) -> Fraction:
    """H where it cannot be measured [mm]: page 8.

    Parameters
    ----------
    deep
        W, of the load, away from the body [mm].
    height
        V, of the hands above the floor [mm].
    unit
        Whose round numbers are taken: 8 in or 20 cm, below 10 in or 25 cm 10 in or 25 cm.
    """
    figures = _SYSTEMS[unit]
    low, usual, under = figures.base
    base = under if height < low * figures.unit else usual
    return base * figures.unit + deep / 2


def lifting_multipliers(task: LiftingTask, unit: _Unit) -> tuple[Fraction, ...]:
    """HM, VM, DM, AM, FM and CM of a lift [-]; 0 where the equation knows no limit."""
    figures = _SYSTEMS[unit]
    out, height, rise = (each / figures.unit for each in (task.out, task.height, task.rise))
    across = figures.near / max(out, figures.near)
    up = 1 - figures.slope * abs(height - figures.best)
    return (
        across if out <= figures.far else Fraction(0),
        up if height <= figures.highest else Fraction(0),
        _FLAT + figures.rise / max(rise, figures.least_rise),
        1 - _TWIST * task.twist if task.twist <= _MOST_TWIST else Fraction(0),
        task.often,
        task.grip,
    )


def weight_limit(task: LiftingTask, unit: _Unit) -> Fraction | None:
    """The recommended weight limit [kg]; None where the equation gives none.

    What lies under it is not thereby safe: it is what nearly all healthy workers could lift so.
    """
    limit = _SYSTEMS[unit].load
    for multiplier in lifting_multipliers(task, unit):
        limit *= multiplier
    return limit or None
