"""Pricing and bound of column generation, against published knapsacks and plans made by hand."""

from __future__ import annotations

import itertools
from collections import Counter
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from casewright.cutting import PartDemand, Problem, Status, StockItem, Stop, solve
from casewright.cutting.columns import Columns
from casewright.cutting.outcome import lower_bound
from casewright.cutting.pricing import Pricing
from casewright.cutting.shapes import Bin, Shape, Task

GCUT1 = (
    (167, 184), (114, 118), (167, 152), (83, 140), (70, 86), (143, 166), (120, 160), (66, 148),
    (87, 141), (69, 165),
)  # fmt: skip
"""Ten sizes for one sheet of 250 by 250, worth their areas: Beasley 1985."""


def _task(
    sizes: tuple[tuple[int, int], ...], sheet: tuple[int, int], *, turn: bool = False
) -> Task:
    shapes = tuple(Shape(*size, count, turn) for size, count in Counter(sizes).items())
    return Task((Bin(0, *sheet),), shapes, 0, panels=True)


def test_the_best_sheet_of_a_published_knapsack() -> None:
    """Parts turned: 58136, the best known of any layout, is cut in three stages."""
    worth, column = Pricing(_task(GCUT1, (250, 250), turn=True)).best([a * b for a, b in GCUT1])[0]
    assert worth == 58136
    assert max(column.counts) == 1
    assert sum(n * a * b for n, (a, b) in zip(column.counts, GCUT1, strict=True)) == worth


def test_a_sheet_is_never_priced_below_the_best_known() -> None:
    """Grain fixed: 48368 is the best known of any layout; a leader's row may hold a part twice."""
    worths = [
        Pricing(_task(tuple(s), (250, 250))).best([a * b for a, b in GCUT1])[0][0]
        for s in (GCUT1, [(b, a) for a, b in GCUT1])
    ]
    assert max(worths) >= 48368


_STOCK = (Bin(0, 20, 20, price=5), Bin(1, 12, 16, price=3, count=2))


@st.composite
def _cut_apart(draw: st.DrawFn) -> tuple[Task, int]:
    """Sheets cut into panels, the panels into rows, the rows into parts; what the sheets cost."""
    sheets = draw(st.lists(st.sampled_from(_STOCK), min_size=1, max_size=4))
    sheets = sheets[:1] + [sheet for sheet in sheets[1:] if sheet.count is None]
    panels = draw(st.booleans())
    parts: list[tuple[int, int]] = []
    for sheet in sheets:
        for panel in _lengths(draw, sheet.du) if panels else [sheet.du]:
            for high in _lengths(draw, sheet.dv):
                parts += [(long, high) for long in _lengths(draw, panel)]
    times = draw(st.sampled_from((1, 1, 2, 7)))
    turn = draw(st.booleans())
    shapes = tuple(Shape(*size, n * times, turn) for size, n in Counter(parts).items())
    stock = tuple(replace(b, count=b.count and b.count * times) for b in _STOCK)
    return Task(stock, shapes, 0, panels), times * sum(sheet.price for sheet in sheets)


def _lengths(draw: st.DrawFn, whole: int) -> list[int]:
    at = draw(st.lists(st.integers(1, whole - 1), max_size=2, unique=True)) if whole > 1 else []
    ends = [0, *sorted(at), whole]
    return [b - a for a, b in itertools.pairwise(ends)]


@settings(max_examples=60)
@given(_cut_apart())
def test_no_bound_is_above_what_a_plan_costs(cut: tuple[Task, int]) -> None:
    """What came out of these sheets needs no dearer ones, however often it is all cut."""
    task, cost = cut
    columns = Columns([task], lambda: columns.nodes > 20_000)
    assert columns.raise_to(999) <= cost
    columns.cap(cost)
    assert columns.raise_to(999) <= cost


def test_plans_that_cost_less_are_looked_at_alone() -> None:
    """Three strips of 9 from sheets of 20 at 100, or two and none from five offcuts of 4 at 10.

    By fractions a sheet and a half: 150. But one sheet holds two, and the offcuts none: 200.
    """
    stock = (Bin(0, 20, 20, price=100), Bin(1, 20, 4, price=10, count=5))
    columns = Columns([Task(stock, (Shape(20, 9, 3, False),), 0, panels=True)], lambda: False)
    assert columns.raise_to(200) == 150
    assert columns.cap(199)
    assert columns.raise_to(200) >= 200


def test_many_rows_of_one_height_are_priced() -> None:
    """Thirty long parts of which none fits across: ten rows of one on each of three sheets."""
    task = Task((Bin(0, 10, 10),), (Shape(7, 1, 30, False), Shape(4, 1, 1, False)), 0, panels=True)
    columns = Columns([task], lambda: False)
    assert columns.raise_to(9) == 4


def test_the_first_plan_of_many_parts_leaves_work_for_the_bound() -> None:
    """Ten by seven of 240 x 170 mm lie on a sheet: (2440 + 3) // 243 = 10, (1220 + 3) // 173 = 7.

    By area there is room for 70.9 a sheet; 705 parts take 11 sheets all the same. The first plan
    tries more places than the stop allows.
    """
    part = PartDemand("shelf", 240, 170, 705)
    problem = Problem("mm", 3, 3, (StockItem("sheet", 2440, 1220),), (part,))
    assert lower_bound(problem).value == 10
    solution = solve(problem, Stop(20_000))
    assert (solution.cost, solution.bound.value, solution.status) == (11, 11, Status.PROVED)
    assert solution.bound.scope == "three-stage cutting"
