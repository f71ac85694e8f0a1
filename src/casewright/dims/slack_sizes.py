"""How deviations stray together: worked out once for all numbers that are reached alike.

Rooms have many gaps whose causes differ by name only, such as those between the doors of one case
and of the next: sums over them, and chances, are the same.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TypeAlias

from casewright.dims.causes import Cause, Law

__all__ = ["Shape", "SlackSize", "share_of", "size_of", "whole_numbers"]

_KEPT = 4096

_Share: TypeAlias = tuple[int, int, int, int, int, int, bool, Law]

Shape: TypeAlias = tuple[_Share, ...]
"""Of each cause that reaches a number all but its name: slope, standard deviation and limit as
numerator and denominator (a fraction is looked up slowly), whether it adds, its law."""


@dataclass(frozen=True, slots=True, eq=False)
class SlackSize:
    """How far a number may stray that causes of these laws reach.

    Parameters
    ----------
    worsts
        Greatest contribution of each, in the order of the shape and in the same part of a mm.
    worst
        Sum of all of them, exact [mm].
    sigma_mm
        Root of the sum of squares of the random causes [mm].
    bias
        Sum of the systematic causes' deviations, which add [mm].
    halves
        Greatest contributions of the random causes that lie even, over 0 and falling [mm].
    normal
        Variance of the random causes that lie normally, together [mm2].
    """

    worsts: tuple[int, ...]
    worst: Fraction
    sigma_mm: float
    bias: Fraction
    halves: tuple[Fraction, ...]
    normal: Fraction


def share_of(cause: Cause, slope: Fraction | int) -> _Share:
    """What a cause adds to the shape of a number that follows it so fast [-]."""
    sigma, limit = cause.sigma, cause.limit
    return (
        slope.numerator, slope.denominator, sigma.numerator, sigma.denominator,
        limit.numerator, limit.denominator, cause.bias, cause.law,
    )  # fmt: skip


@lru_cache(_KEPT)
def size_of(shape: Shape) -> SlackSize:
    """How far a number of that shape may stray."""
    worsts: list[Fraction] = []
    biases: list[Fraction] = []
    halves: list[Fraction] = []
    normals: list[Fraction] = []
    for up, down, sigma_up, sigma_down, limit_up, limit_down, is_bias, law in shape:
        worst = Fraction(abs(up) * limit_up, down * limit_down)
        sigma = Fraction(abs(up) * sigma_up, down * sigma_down)
        worsts.append(worst)
        if is_bias:
            biases.append(sigma)
        elif law == "even":
            halves.append(worst)
        else:
            normals.append(sigma**2)
    normal = _sum(normals)
    variance = normal + _sum([half**2 for half in halves]) / 3
    wholes, parts = whole_numbers(worsts)
    return SlackSize(
        tuple(wholes),
        Fraction(sum(wholes), parts),
        math.sqrt(variance),
        _sum(biases),
        tuple(sorted((half for half in halves if half), reverse=True)),
        normal,
    )


def whole_numbers(numbers: Sequence[Fraction]) -> tuple[list[int], int]:
    """Fractions as whole multiples of the same part, and how many of these make one.

    Sums and comparisons of these are as exact, and many times as fast.
    """
    parts = math.lcm(*(number.denominator for number in numbers))
    return [number.numerator * (parts // number.denominator) for number in numbers], parts


def _sum(numbers: Sequence[Fraction]) -> Fraction:
    wholes, parts = whole_numbers(numbers)
    return Fraction(sum(wholes), parts)
