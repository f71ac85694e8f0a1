"""Chances that a gap leaves its band, from the causes that reach it.

Random causes combine by their laws: normal ones to a normal one, even ones to the law of a sum of
evens. Systematic causes add, and are taken at the side that is worse.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from random import Random  # noqa: TID251 - seeded with a constant

from casewright.dims.dim import Dim
from casewright.dims.slack import Settled, Slack, nothing, sampled, slack

__all__ = ["chance_of", "chance_outside", "even_sum_below", "normal_chance"]

_DRAWS, _SEED = 2000, 1
_FAR = 5

_MOST_EVENS = 8
_SMALL = 0.1
"""An even cause under this share of the whole spread counts as normal: the law of the sum can no
longer be told from the one with it [-]."""


def chance_outside(
    dim: Dim,
    low: Fraction,
    high: Fraction,
    *,
    settled: Settled = nothing,
    found: Slack | None = None,
) -> float:
    """Chance that the real gap leaves its band [-].

    Where candidates of a `least` or `greatest` lie close, it is simulated, with a fixed seed; not
    where the band is so wide that no draw would be outside.

    Parameters
    ----------
    low, high
        The band [mm].
    settled
        As for `slack`.
    found
        Its slack with that settled, where it is known already.
    """
    if found is None:
        found = slack(dim, settled=settled)
    if not found.decided or _is_far_inside(found, low, high):
        return chance_of(found, low, high)
    source = Random(_SEED)  # noqa: S311 - a simulation, no secret
    values = sampled(dim, _DRAWS, source, settled=settled)
    least_mm, most_mm = float(low), float(high)
    return sum(not least_mm <= value <= most_mm for value in values) / _DRAWS


def _is_far_inside(found: Slack, low: Fraction, high: Fraction) -> bool:
    """Whether both ends are five standard deviations off: a choice moves it by one at the most."""
    room = float(min(found.nominal - low, high - found.nominal))
    return room > found.bias_mm + _FAR * found.sigma_mm


def chance_of(found: Slack, low: Fraction, high: Fraction) -> float:
    """Chance that a gap with that slack leaves its band, by the laws of its causes [-].

    Parameters
    ----------
    low, high
        The band [mm].
    """
    law = _Law(found)
    return max(law.outside(low - shift, high - shift) for shift in _shifts(found))


def normal_chance(found: Slack, low: Fraction, high: Fraction) -> float:
    """The same as if every random cause were normal: the usual approximation [-]."""
    normal = _Normal(found.sigma_mm)
    return max(
        normal.below(float(low - shift)) + normal.below(-float(high - shift))
        for shift in _shifts(found)
    )


def _shifts(found: Slack) -> tuple[Fraction, ...]:
    """Where the middle of the gap may lie, what is systematic taken to either side [mm]."""
    bias = sum((abs(t.slope) * t.cause.sigma for t in found.terms if t.cause.bias), Fraction(0))
    middle = found.nominal
    return (middle - bias, middle + bias) if bias else (middle,)


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
    total = sum(
        (sign * max(value + shift, Fraction(0)) ** count for sign, shift in _corners(halves)),
        Fraction(0),
    )
    return total / (math.factorial(count) * math.prod(2 * half for half in halves))


def _corners(halves: Sequence[Fraction]) -> Iterator[tuple[int, Fraction]]:
    """Every choice of ends of the evens: its sign, and where it puts the sum [mm].

    Evens of one width are counted, not listed: ten alike have eleven choices.
    """
    groups = [(half, halves.count(half)) for half in dict.fromkeys(halves)]
    for taken in product(*(range(count + 1) for _, count in groups)):
        sign, shift = 1, Fraction(0)
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

    def __init__(self, found: Slack) -> None:
        random = [t for t in found.terms if not t.cause.bias]
        evens = sorted(
            (t.worst for t in random if t.cause.law == "even" and t.worst), reverse=True
        )
        variance = sum(
            (t.slope**2 * t.cause.variance for t in random if t.cause.law == "normal"),
            Fraction(0),
        )
        if variance or len(evens) > _MOST_EVENS:
            least = Fraction(_SMALL) * Fraction(found.sigma_mm)
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
        total = math.fsum(
            sign * self._normal.summed(float(value + shift), count)
            for sign, shift in _corners(self._halves)
        )
        return total / math.prod(2 * float(half) for half in self._halves)
