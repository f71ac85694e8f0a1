"""PS 20, American Softwood Lumber Standard. National Institute of Standards and Technology.

Least dressed sizes, dry unless said otherwise. Read in a secondary copy.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.dims import parse_length
from casewright.sources import (
    BOARD_THICKNESS,
    DIMENSION_THICKNESS,
    INCH,
    LUMBER_WIDTH,
    dressed_section,
)

pytestmark = pytest.mark.handbook


@pytest.mark.parametrize(
    ("nominal", "actual"),
    [("3/8", "5/16"), ("1/2", "7/16"), ("5/8", "9/16"), ("3/4", "5/8"), ("1", "3/4"),
     ("5/4", "1"), ("3/2", "1 1/4")],
)  # fmt: skip
def test_board_thickness(nominal: str, actual: str) -> None:
    """A 1 in board is 3/4 in thick."""
    assert BOARD_THICKNESS[Fraction(nominal)].dry == parse_length(actual, "in")


@pytest.mark.parametrize(
    ("nominal", "actual"),
    [("2", "1 1/2"), ("5/2", "2"), ("3", "2 1/2"), ("7/2", "3"), ("4", "3 1/2")],
)
def test_dimension_thickness(nominal: str, actual: str) -> None:
    """A 2 in stud is 1 1/2 in thick."""
    assert DIMENSION_THICKNESS[Fraction(nominal)].dry == parse_length(actual, "in")


@pytest.mark.parametrize(("nominal", "actual"), [(2, "1 9/16"), (4, "3 9/16")])
def test_green_lumber_is_thicker(nominal: int, actual: str) -> None:
    """Surfaced green, before it has shrunk."""
    assert DIMENSION_THICKNESS[Fraction(nominal)].green == parse_length(actual, "in")


@pytest.mark.parametrize(
    ("nominal", "actual"),
    [(2, "1 1/2"), (3, "2 1/2"), (4, "3 1/2"), (5, "4 1/2"), (6, "5 1/2"), (8, "7 1/4"),
     (10, "9 1/4"), (12, "11 1/4"), (14, "13 1/4"), (16, "15 1/4")],
)  # fmt: skip
def test_width(nominal: int, actual: str) -> None:
    """Half an inch under the name up to 6, three quarters from 8."""
    assert LUMBER_WIDTH[Fraction(nominal)].dry == parse_length(actual, "in")


def test_a_stud_and_a_shelf_board() -> None:
    """2x4 and 1x12 by both tables together."""
    assert dressed_section(Fraction(2), Fraction(4)) == (INCH * 3 / 2, INCH * 7 / 2)
    assert dressed_section(Fraction(1), Fraction(12)) == (INCH * 3 / 4, INCH * 45 / 4)
