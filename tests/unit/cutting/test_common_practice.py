"""Check values that every cabinetmaker knows; common practice, without a printed source."""

from __future__ import annotations

import pytest
from tests.cutting_problems import KERF, SHEET, inches, sheet_problem

from casewright.cutting import PartDemand, Status, solve, verify


def _sheets_for(strips: int, width: int) -> int:
    """Sheets needed for full-length strips."""
    problem = sheet_problem(PartDemand("strip", SHEET.length, width, strips))
    solution = solve(problem)
    assert verify(problem, solution) == ()
    return len(solution.tree)


@pytest.mark.parametrize(
    ("width", "strips"), [("11 7/8", 4), ("12", 3), ("11 29/32", 4), ("11 15/16", 3)]
)
def test_strips_from_a_48_in_sheet(width: str, strips: int) -> None:
    """Four strips of 11 7/8 with a 1/8 kerf, only three of 12; the limit is 11 29/32."""
    assert _sheets_for(strips, inches(width)) == 1
    assert _sheets_for(strips + 1, inches(width)) == 2


def test_the_fourth_strip_needs_three_kerfs_only() -> None:
    """Four strips that fill the sheet with three cuts: the last is flush with the edge."""
    assert 4 * inches("11 29/32") + 3 * KERF == SHEET.width
    solution = solve(sheet_problem(PartDemand("strip", SHEET.length, inches("11 29/32"), 4)))
    assert [card.pieces for card in solution.cards] == [4]
    root = solution.tree[0].root
    assert getattr(root, "cuts", None) == tuple(
        inches("11 29/32") * n + KERF * (n - 1) for n in (1, 2, 3)
    )


def test_a_remainder_narrower_than_the_kerf_is_consumed() -> None:
    """Beside a part that leaves less than the blade takes there is no offcut."""
    width = SHEET.width - KERF + 1
    problem = sheet_problem(PartDemand("panel", SHEET.length, width))
    solution = solve(problem)
    root = solution.tree[0].root
    assert verify(problem, solution) == ()
    assert [piece.rect.width for piece in getattr(root, "pieces", ())] == [width]
    assert getattr(root, "cuts", None) == (width,)


def test_two_sides_and_their_mates_fill_a_sheet() -> None:
    """Four base sides of 34 1/2 x 23 1/4 lie on one sheet, with room for two bottoms of 26."""
    problem = sheet_problem(
        PartDemand("side", inches("34 1/2"), inches("23 1/4"), 4),
        PartDemand("bottom", inches("26"), inches("23 1/4"), 2),
    )
    solution = solve(problem)
    assert (len(solution.tree), solution.status) == (1, Status.PROVED)
