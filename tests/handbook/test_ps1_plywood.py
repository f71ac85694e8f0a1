"""PS 1, Structural Plywood. National Institute of Standards and Technology, PS 1-19 and PS 1-22.

Thickness bands as printed, to the thousandth of an inch; size and squareness. Read in a secondary
copy.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.sources import INCH, PLYWOOD_PANEL, plywood_band

pytestmark = pytest.mark.handbook

HALF_OF_LAST_DIGIT = Fraction(5, 10_000) * INCH


@pytest.mark.parametrize(
    ("label", "low", "high"),
    [
        ("1/2", "0.469", "0.531"),
        ("23/32", "0.688", "0.750"),
        ("3/4", "0.719", "0.781"),
        ("7/8", "0.831", "0.919"),
    ],
)
def test_unsanded_thickness_is_in_the_printed_band(label: str, low: str, high: str) -> None:
    """1/32 in either way up to 13/16, 5 % above."""
    band, provenance = plywood_band(INCH * Fraction(label), "unsanded")
    assert abs(band.low - INCH * Fraction(low)) <= HALF_OF_LAST_DIGIT
    assert abs(band.high - INCH * Fraction(high)) <= HALF_OF_LAST_DIGIT
    assert provenance.how == "secondary copy"


@pytest.mark.parametrize(
    ("label", "either_way"),
    [("1/4", "1/64"), ("3/4", "1/64"), ("1", "0.03")],
)
def test_sanded_thickness_is_held_closer(label: str, either_way: str) -> None:
    """1/64 in either way up to 3/4, 3 % above."""
    size = INCH * Fraction(label)
    band, _ = plywood_band(size, "sanded")
    limit = INCH * Fraction(either_way)
    assert (band.low, band.high) == (size - limit, size + limit)


def test_a_panel_is_never_over_its_size_and_nearly_square() -> None:
    """+0 -1/16 in; 1/64 in per foot of the longest edge, so 1/8 in on an 8 ft sheet."""
    assert PLYWOOD_PANEL.under == INCH / 16
    assert PLYWOOD_PANEL.over == 0
    assert PLYWOOD_PANEL.square * 8 == INCH / 8
    assert PLYWOOD_PANEL.straight == INCH / 16
