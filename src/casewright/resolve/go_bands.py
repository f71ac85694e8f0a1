"""The readings with which pieces may be cut as they are printed."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import TypeAlias

from casewright.dims import Fit, Slack, Unit, Way, round_to
from casewright.room.forecasts import ShopReading
from casewright.sources import INCH

__all__ = ["Band", "go_band", "sound_band"]

Band: TypeAlias = tuple[Fraction, Fraction]

_COVER = Fraction(13, 10)
"""One in ten of the normal law lies farther to one side than so many standard deviations [-]."""

_FINE: dict[Unit, Fraction] = {"in": INCH / 1000, "mm": Fraction(1, 100)}
_PLAIN: dict[Unit, Fraction] = {"in": INCH / 64, "mm": Fraction(1, 2)}


def go_band(
    reading: ShopReading,
    fits: Iterable[tuple[Fit, Slack]],
    unit: Unit,
    *,
    others: Iterable[tuple[Fit, Slack]] = (),
) -> Band | None:
    """The least and the greatest reading with which what waits may be cut as it is printed.

    No more than one in ten of any fit then misses to that side. Rounded inwards to what the tool
    shows. None where there is no such reading: then what waits is cut to the reading.

    Parameters
    ----------
    fits
        Those it is read for, each with its slack when the thing is read.
    unit
        Of the job.
    others
        All others that the thing read has a part in. One that misses more often than that with the
        reading as it was planned is no matter of the reading, and sets it no bound.
    """
    sound = (each for each in others if _is_likely(*each))
    return _shown(reading, (*fits, *sound), unit, cover=_COVER)


def sound_band(reading: ShopReading, fits: Iterable[tuple[Fit, Slack]], unit: Unit) -> Band | None:
    """The least and the greatest reading with which the thing that is read is itself right.

    Parameters
    ----------
    fits
        Those that what waits has no part in.
    unit
        Of the job.
    """
    return _shown(reading, fits, unit, cover=Fraction(0))


def _is_likely(fit: Fit, slack: Slack) -> bool:
    """Whether no more than one in ten misses to either side, by the numbers of now."""
    low, high = _bounds(fit, slack, _COVER)
    return low <= slack.nominal <= high


def _bounds(fit: Fit, slack: Slack, cover: Fraction) -> Band:
    """The band of a fit, narrower by what it strays."""
    margin = cover * Fraction(slack.sigma_mm) + (Fraction(slack.bias_mm) if cover else 0)
    return fit.low + margin, fit.high - margin


def _shown(
    reading: ShopReading, fits: Iterable[tuple[Fit, Slack]], unit: Unit, *, cover: Fraction
) -> Band | None:
    value = reading.dim.value
    lows: list[Fraction] = []
    highs: list[Fraction] = []
    for fit, slack in fits:
        rate = next((t.slope for t in slack.terms if t.cause.key == reading.cause.key), None)
        if not rate:
            continue
        bounds = _bounds(fit, slack, cover)
        ends = sorted(value + (bound - slack.nominal) / rate for bound in bounds)
        if bounds[0] > bounds[1]:
            return None
        lows.append(ends[0])
        highs.append(ends[1])
    if not lows:
        return None
    step = (_FINE if reading.tool == "calliper" else _PLAIN)[unit]
    least, most = round_to(max(lows), step, Way.UP)[0], round_to(min(highs), step, Way.DOWN)[0]
    return (least, most) if least <= value <= most else None
