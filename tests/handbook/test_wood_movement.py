"""Movement of wood across the grain and moisture of rooms, against a handbook.

Source: Wood Handbook, FPL-GTR-190 (2010; same in FPL-GTR-282, 2021): tables 4-2, 4-3, 13-5 and
equations 4-5, 13-2. Entries read in secondary copies.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.sources import MOVEMENT, ROOM_MOISTURE, equilibrium_moisture

# Table 4-2: temperature [°F], relative humidity [%], moisture content [%].
TABLE_4_2 = [
    (30, 30, "6.3"), (30, 50, "9.5"), (30, 80, "16.5"),
    (50, 20, "4.6"), (50, 40, "7.9"), (50, 65, "12.3"),
    (70, 20, "4.5"), (70, 30, "6.2"), (70, 40, "7.7"), (70, 50, "9.2"), (70, 60, "11.0"),
    (70, 65, "12.0"), (70, 80, "16.0"), (70, 90, "20.5"),
    (90, 30, "5.9"), (90, 40, "7.4"), (90, 50, "8.9"), (90, 80, "15.4"),
    (110, 30, "5.6"), (110, 60, "10.0"), (110, 80, "14.7"),
]  # fmt: skip


@pytest.mark.parametrize(("fahrenheit", "humidity", "percent"), TABLE_4_2)
def test_equilibrium_moisture(fahrenheit: int, humidity: int, percent: str) -> None:
    """The equation gives each entry of the table to its last digit (0.06 with rounding)."""
    celsius = Fraction(fahrenheit - 32) * 5 / 9
    found = equilibrium_moisture(Fraction(humidity), celsius)
    assert abs(found - Fraction(percent)) <= Fraction("0.06")


def test_equilibrium_moisture_in_degrees_celsius() -> None:
    """20 °C and 50 %: 9.27, computed once from the equation's coefficients."""
    found = equilibrium_moisture(Fraction(50), Fraction(20))
    assert abs(found - Fraction("9.27")) <= Fraction("0.01")


# Table 4-3: shrinkage from green to ovendry, radial and tangential [%].
TABLE_4_3 = {
    "yellow-poplar": ("4.6", "8.2"), "red maple": ("4.0", "8.2"), "sugar maple": ("4.8", "9.9"),
    "northern red oak": ("4.0", "8.6"), "eastern white pine": ("2.1", "6.1"),
    "ponderosa pine": ("3.9", "6.2"), "yellow birch": ("7.3", "9.5"),
    "paper birch": ("6.3", "8.6"), "black cherry": ("3.7", "7.1"), "white oak": ("5.6", "10.5"),
    "black walnut": ("5.5", "7.8"),
}  # fmt: skip


@pytest.mark.parametrize("species", MOVEMENT)
def test_coefficients_agree_with_shrinkage(species: str) -> None:
    """Table 13-5 follows from table 4-3: a slope relative to the size at 10 %.

    The relation is inferred from the two tables. It gives their last digit, but where table 13-5
    joins species (the oaks) or was carried over from older shrinkage values.
    """
    row = MOVEMENT[species]
    for coefficient, text in zip((row.radial, row.tangential), TABLE_4_3[species], strict=True):
        whole = Fraction(text)
        found = (whole / 30) / (100 - 20 * whole / 30)
        joined = "oak" in species
        assert abs(found - coefficient) <= Fraction("0.0007" if joined else "0.000015")


@pytest.mark.parametrize(
    ("width", "coefficient", "percent", "change"),
    [
        ("8", "0.0026", "6", "0.1248"),  # flat-sawn red alder, from 6 to 12 %
        ("13.25", "0.002", "-9", "-0.2385"),  # a deep member that dries from 19 to 10 %
    ],
)
def test_worked_examples_of_movement(
    width: str, coefficient: str, percent: str, change: str
) -> None:
    """Equation 13-2: change = size x coefficient x difference of moisture."""
    found = Fraction(width) * Fraction(coefficient) * Fraction(percent)
    assert found == Fraction(change)


def test_rooms_are_between_six_and_eleven_percent() -> None:
    """Table 13-2: 8 % in most areas, 6 % in the dry southwest, 11 % on the damp coast."""
    assert sorted(row.percent for row in ROOM_MOISTURE.values()) == [6, 8, 11]
