"""What a shop's own readings say of its tools: cut to a number, then read; or read twice.

Rule
----
Nothing is taken from under `LEAST_PAIRS` pieces of one tool that were cut to a number and read
afterwards. From then on its spread is the standard deviation of reading less number about their
mean, with n - 1, in quadrature less what the readings themselves stray by, and never under half of
it; its limit is twice that, or the farthest seen. The mean counts as a systematic offset where it
is over twice its own standard error; one that is not could be chance, and is left out.

Of two readings of one thing each strays alike: the spread of a tool that reads is the root of half
the mean square of their differences. What shifts both is not seen, so no offset is known.

Sources
-------
Experimental standard deviation and that of the mean: JCGM 100:2008, 4.2 (`gum`). That eight pairs
are enough, and twice the standard error, are this house's own judgement: of eight, the standard
deviation is known to about a quarter (JCGM 100:2008, table E.1, from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import isqrt

__all__ = ["LEAST_PAIRS", "Learned", "learned", "learned_twice"]

LEAST_PAIRS = 8
"""Fewest pieces that say something of a tool [-]."""

_COVER = 2
_FINENESS = 1000  # a spread is told to a thousandth of a millimetre


@dataclass(frozen=True, slots=True)
class Learned:
    """What a shop's own readings show of a tool.

    Parameters
    ----------
    count
        How many pieces were read, or things read twice [-].
    offset
        What they come out over their numbers by, on average; 0 where that may be chance [mm].
    sigma, limit
        How far they stray about that: standard deviation and greatest [mm].
    is_twice
        Whether it is of a tool that reads, by things that were read twice.
    """

    count: int
    offset: Fraction
    sigma: Fraction
    limit: Fraction
    is_twice: bool = False


def learned(pairs: Sequence[tuple[Fraction, Fraction]]) -> Learned | None:
    """What pieces that were cut and read say of the tool; None when they are too few.

    Parameters
    ----------
    pairs
        Of each piece, reading less number, and the standard uncertainty of the reading [mm].
    """
    count = len(pairs)
    if count < LEAST_PAIRS:
        return None
    mean = sum((off for off, _ in pairs), Fraction(0)) / count
    seen = sum(((off - mean) ** 2 for off, _ in pairs), Fraction(0)) / (count - 1)
    reading = sum((u**2 for _, u in pairs), Fraction(0)) / count
    sigma = _root(max(seen - reading, seen / _COVER**2))
    farthest = max(abs(off - mean) for off, _ in pairs)
    is_sure = mean**2 > _COVER**2 * seen / count
    return Learned(count, mean if is_sure else Fraction(0), sigma, max(_COVER * sigma, farthest))


def learned_twice(differences: Sequence[Fraction]) -> Learned | None:
    """What things say of the tool that read them twice; None when they are too few.

    Parameters
    ----------
    differences
        Of each thing, the second reading less the first [mm].
    """
    count = len(differences)
    if count < LEAST_PAIRS:
        return None
    square = sum((off**2 for off in differences), Fraction(0)) / (2 * count)
    sigma = _root(square)
    farthest = max(abs(off) for off in differences) / _COVER
    return Learned(count, Fraction(0), sigma, max(_COVER * sigma, farthest), is_twice=True)


def _root(square: Fraction) -> Fraction:
    """Square root, up to the next thousandth [mm]."""
    floor = isqrt(int(square * _FINENESS**2))
    return Fraction(floor if Fraction(floor, _FINENESS) ** 2 == square else floor + 1, _FINENESS)
