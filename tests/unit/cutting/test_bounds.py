"""Lower bounds, against known formulas and examples worked by hand."""

from __future__ import annotations

import json
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.cutting_problems import problems, two_cases

from casewright.cutting import Defect, PartDemand, Problem, StockItem, Stop, solve, verify
from casewright.cutting.bounds import lift
from casewright.cutting.clear_area import clear_area
from casewright.cutting.frame import Frame
from casewright.cutting.outcome import lower_bound
from casewright.cutting.shapes import Bin


def _bound(
    *sizes: tuple[int, int], sheet: tuple[int, int] = (10, 10), turn: bool = False, kerf: int = 0
) -> int:
    parts = tuple(PartDemand(f"p{n}", *size, 1, turn) for n, size in enumerate(sizes))
    return lower_bound(Problem("mm", kerf, None, (StockItem("s", *sheet),), parts)).value


def test_never_below_the_area_grown_by_the_kerf() -> None:
    """ceil(sum (l+k)(w+k) / ((L+k)(W+k))), the usual bound for cutting with a kerf."""
    problem = two_cases()
    kerf, sheet = problem.kerf, problem.stock[0]
    area = sum((p.length + kerf) * (p.width + kerf) * p.count for p in problem.parts)
    least = ceil(area / ((sheet.length + kerf) * (sheet.width + kerf)))
    assert lower_bound(problem).value >= least


@pytest.mark.parametrize(
    ("sizes", "least"),
    [
        (((6, 6),) * 5, 5),  # more than half both ways: one a sheet
        (((6, 5),) * 4, 2),  # more than half one way: two a sheet
        (((4, 4),) * 5, 2),  # four a sheet: two thirds of a half each way
        (((10, 10), (1, 1)), 2),
        (((6, 10), (4, 10)), 1),
    ],
)
def test_parts_that_cannot_share_a_sheet_are_counted(
    sizes: tuple[tuple[int, int], ...], least: int
) -> None:
    """Worked by hand; area alone says less."""
    assert _bound(*sizes) == least


@pytest.mark.parametrize(
    ("spot", "parts", "least"),
    [
        (Defect(4, 0, 2, 10), 5, 3),  # four tenths on either side: two a sheet
        (Defect(3, 0, 1, 10), 3, 3),  # three on the left hold none, six on the right hold one
        (Defect(0, 0, 1, 1), 5, 3),  # beside a lost corner two still fit, but no third
    ],
)
def test_defects_count(spot: Defect, parts: int, least: int) -> None:
    """Sheets of 10 x 10 with a defect, parts of 4 x 10; worked by hand."""
    sheet = StockItem("s", 10, 10, defects=(spot,))
    problem = Problem("mm", 0, None, (sheet,), (PartDemand("p", 4, 10, parts),))
    assert lower_bound(problem).value == least


@settings(max_examples=60, deadline=None)
@given(problems())
def test_no_sheet_holds_more_than_its_clear_area(problem: Problem) -> None:
    """Whatever the plan; the verifier knows nothing of clear areas."""
    solution = solve(problem, Stop(300))
    assert verify(problem, solution) == ()
    task = Frame(problem, "crosscut", panels=True).task()
    kerf = problem.kerf
    for tree in solution.tree:
        index = next(i for i, item in enumerate(problem.stock) if item.id == tree.stock)
        held = [placed.rect for placed in solution.placements if placed.sheet == tree.sheet]
        area = sum((rect.length + kerf) * (rect.width + kerf) for rect in held)
        assert area <= clear_area(task.bins[index], task.shapes, kerf)


def test_a_part_that_may_be_turned_counts_as_its_better_way_round() -> None:
    """Of 6 x 8 two lie one above the other on a sheet of 10 x 20; of 8 x 6 three do."""
    assert _bound(*((6, 8),) * 3, sheet=(10, 20)) == 2
    assert _bound(*((6, 8),) * 3, sheet=(10, 20), turn=True) == 1


def test_the_kerf_counts() -> None:
    """Two halves do not come out of a sheet when the blade takes its share."""
    assert _bound((5, 10), (5, 10)) == 1
    assert _bound((5, 10), (5, 10), kerf=1) == 2


def test_the_largest_sheets_are_counted_first() -> None:
    """One large sheet of two does for the area of two small ones."""
    stock = (StockItem("small", 10, 10), StockItem("large", 20, 10, 1))
    parts = (PartDemand("p", 10, 10, 4),)
    assert lower_bound(Problem("mm", 0, None, stock, parts)).value == 3


def test_money_buys_the_cheapest_area_first() -> None:
    """Half of a sheet at 3, all of one at 1 are 2 1/2; but it takes two whole sheets: 4."""
    stock = (StockItem("dear", 10, 10, None, 3), StockItem("cheap", 10, 10, 1, 1))
    bound = lower_bound(Problem("mm", 0, None, stock, (PartDemand("p", 10, 5, 3),)))
    assert (bound.value, bound.measure) == (1 + 3, "price")
    large = (StockItem("dear", 100, 100, None, 700), StockItem("cheap", 10, 10, None, 9))
    bound = lower_bound(Problem("mm", 0, None, large, (PartDemand("p", 10, 5, 150),)))
    assert bound.value == 9 * ceil(7500 * 700 / 100**2 / 9)  # in nines, as the others are dear


@given(
    st.lists(st.tuples(st.integers(1, 9), st.integers(1, 9)), min_size=1, max_size=6),
    st.lists(st.tuples(st.booleans(), st.integers(1, 20)), max_size=12),
)
def test_a_sheet_cut_apart_needs_one_sheet(
    first: list[tuple[int, int]], cuts: list[tuple[bool, int]]
) -> None:
    """Pieces of sheets that were cut up can never need more sheets than they came from."""
    pieces = [(20, 20)] * len(first)
    for number, (is_rip, at) in enumerate(cuts):
        length, width = pieces.pop(number % len(pieces))
        if is_rip and at < width:
            pieces += [(length, at), (length, width - at)]
        elif not is_rip and at < length:
            pieces += [(at, width), (length - at, width)]
        else:
            pieces.append((length, width))
    assert _bound(*pieces, sheet=(20, 20)) <= len(first)
    assert _bound(*pieces, sheet=(20, 20), turn=True) <= len(first)


def test_known_instances_are_not_bounded_above_their_best_plan() -> None:
    """Class 1, 20 items, first of Berkey and Wang 1987: best known 8 fixed, 7 turned."""
    items = json.loads(
        "[[5,9],[4,2],[10,6],[5,7],[6,3],[10,7],[1,5],[3,5],[6,9],[2,4],[6,7],[7,2],[8,3],"
        "[4,10],[4,5],[10,3],[8,3],[7,8],[8,3],[8,7]]"
    )
    sizes = [(length, width) for length, width in items]
    assert _bound(*sizes) == 8
    assert _bound(*sizes, turn=True) == 7


@given(
    st.lists(st.tuples(st.integers(0, 9), st.one_of(st.none(), st.integers(0, 3))), min_size=1,
             max_size=4),
    st.integers(0, 60),
)  # fmt: skip
def test_money_is_lifted_to_what_stock_can_cost(
    stock: list[tuple[int, int | None]], money: int
) -> None:
    """Against all sums tried out; stock without end is tried up to seventy pieces."""
    bins = [Bin(n, 1, 1, price, count) for n, (price, count) in enumerate(stock)]
    sums = {0}
    for price, count in stock:
        most = 70 if count is None and price else count or 0
        sums = {total + n * price for total in sums for n in range(most + 1) if total < 70}
    assert lift(bins, money) == min((s for s in sums if s >= money), default=money)
