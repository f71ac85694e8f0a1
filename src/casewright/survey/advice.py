"""Which one further reading would take most of the risk out of a wall."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.survey.adjustment import Adjustment, adjust
from casewright.survey.network import Network, NextReading

__all__ = ["Advice", "advise", "reliefs"]

_WORTH_MM2 = 0.25
"""Least that a reading takes off the sum of variances to be worth asking for [mm2]."""

_EYE_MM = 100.0
_FINE = 10**6  # parts of a millimetre


@dataclass(frozen=True, slots=True)
class Advice:
    """The further reading that would cut the risk most.

    Parameters
    ----------
    next_reading
        What to read.
    relief_mm2
        What it takes off the sum of the variances of all that matters [mm2].
    before_mm, after_mm
        Standard deviation of what it tells of, without it and with it [mm].
    by
        Names of the readings that tell of the same.
    """

    next_reading: NextReading
    relief_mm2: float
    before_mm: float
    after_mm: float
    by: tuple[str, ...]

    @property
    def is_by_eye(self) -> bool:
        """Whether it is known no better than one sees it."""
        return self.before_mm > _EYE_MM

    @property
    def spread(self) -> Fraction:
        """Standard deviation without it, to a millionth of a millimetre [mm]."""
        return Fraction(round(self.before_mm * _FINE), _FINE)


def reliefs(net: Network, known: Adjustment) -> Iterator[tuple[NextReading, float]]:
    """What each possible reading would take off the sum of the variances that matter [mm2]."""
    for next_reading in net.next_readings:
        yield next_reading, sum(known.relief_mm2(next_reading.reading, net.sums))


def advise(net: Network) -> Advice | None:
    """The best further reading; None when no reading would tell much more.

    Of several equally good ones the first, in the order of the survey form.
    """
    known = adjust(tuple(net.quantities.values()), tuple(net.readings.values()))
    best: tuple[NextReading, float] | None = None
    for next_reading, relief in reliefs(net, known):
        if best is None or relief > best[1] * (1 + 1e-9):
            best = (next_reading, relief)
    if best is None or best[1] < _WORTH_MM2:
        return None
    next_reading, relief = best
    before = known.sigma_mm(next_reading.reading.terms)
    variance = float(next_reading.reading.variance)
    after = math.sqrt(before**2 * variance / (before**2 + variance))
    terms = next_reading.reading.terms.keys()
    by = tuple(name for name, each in net.readings.items() if terms & each.terms.keys())
    return Advice(next_reading, relief, before, after, by)
