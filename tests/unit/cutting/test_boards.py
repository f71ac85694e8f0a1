"""Boards cut to length."""

from __future__ import annotations

from itertools import combinations

import pytest

from casewright.cutting import (
    Defect,
    PartDemand,
    ProblemError,
    Progress,
    Reason,
    Split,
    Status,
    StockItem,
    Stop,
    Trim,
    board_problem,
    leaves,
    solve_boards,
    verify,
)
from casewright.cutting.outcome import lower_bound

FEET = 12 * 8
"""Eighths of an inch to a foot; a blade takes one."""


def _board(name: str, feet: int, count: int | None = None, price: int = 1) -> StockItem:
    return StockItem(name, feet * FEET, 28, count, price)


def _lengths(*lengths: int) -> list[PartDemand]:
    return [PartDemand(f"p{n}", length, 28) for n, length in enumerate(lengths)]


def test_three_pieces_of_just_under_a_third_come_out_of_a_board() -> None:
    """Two kerfs for three pieces: 3 x 31 7/8 + 2 x 1/8 < 96, but 3 x 32 is not."""
    under = board_problem("1/8 in", 1, [_board("b", 8)], _lengths(255, 255, 255))
    third = board_problem("1/8 in", 1, [_board("b", 8)], _lengths(256, 256, 256))
    assert solve_boards(under).cost == 1
    assert solve_boards(third).cost == 2


def test_greed_alone_would_take_a_board_more() -> None:
    """44 + 28 + 28 and 33 + 33 + 34: longest first wastes what trying every way finds."""
    problem = board_problem("mm", 0, [StockItem("b", 100, 5)],
                            [PartDemand(f"p{n}", length, 5)
                             for n, length in enumerate((44, 34, 33, 33, 28, 28))])  # fmt: skip
    solution = solve_boards(problem)
    assert (solution.cost, solution.status) == (2, Status.PROVED)


def test_better_plans_for_boards_are_told_as_they_are_found() -> None:
    """Each is a sound plan, none dearer than the one before, and the last is the answer.

    Twelve boards, each filled by three pieces, in a manner that greed does not find.
    """
    threes = [(380 + 9 * n, 250 + 4 * n) for n in range(12)]
    sizes = [size for one, two in threes for size in (one, two, 1000 - one - two)]
    parts = [PartDemand(f"p{n}", size, 5) for n, size in enumerate(sizes)]
    problem = board_problem("mm", 0, [StockItem("b", 1000, 5)], parts)
    seen: list[Progress] = []
    solution = solve_boards(problem, watch=seen.append)
    assert len({one.cost for one in seen}) > 1
    assert [one.cost for one in seen] == sorted((one.cost for one in seen), reverse=True)
    assert (seen[-1].cost, seen[-1].solution.tree) == (solution.cost, solution.tree)
    assert all(verify(problem, one.solution) == () for one in seen)


def test_trying_every_way_proves_what_no_bound_shows() -> None:
    """Six lengths, 200 in all, of which no three make 100: three boards, not two."""
    parts = [PartDemand(f"p{n}", n, 5) for n in (38, 37, 36, 31, 30, 28)]
    assert sum(part.length for part in parts) == 200
    assert 100 not in {sum(three) for three in combinations([p.length for p in parts], 3)}
    problem = board_problem("mm", 0, [StockItem("b", 100, 5)], parts)
    assert lower_bound(problem).value == 2
    solution = solve_boards(problem)
    assert (solution.cost, solution.status, solution.bound.value) == (3, Status.PROVED, 3)


def test_the_price_decides_between_lengths() -> None:
    """Two boards of 8 ft at 5 are cheaper than one of 16 ft at 12, and at 9 they are not."""
    for price, bought in ((12, ["short", "short"]), (9, ["long"])):
        stock = [_board("short", 8, price=5), _board("long", 16, price=price)]
        problem = board_problem("1/8 in", 1, stock, _lengths(700, 700))
        assert [tree.stock for tree in solve_boards(problem).tree] == bought


def test_leftover_boards_are_used_up_first_and_what_lacks_is_listed() -> None:
    """A finite pile: as much as it gives, and the rest by name."""
    problem = board_problem("1/8 in", 1, [_board("b", 8, count=1)], _lengths(700, 400, 300))
    solution = solve_boards(problem)
    assert verify(problem, solution) == ()
    assert {placed.part for placed in solution.placements} == {"p1", "p2"} or {
        placed.part for placed in solution.placements
    } == {"p0"}
    assert {entry.reason for entry in solution.unplaced} == {Reason.NO_STOCK}
    assert solution.status is Status.SHORT


def test_both_ends_are_trimmed() -> None:
    """What is lost at the ends is not cut from, and the first cut squares the end."""
    item = StockItem("b", 100, 5, trim=Trim(left=3, right=2))
    problem = board_problem("mm", 1, [item], [PartDemand("p", 94, 5), PartDemand("q", 96, 5)])
    solution = solve_boards(problem)
    assert [entry.part for entry in solution.unplaced] == ["q"]
    root = solution.tree[0].root
    assert isinstance(root, Split)
    assert root.cuts == (2, 97)


def test_long_pieces_come_first_on_a_board() -> None:
    """Stops go from long to short."""
    problem = board_problem("1/8 in", 1, [_board("b", 8)], _lengths(100, 300, 200))
    row = [leaf.rect.length for leaf in leaves(solve_boards(problem).tree[0].root)]
    assert row[:3] == [300, 200, 100]


def test_a_knot_is_cut_out() -> None:
    """Boards with defects are planned too."""
    item = StockItem("b", 100, 5, defects=(Defect(40, 1, 4, 2),))
    problem = board_problem("mm", 1, [item], [PartDemand("p", 40, 5, 2)])
    solution = solve_boards(problem)
    assert verify(problem, solution) == ()
    assert solution.cost == 1


@pytest.mark.parametrize(
    ("stock", "part", "field"),
    [
        ([StockItem("a", 90, 5), StockItem("b", 90, 6)], PartDemand("p", 9, 5), "width"),
        ([StockItem("a", 90, 5)], PartDemand("p", 9, 4), "width"),
        ([StockItem("a", 90, 5)], PartDemand("p", 9, 5, rotate=True), "rotate"),
        ([StockItem("a", 90, 5, trim=Trim(top=1))], PartDemand("p", 9, 5), "trim"),
    ],
)
def test_only_lengths_differ(stock: list[StockItem], part: PartDemand, field: str) -> None:
    """Anything else is a problem of sheets."""
    with pytest.raises(ProblemError, match=field):
        board_problem("mm", 1, stock, [part])


def test_hundreds_of_pieces_end_within_the_work_allowed() -> None:
    """Near the bound, and verified."""
    parts = [PartDemand(f"p{n}", 20 + n * 37 % 80, 5, 5) for n in range(60)]
    problem = board_problem("mm", 3, [StockItem("b", 150, 5)], parts)
    solution = solve_boards(problem, Stop(2_000))
    assert verify(problem, solution) == ()
    assert solution.gap <= solution.bound.value // 20
