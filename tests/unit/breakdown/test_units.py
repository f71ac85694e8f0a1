"""Whole units: every size of a problem is a whole number of them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.builders import INCH, length

from casewright.breakdown import UnevenLengthError, common_unit

SIZES = st.fractions(min_value=Fraction(1, 10), max_value=3000, max_denominator=64)


@given(st.lists(SIZES, min_size=1, max_size=12), st.sampled_from(["in", "mm"]))
def test_every_length_comes_out_whole_and_comes_back(sizes: list[Fraction], unit: str) -> None:
    """A length counted in the common unit and back is the same length, exactly."""
    whole = common_unit(sizes, "in" if unit == "in" else "mm")
    for size in sizes:
        assert whole.length(whole.count(size)) == size


@given(st.lists(SIZES, min_size=1, max_size=12))
def test_unit_is_the_coarsest_that_divides_all(sizes: list[Fraction]) -> None:
    """No multiple of the step divides every length and the finest mark of the tape."""
    step = common_unit(sizes, "mm").step
    counts = [int(size / step) for size in (*sizes, Fraction(1, 100))]
    for factor in (2, 3, 5, 7):
        assert any(count % factor for count in counts)


def test_tape_sizes_stay_on_the_tape() -> None:
    """Thirty-seconds of an inch count in sixty-fourths, halves of a millimetre in hundredths."""
    assert common_unit([length("11 7/8"), length("23/32"), length("96")], "in").name == "1/64 in"
    assert common_unit([Fraction(1, 2), Fraction(2440)], "mm").name == "1/100 mm"


def test_calliper_readings_make_a_finer_unit() -> None:
    """A sheet of 0.703 in goes into the sums exactly."""
    unit = common_unit([INCH * Fraction(703, 1000)], "in")
    assert unit.count(INCH * Fraction(703, 1000)) == 5624
    assert unit.count(INCH) == 8000


def test_a_length_off_the_unit_is_refused() -> None:
    """Nothing is rounded on the way into a problem."""
    with pytest.raises(UnevenLengthError):
        common_unit([], "mm").count(Fraction(1, 3))
