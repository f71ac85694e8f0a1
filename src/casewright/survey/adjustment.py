"""Least squares over the readings of a wall: what they say together, and how well it is known.

Linear readings with known standard deviations, and for every quantity what one would say by eye,
as a reading of its own. The result is the usual least squares adjustment of surveying, computed
one reading after the other. Nothing of it becomes a length to cut to: it judges readings and says
which further one would help most.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

__all__ = ["Adjustment", "Observation", "Quantity", "adjust"]

Terms = Mapping[str, Fraction]
"""Quantities with their factors, as they enter a sum [-]."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """Something to be known.

    Parameters
    ----------
    mean, sigma
        What one would say without a reading, and how far that strays [mm].
    """

    name: str
    mean: Fraction
    sigma: Fraction


@dataclass(frozen=True, slots=True)
class Observation:
    """A reading of a sum of quantities.

    Parameters
    ----------
    terms
        The sum.
    value
        As read [mm].
    variance
        Square of its standard deviation [mm2].
    """

    name: str
    terms: Terms
    value: Fraction
    variance: Fraction


@dataclass(frozen=True, slots=True)
class Adjustment:
    """What the readings say together.

    Parameters
    ----------
    index
        Row of each quantity.
    mean_mm
        Adjusted values less what was said by eye [mm].
    covariance_mm2
        Of the quantities [mm2].
    """

    index: Mapping[str, int]
    start: Mapping[str, Fraction]
    mean_mm: Sequence[float]
    covariance_mm2: Sequence[Sequence[float]]

    def value_mm(self, terms: Terms) -> float:
        """A sum of quantities, adjusted [mm]."""
        begin = sum((factor * self.start[name] for name, factor in terms.items()), Fraction(0))
        moved = (float(f) * self.mean_mm[self.index[name]] for name, f in terms.items())
        return float(begin) + sum(moved)

    def gain(self, terms: Terms) -> list[float]:
        """Covariance of every quantity with a sum [mm2]."""
        pairs = [(self.index[name], float(factor)) for name, factor in terms.items()]
        return [sum(row[n] * factor for n, factor in pairs) for row in self.covariance_mm2]

    def between(self, one: Terms, gain: Sequence[float]) -> float:
        """Covariance of a sum with another one, given by its gain [mm2]."""
        return sum(float(factor) * gain[self.index[name]] for name, factor in one.items())

    def sigma_mm(self, terms: Terms) -> float:
        """Standard deviation of a sum [mm]."""
        return math.sqrt(max(self.between(terms, self.gain(terms)), 0.0))

    def relief_mm2(self, reading: Observation, sums: Sequence[Terms]) -> list[float]:
        """How much a further reading would take off the variance of each sum [mm2].

        By the update of one row: (a' C t)^2 / (a' C a + s^2).
        """
        gain = self.gain(reading.terms)
        total = self.between(reading.terms, gain) + float(reading.variance)
        return [self.between(each, gain) ** 2 / total for each in sums]

    def misfit(self, reading: Observation) -> float:
        """By how many of its standard deviations a reading differs from what the others say [-].

        The normalised residual v / sqrt(s^2 - a' C a) of data snooping; 0 for a reading that
        nothing checks.
        """
        variance = float(reading.variance)
        left = variance - self.between(reading.terms, self.gain(reading.terms))
        if left <= variance * 1e-4:
            return 0.0
        return (float(reading.value) - self.value_mm(reading.terms)) / math.sqrt(left)


def adjust(quantities: Sequence[Quantity], readings: Sequence[Observation]) -> Adjustment:
    """Adjust quantities to readings."""
    index = {each.name: n for n, each in enumerate(quantities)}
    start = {each.name: each.mean for each in quantities}
    size = len(quantities)
    mean = [0.0] * size
    covariance = [
        [float(quantities[n].sigma) ** 2 if n == m else 0.0 for m in range(size)]
        for n in range(size)
    ]
    for reading in readings:
        now = Adjustment(index, start, mean, covariance)
        gain = now.gain(reading.terms)
        total = now.between(reading.terms, gain) + float(reading.variance)
        off = float(reading.value) - now.value_mm(reading.terms)
        mean = [each + g * off / total for each, g in zip(mean, gain, strict=True)]
        covariance = [
            [each - g * h / total for each, h in zip(row, gain, strict=True)]
            for row, g in zip(covariance, gain, strict=True)
        ]
    return Adjustment(index, start, mean, covariance)
