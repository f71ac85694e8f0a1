"""Numbers of a why, so told that whoever reads them can reckon along."""

from __future__ import annotations

import math
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from casewright.job.reasons import number_text

_WALL = Fraction(6000)
"""A long wall of a room at home [mm]."""


@given(st.fractions(min_value=-2, max_value=2, max_denominator=10**9))
def test_a_length_times_a_ratio_as_told_is_off_by_no_mark_of_a_tape(ratio: Fraction) -> None:
    """Within 1/64 in on any wall; what reads as a whole number is one."""
    text = number_text(ratio, "in", 0)
    assert abs(Fraction(text) - ratio) * _WALL < Fraction(254, 640)
    assert (Fraction(text).denominator == 1) == (ratio.denominator == 1)


def test_a_wall_that_is_nearly_square_says_how_nearly() -> None:
    """A corner out of square by 1/4 in at 4 ft: the cosine of its slope, 1 in 192, is not 1."""
    cosine = Fraction(math.cos(math.atan(1 / 192)))
    assert number_text(cosine, "in", 0) == "0.999986"
    assert number_text(Fraction(1), "in", 0) == "1"
