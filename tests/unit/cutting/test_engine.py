"""Sheets into parts: what the engine promises beyond plans that can be cut."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.cutting_problems import IN, SHEET, part, sheet_problem, two_cases

from casewright.cutting import (
    Defect,
    Keep,
    Leaf,
    PartDemand,
    Problem,
    Progress,
    Reason,
    Split,
    Status,
    StockItem,
    Stop,
    Trim,
    leaves,
    solve,
    splits,
    verify,
)


def _simple(*parts: PartDemand, stock: tuple[StockItem, ...], kerf: int = 0) -> Problem:
    return Problem("mm", kerf, 3, stock, parts, (Keep(20, 5),))


def test_a_part_for_which_no_stock_is_large_enough_is_named() -> None:
    """It is listed with the reason; the others are cut all the same."""
    problem = sheet_problem(part("panel", "100", "20"), part("shelf", "30", "11"))
    solution = solve(problem)
    assert [(u.part, u.count, u.reason) for u in solution.unplaced] == [
        ("panel", 1, Reason.TOO_LARGE)
    ]
    assert [placed.part for placed in solution.placements] == ["shelf"]


def test_a_part_that_only_fits_turned_is_told_apart() -> None:
    """The nearest fix is to let the grain run the other way."""
    solution = solve(sheet_problem(part("panel", "40", "60")))
    assert solution.unplaced[0].reason is Reason.AGAINST_GRAIN
    turned = solve(sheet_problem(part("panel", "40", "60", rotate=True)))
    assert turned.unplaced == ()
    assert turned.placements[0].turned


def test_a_part_that_only_fits_over_a_defect_is_told_apart() -> None:
    """The nearest fix is another sheet."""
    stock = (StockItem("s", 100, 50, defects=(Defect(48, 24, 4, 4),)),)
    solution = solve(_simple(PartDemand("p", 60, 40), stock=stock))
    assert solution.unplaced[0].reason is Reason.DEFECTS


def test_a_defect_is_cut_around() -> None:
    """A knot near one end leaves the rest of the sheet of use."""
    knot = Defect(4, 4, 3, 3)
    problem = _simple(
        PartDemand("p", 40, 50, 2), stock=(StockItem("s", 100, 50, 1, defects=(knot,)),), kerf=2
    )
    solution = solve(problem)
    assert verify(problem, solution) == ()
    assert solution.unplaced == ()


def test_finite_stock_is_used_up_and_the_rest_is_listed() -> None:
    """Two sheets hold eight parts; the ninth lacks stock, and nothing is claimed as proved."""
    stock = (StockItem("s", 100, 50, count=2),)
    solution = solve(_simple(PartDemand("p", 50, 25, 9), stock=stock))
    assert len(solution.placements) == 8
    assert [(u.count, u.reason) for u in solution.unplaced] == [(1, Reason.NO_STOCK)]
    assert solution.status is Status.SHORT


def test_stock_of_which_there_is_none_is_no_stock() -> None:
    """A size that is sold out does not count, and the part is not called too large for it."""
    stock = (StockItem("large", 100, 50, count=0), StockItem("small", 30, 30))
    solution = solve(_simple(PartDemand("p", 50, 25), stock=stock))
    assert solution.unplaced[0].reason is Reason.NO_STOCK


def test_an_offcut_in_the_shop_is_used_before_a_sheet_is_bought() -> None:
    """What costs nothing and is large enough comes first."""
    stock = (StockItem("sheet", 100, 50, price=70), StockItem("offcut", 40, 30, 1, price=0))
    solution = solve(_simple(PartDemand("p", 40, 30), stock=stock))
    assert [tree.stock for tree in solution.tree] == ["offcut"]
    assert (solution.cost, solution.status) == (0, Status.PROVED)


def test_cheap_sheets_win_over_few_sheets() -> None:
    """Two small sheets at 2 are better than one large one at 5."""
    stock = (StockItem("large", 100, 50, price=5), StockItem("small", 50, 50, price=2))
    solution = solve(_simple(PartDemand("p", 50, 50, 2), stock=stock))
    assert [tree.stock for tree in solution.tree] == ["small", "small"]
    assert (solution.cost, solution.bound.measure) == (4, "price")


def test_the_usual_pair_of_cases_needs_two_sheets() -> None:
    """By area it is more than one sheet; two are found, and so proved."""
    problem = two_cases()
    solution = solve(problem)
    assert (solution.cost, solution.bound.value, solution.gap) == (2, 2, 0)
    assert solution.verdict == "proved minimum for any layout"


def test_halves_with_crossing_grain_are_proved_to_need_two_sheets() -> None:
    """By area one sheet would do; that three stages of cuts cannot is shown by their columns."""
    parts = (PartDemand("a", 100, 50), PartDemand("b", 50, 100))
    solution = solve(_simple(*parts, stock=(StockItem("s", 100, 100),)))
    assert (solution.cost, solution.bound.value, solution.gap) == (2, 2, 0)
    assert solution.status is Status.PROVED
    assert solution.verdict == "proved minimum for three-stage cutting"


def test_a_plan_that_is_not_proved_says_how_far_it_may_be_off() -> None:
    """The same halves, when there is no time to look for a proof."""
    parts = (PartDemand("a", 100, 50), PartDemand("b", 50, 100))
    solution = solve(_simple(*parts, stock=(StockItem("s", 100, 100),)), Stop(0))
    assert (solution.cost, solution.bound.value, solution.gap) == (2, 1, 1)
    assert (solution.status, solution.verdict) == (
        Status.BOUNDED,
        "at most 1 more than needed",
    )


@pytest.mark.parametrize("stages", [2, 3])
def test_the_stages_are_kept(stages: int) -> None:
    """Two stages leave strips across the whole sheet; the verifier counts them."""
    problem = replace(two_cases(), stages=stages)
    solution = solve(problem)
    assert verify(problem, solution) == ()
    deepest = max(_depth(tree.root) for tree in solution.tree)
    assert deepest <= stages + 1


def _depth(node: Leaf | Split) -> int:
    return 0 if isinstance(node, Leaf) else 1 + max(_depth(piece) for piece in node.pieces)


def test_widest_strips_and_longest_parts_come_first() -> None:
    """Along each row sizes fall away from the factory edge, so that settings descend."""
    for tree in solve(two_cases()).tree:
        for split in splits(tree.root):
            kept = [p.rect for p in split.pieces if not (isinstance(p, Leaf) and p.use != "part")]
            sizes = [r.width if split.direction == "rip" else r.length for r in kept]
            assert sizes == sorted(sizes, reverse=True)


def test_factory_edges_are_kept_where_there_is_no_trim() -> None:
    """The first part lies in the corner of the sheet."""
    first = solve(two_cases()).placements[0]
    assert (first.rect.x, first.rect.y) == (0, 0)


def test_trims_come_off_with_the_first_cuts_along_their_edge() -> None:
    """No cut is spent on the trim alone: each row of cuts takes the trim at its end along."""
    sheet = replace(SHEET, trim=Trim(4, 4, 4, 4))
    problem = sheet_problem(part("strip", "95", "11 3/4", 4), sheet=sheet)
    solution = solve(problem)
    assert verify(problem, solution) == ()
    assert sorted(len(split.cuts) for split in splits(solution.tree[0].root)) == [2, 5]


def test_leftovers_worth_keeping_are_offcuts() -> None:
    """At least 12 x 12 or 24 x 4 in; a sliver is waste."""
    tree = solve(sheet_problem(part("panel", "95 1/2", "30"))).tree[0]
    uses = {leaf.use for leaf in leaves(tree.root)}
    assert uses == {"part", "offcut"} | {"waste"}
    offcut = next(leaf for leaf in leaves(tree.root) if leaf.use == "offcut")
    assert min(offcut.rect[2:]) == 18 * IN - 4


def test_parts_of_a_group_lie_side_by_side() -> None:
    """Of like-sized parts those of one group are dealt out one after the other."""
    parts = tuple(
        PartDemand(f"p{n}", 20, 20, group="pair" if n in (1, 4) else None) for n in range(5)
    )
    solution = solve(_simple(*parts, stock=(StockItem("s", 100, 20),)))
    row = [placed.part for placed in sorted(solution.placements, key=lambda p: p.rect.x)]
    assert abs(row.index("p1") - row.index("p4")) == 1


def test_a_sheet_sized_part_needs_no_cut() -> None:
    """It is the sheet."""
    solution = solve(_simple(PartDemand("p", 100, 50), stock=(StockItem("s", 100, 50),), kerf=3))
    assert isinstance(solution.tree[0].root, Leaf)


def test_no_parts_need_no_sheets() -> None:
    """The empty problem has the empty plan, proved."""
    solution = solve(_simple(stock=(StockItem("s", 100, 50),)))
    assert (solution.tree, solution.status) == ((), Status.PROVED)


def test_a_first_plan_is_made_however_short_the_work() -> None:
    """A stop at nothing still gives a whole plan, also for thousands of parts."""
    problem = _simple(
        PartDemand("p", 30, 20, 2_000), PartDemand("q", 17, 9, 1_000),
        stock=(StockItem("s", 100, 50),), kerf=2,
    )  # fmt: skip
    solution = solve(problem, Stop(0))
    assert solution.unplaced == ()
    assert len(solution.placements) == 3_000


def test_someone_who_asks_gets_the_best_plan_so_far() -> None:
    """However much work was allowed; a first plan is made all the same, and it can be cut."""
    problem = two_cases()
    solution = solve(problem, Stop(10**12, asked=lambda: True))
    assert verify(problem, solution) == ()
    assert solution.unplaced == ()


def test_many_different_parts_do_not_keep_someone_waiting() -> None:
    """Of 1,500 sizes a first plan is made in batches, and on shelves once someone asks for it."""
    sizes = [(150 + 7 * n % 901, 60 + 11 * n % 397) for n in range(1_500)]
    parts = tuple(PartDemand(f"p{n}", *size) for n, size in enumerate(sizes))
    knot = Defect(700, 400, 20, 20)
    stock = (
        StockItem("knotty", 2_440, 1_220, 5, defects=(knot,)), StockItem("clean", 2_440, 1_220),
    )  # fmt: skip
    problem = _simple(*parts, stock=stock, kerf=3)
    answers = iter([False, True, True])
    solution = solve(problem, Stop(0, asked=lambda: next(answers, True)))
    assert verify(problem, solution) == ()
    assert solution.unplaced == ()


def test_better_plans_are_told_as_they_are_found() -> None:
    """Never a dearer one, and the last is the answer."""
    seen: list[Progress] = []
    solution = solve(two_cases(), watch=seen.append)
    costs = [one.cost for one in seen]
    assert costs == sorted(costs, reverse=True)
    assert (costs[-1], seen[-1].bound) == (solution.cost, solution.bound)


def test_offcuts_are_used_for_what_they_save() -> None:
    """Three times two cases, offcuts at a fifth of the price: at most 5 % over the bound.

    What is told while searching is what the plan costs.
    """
    problem = two_cases()
    sizes = ((60, 30), (48, 40), (36, 24), (70, 13), (50, 20), (40, 16))
    offcuts = tuple(
        StockItem(f"offcut{n}", long * IN, wide * IN, 1, 640 * long * wide // (96 * 48))
        for n, (long, wide) in enumerate(sizes)
    )
    stock = (*offcuts, replace(problem.stock[0], price=3_200))
    parts = tuple(replace(part, count=3 * part.count) for part in problem.parts)
    seen: list[Progress] = []
    solution = solve(replace(problem, stock=stock, parts=parts), Stop(600_000), 0, seen.append)
    assert solution.unplaced == ()
    assert seen[-1].cost == solution.cost
    assert solution.bound.value <= solution.cost <= solution.bound.value * 105 // 100


def test_units_may_be_as_fine_as_one_likes() -> None:
    """Two cases in units of a 3,200,000th of an inch: the same sheets."""
    fine = 100_000
    problem = two_cases()
    sheet = problem.stock[0]
    stock = replace(sheet, length=sheet.length * fine, width=sheet.width * fine)
    parts = tuple(
        replace(part, length=part.length * fine, width=part.width * fine) for part in problem.parts
    )
    grown = replace(problem, kerf=problem.kerf * fine, stock=(stock,), parts=parts, keep=())
    assert solve(grown).cost == solve(problem).cost == 2
