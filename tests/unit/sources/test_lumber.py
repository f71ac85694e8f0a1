"""Tables of sheets and lumber as code sees them."""

from __future__ import annotations

import doctest
from fractions import Fraction

import pytest

from casewright.sources import INCH, dressed_section, hardwood_tally, plywood_band, softwood


def test_a_reading_inside_the_band_is_what_the_label_says() -> None:
    """A sheet sold as 23/32 that reads 0.703 is in order; one that reads 5/8 is another sheet."""
    band, provenance = plywood_band(INCH * Fraction(23, 32), "unsanded")
    assert band.holds(INCH * Fraction("0.703"))
    assert band.holds(band.low)
    assert not band.holds(INCH * Fraction(5, 8))
    assert provenance.source == "ps1"


def test_hardwood_plywood_is_never_over_its_label_and_the_rule_is_no_more_than_a_placeholder() -> (
    None
):
    """Its tolerance is to the thin side alone, and was not seen in the standard."""
    thick, provenance = plywood_band(INCH * Fraction(1, 4), "hardwood")
    thin, _ = plywood_band(INCH * Fraction(3, 16), "hardwood")
    assert (thick.low, thick.high) == (INCH * Fraction(13, 64), INCH / 4)
    assert thin.low == INCH * Fraction(5, 32)
    assert not provenance.confirmed


def test_a_size_that_is_not_listed_is_refused() -> None:
    """Nobody sells a 1x7, so none is invented."""
    with pytest.raises(LookupError, match="1x7"):
        dressed_section(Fraction(1), Fraction(7))


def test_a_board_under_an_inch_counts_as_an_inch() -> None:
    """3/4 stock is tallied as 4/4."""
    width, length = 6 * INCH, 96 * INCH
    assert hardwood_tally(3, width, length) == hardwood_tally(4, width, length)
    assert hardwood_tally(3, width, length).board_feet == 4


def test_the_examples_in_the_docstrings_run() -> None:
    """What the documentation shows is what the code does."""
    result = doctest.testmod(softwood)
    assert result.attempted > 0
    assert result.failed == 0
