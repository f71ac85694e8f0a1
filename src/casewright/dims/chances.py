"""Chances that a gap leaves its band, from the causes that reach it.

Random causes combine by their laws: normal ones to a normal one, even ones to the law of a sum of
evens. Systematic causes add, and are taken at the side that is worse.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import product

from casewright.dims.slack import Slack
from casewright.dims.slack_sizes import SlackSize, whole_numbers

__all__ = ["chance_of", "even_sum_below", "normal_chance"]

_KEPT = 4096

_MOST_EVENS = 8
_SMALL = 0.1
"""An even cause under this share of the whole spread counts as normal: the law of the sum can no
longer be told from the one with it [-]."""


def chance_of(found: Slack, low: Fraction, high: Fraction) -> float:
    """Chance that a gap with that slack leaves its band, by the laws of its causes [-].

    Parameters
    ----------
    low, high
        The band [mm].
    """
    return _chance(found.size, found.nominal - high, found.nominal - low)


@lru_cache(_KEPT)
def _chance(size: SlackSize, over: Fraction, under: Fraction) -> float:
    """The same from how far its number lies over the upper and over the lower end [mm]."""
    law = _Law(size)
    return max(law.outside(-under - shift, -over - shift) for shift in _shifts(size))


def normal_chance(found: Slack, low: Fraction, high: Fraction) -> float:
    """The same as if every random cause were normal: the usual approximation [-]."""
    normal = _Normal(found.sigma_mm)
    return max(
        normal.below(float(low - found.nominal - shift))
        + normal.below(-float(high - found.nominal - shift))
        for shift in _shifts(found.size)
    )


def _shifts(size: SlackSize) -> tuple[Fraction, ...]:
    """How far the middle of the gap may be off, what is systematic taken to either side [mm]."""
    return (-size.bias, size.bias) if size.bias else (Fraction(0),)


def even_sum_below(halves: Sequence[Fraction], value: Fraction) -> Fraction:
    """Chance that a sum of independent even deviations is at most a value, exact [-].

    Parameters
    ----------
    halves
        Greatest deviation of each either way, over 0 [mm].
    value
        [mm].

    Sources
    -------
    The law of Irwin (1927) and Hall (1927), for widths that differ (`even-sums`).
    """
    count = len(halves)
    if not count:
        return Fraction(int(value >= 0))
    (at, *wide), _ = whole_numbers((value, *halves))
    total = sum(sign * max(at + shift, 0) ** count for sign, shift in _corners(wide))
    return Fraction(total, math.factorial(count) * math.prod(2 * half for half in wide))


def _corners(halves: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Every choice of ends of the evens: its sign, and where it puts the sum, in parts of a mm.

    Evens of one width are counted, not listed: ten alike have eleven choices.
    """
    groups = [(half, halves.count(half)) for half in dict.fromkeys(halves)]
    for taken in product(*(range(count + 1) for _, count in groups)):
        sign, shift = 1, 0
        for low, (half, count) in zip(taken, groups, strict=True):
            sign *= (-1) ** low * math.comb(count, low)
            shift += (count - 2 * low) * half
        yield sign, shift


class _Normal:
    """A normal deviation about 0; with no spread it is always 0.

    Parameters
    ----------
    sigma_mm
        Standard deviation [mm].
    """

    def __init__(self, sigma_mm: float) -> None:
        self.sigma_mm = sigma_mm

    def below(self, value_mm: float) -> float:
        """Chance that it is under a value; with no spread, whether it is [-]."""
        if not self.sigma_mm:
            return float(value_mm > 0)
        return 0.5 * math.erfc(-value_mm / self.sigma_mm / math.sqrt(2))

    def summed(self, value_mm: float, times: int) -> float:
        """The chance to be below a value, integrated over it so many times [mm to that power].

        Each is made from the two before it.
        """
        sigma = self.sigma_mm
        before = math.exp(-((value_mm / sigma) ** 2) / 2) / (sigma * math.sqrt(2 * math.pi))
        now = self.below(value_mm)
        for number in range(1, times + 1):
            before, now = now, (value_mm * now + sigma * sigma * before) / number
        return now


class _Law:
    """How the random causes of a slack lie together, about 0."""

    def __init__(self, size: SlackSize) -> None:
        evens, variance = list(size.halves), size.normal
        if variance or len(evens) > _MOST_EVENS:
            least = Fraction(_SMALL) * Fraction(size.sigma_mm)
            kept = [half for half in evens[:_MOST_EVENS] if half >= least]
            variance += sum((half**2 / 3 for half in evens[len(kept) :]), Fraction(0))
            evens = kept
        self._halves = evens
        self._normal = _Normal(math.sqrt(variance))

    def outside(self, low: Fraction, high: Fraction) -> float:
        """Chance to be outside a band that is given from the middle [-]."""
        if not self._halves and not self._normal.sigma_mm:
            return float(not low <= 0 <= high)
        return min(1.0, max(0.0, self._below(low) + self._below(-high)))

    def _below(self, value: Fraction) -> float:
        """Chance to be under a value; either side alike [-]."""
        if not self._normal.sigma_mm:
            return float(even_sum_below(self._halves, value))
        count = len(self._halves)
        if not count:
            return self._normal.below(float(value))
        (at, *wide), parts = whole_numbers((value, *self._halves))
        total = math.fsum(
            sign * self._normal.summed((at + shift) / parts, count)
            for sign, shift in _corners(wide)
        )
        return total / math.prod(2 * float(half) for half in self._halves)
