"""Board feet and hardwood thickness.

Board foot: 144 cubic inches, the trade's definition; its examples read in a secondary copy.
Hardwood: NHLA Rules. Quarters 4/4, 5/4 and 8/4 read in a secondary copy, 6/4 from memory; the
tally rule read in a secondary copy, its example worked out from the rule, not printed there.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from casewright.dims import parse_length
from casewright.sources import INCH, QUARTERS, board_feet, hardwood_tally

pytestmark = pytest.mark.handbook


@pytest.mark.parametrize(
    ("thickness", "width", "length", "feet"),
    [("1", "9", "96", 6), ("1 1/2", "9", "96", 9), ("1", "12", "10 ft", 10)],
)
def test_board_feet_of_the_printed_pieces(
    thickness: str, width: str, length: str, feet: int
) -> None:
    """Thickness by width by length over 144, in inches."""
    sizes = [parse_length(text, "in") for text in (thickness, width, length)]
    assert board_feet(*sizes) == feet


def test_board_feet_of_a_stud_by_its_name() -> None:
    """A 2x4 of 8 ft is 5.33 by its nominal size, to the hundredth (trade rule)."""
    size = board_feet(2 * INCH, 4 * INCH, 96 * INCH)
    assert round(size, 2) == Fraction("5.33")


def test_hardwood_tally_by_the_rule() -> None:
    """5/4, 7 1/4 in wide, 8 ft 7 in long: surface measure 5, 6 1/4 board feet (computed)."""
    tally = hardwood_tally(5, parse_length("7 1/4", "in"), parse_length("8 ft 7 in", "in"))
    assert tally.surface == 5
    assert tally.board_feet == Fraction("6.25")


@pytest.mark.parametrize(
    ("quarters", "surfaced", "how"),
    [
        (4, "13/16", "secondary copy"),
        (5, "1 1/16", "secondary copy"),
        (6, "1 5/16", "from memory"),
        (8, "1 3/4", "secondary copy"),
    ],
)
def test_quarters_surfaced_on_two_sides(quarters: int, surfaced: str, how: str) -> None:
    """4/4 is an inch rough and 13/16 planed."""
    row = QUARTERS[quarters]
    assert row.rough == INCH * quarters / 4
    assert row.surfaced == parse_length(surfaced, "in")
    assert row.provenance.how == how
