"""The inch and its fractions.

International agreement on the yard and the pound, 1959, as kept by the National Institute of
Standards and Technology: 1 in = 25.4 mm exactly. Decimal equivalents read in a secondary copy.
Rounding to a shop fraction: a printed rule of thumb and its examples, read in a secondary copy.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.dims import format_length, parse_length
from casewright.sources import FOOT, INCH

pytestmark = pytest.mark.handbook


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("1", "25.4"),
        ("1/64", "0.396875"),
        ("1/32", "0.79375"),
        ("1/16", "1.5875"),
        ("23/32", "18.25625"),
        ("3/4", "19.05"),
        ("1 ft", "304.8"),
    ],
)
def test_fractions_of_an_inch_have_their_printed_millimetres(text: str, millimetres: str) -> None:
    """Every equivalent is exact: no tolerance."""
    assert parse_length(text, "in") == Fraction(millimetres)


def test_the_constants_are_the_definition() -> None:
    """25.4 mm and, as NIST SP 811 prints it (from memory), 0.3048 m."""
    assert Fraction("25.4") == INCH
    assert Fraction("304.8") == FOOT


@pytest.mark.parametrize(
    ("decimal", "denominator", "fraction"),
    [("0.3", 16, "5/16"), ("0.7", 64, "45/64"), ("0.375", 16, "3/8"), ("0.123", 64, "1/8")],
)
def test_decimals_round_to_the_printed_shop_fraction(
    decimal: str, denominator: int, fraction: str
) -> None:
    """Multiply by the denominator, round, reduce."""
    size = parse_length(decimal, "in")
    assert format_length(size, "in", precision=denominator, rounded_mark="") == fraction
