"""A wall in stretches: so many marks as are read at a glance and made at one go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from casewright.install.marks import Mark

__all__ = ["Stretch", "stretches"]

_MOST = 6
"""Places marked in one stretch, at most [-]."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of a wall.

    Parameters
    ----------
    left, right
        Its ends, midway to the marks of its neighbours, from the wall's left end [mm].
    marks
        Those in it, left to right.
    """

    left: Fraction
    right: Fraction
    marks: tuple[Mark, ...]


def stretches(marks: Sequence[Mark]) -> tuple[Stretch, ...]:
    """A wall from its left end to its last mark, in stretches with about as many marks each.

    Parameters
    ----------
    marks
        Left to right; those at one place stay together.
    """
    places = [tuple(own) for _, own in groupby(marks, key=lambda mark: mark.at.value)]
    if not places:
        return ()
    count = -(-len(places) // _MOST)
    cuts = [round(Fraction(len(places) * n, count)) for n in range(count + 1)]
    at = [place[0].at.value for place in places]
    ends = [Fraction(0), *((at[cut - 1] + at[cut]) / 2 for cut in cuts[1:-1]), at[-1]]
    return tuple(
        Stretch(left, right, tuple(mark for place in places[start:end] for mark in place))
        for left, right, start, end in zip(ends, ends[1:], cuts, cuts[1:], strict=False)
    )
