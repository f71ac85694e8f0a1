"""Weights of panels and wood.

Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190 (2010), equation 4-9 from memory; the
two densities in pounds were seen in secondary copies. Sheet weights: trade averages read in
secondary copies. Glass: 2.5 kg/m2 for each mm, EN 572-1, from memory.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.sources import DENSITIES, POUND, SPECIFIC_GRAVITY, wood_density

pytestmark = pytest.mark.handbook

CUBIC_FOOT = Fraction("0.3048") ** 3
SHEET = Fraction("1.2192") * Fraction("2.4384")
"""4 x 8 ft [m2]."""


@pytest.mark.parametrize(
    ("species", "pounds"), [("northern red oak", "44.0"), ("yellow-poplar", "29.4")]
)
def test_wood_at_twelve_per_cent(species: str, pounds: str) -> None:
    """Printed to a tenth of a pound per cubic foot."""
    density = wood_density(SPECIFIC_GRAVITY[species].value)
    assert abs(density * CUBIC_FOOT / POUND - Fraction(pounds)) <= Fraction(1, 20)


def test_a_sheet_of_fibreboard() -> None:
    """3/4 in, 4 x 8 ft: 96 to 97 lb."""
    weight = DENSITIES["fibreboard"].usual * SHEET * Fraction("0.01905") / POUND
    assert 96 <= weight <= Fraction("97.5")


def test_hardwood_plywood_by_the_square_foot() -> None:
    """3/4 in: about 2.3 lb/ft2."""
    per_foot = DENSITIES["hardwood plywood"].usual * Fraction("0.01905")
    pounds = per_foot * Fraction("0.3048") ** 2 / POUND
    assert abs(pounds - Fraction("2.3")) <= Fraction(1, 20)


def test_glass_by_the_millimetre() -> None:
    """6 mm weighs 15.0 kg/m2."""
    assert DENSITIES["glass"].usual * Fraction("0.006") == 15


def test_the_pound_and_its_force() -> None:
    """1 lbf = 4.448 221 615 260 5 N: NIST SP 811, appendix B, with g = 9.806 65 m/s2 (memory)."""
    assert POUND * Fraction("9.80665") == Fraction("4.4482216152605")
