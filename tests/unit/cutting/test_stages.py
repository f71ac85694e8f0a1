"""Two stages against every way of cutting in two; more than three where they save a sheet."""

from __future__ import annotations

import random  # noqa: TID251 - seeded here
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache
from itertools import product

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.cutting_problems import problems

from casewright.cutting import (
    Defect,
    PartDemand,
    Problem,
    Status,
    StockItem,
    Stop,
    solve,
    verify,
)

_NEVER = 1 << 40

Part = tuple[int, int, bool]
"""Length and width, and whether it may be turned."""


def _problem(parts: list[Part], sheet: tuple[int, int], kerf: int, stages: int | None) -> Problem:
    demands = tuple(PartDemand(f"p{n}", *part[:2], 1, part[2]) for n, part in enumerate(parts))
    return Problem("mm", kerf, stages, (StockItem("s", *sheet),), demands)


def _spiral(sheet: tuple[int, int], offs: tuple[int, ...]) -> Problem:
    """One part after the other cut off a sheet, by turns across its length and its width."""
    length, width = sheet
    parts: list[Part] = []
    for n, off in enumerate(offs):
        parts.append((off, width, False) if n % 2 == 0 else (length, off, False))
        length, width = (length - off, width) if n % 2 == 0 else (length, width - off)
    return _problem([*parts, (length, width, False)], sheet, 0, None)


@pytest.mark.parametrize("offs", [(20, 13, 11, 17, 7, 9), (23, 19, 17, 13, 11, 10, 7)])
def test_free_cutting_goes_as_deep_as_it_takes(offs: tuple[int, ...]) -> None:
    """A sheet cut up without waste in seven or eight stages; four do not give it back."""
    problem = _spiral((101, 97), offs)
    free = solve(problem, Stop(200_000))
    assert verify(problem, free) == ()
    assert (free.cost, free.status) == (1, Status.PROVED)
    assert solve(replace(problem, stages=4), Stop(50_000)).cost == 2


def _fewest_in_two_stages(parts: list[Part], sheet: tuple[int, int], kerf: int) -> int:
    """Every set of parts as a row, every set of rows as a sheet, every set of sheets as a plan."""
    grown = [(length + kerf, width + kerf, turns) for length, width, turns in parts]
    length, width = sheet[0] + kerf, sheet[1] + kerf
    whole = (1 << len(parts)) - 1
    along = _least(whole, lambda one: _height(grown, one, length, across=False))
    across = _least(whole, lambda one: _height(grown, one, width, across=True))
    fits = [a <= width or b <= length for a, b in zip(along, across, strict=True)]
    return _least(whole, lambda one: 1 if fits[one] else _NEVER)[whole]


def _least(whole: int, cost: Callable[[int], int]) -> list[int]:
    """For every set the least sum of costs of sets that make it up."""
    costs = [cost(one) if one else 0 for one in range(whole + 1)]
    sums = [0] + [_NEVER] * whole
    for all_of in range(1, whole + 1):
        for one in _subsets(all_of):
            if one & all_of & -all_of:
                sums[all_of] = min(sums[all_of], costs[one] + sums[all_of ^ one])
    return sums


def _subsets(of: int) -> Iterator[int]:
    one = of
    while one:
        yield one
        one = (one - 1) & of


def _height(parts: list[Part], chosen: int, room: int, *, across: bool) -> int:
    """The least height of a row of some parts; the lower ones are trimmed."""
    best = _NEVER
    some = [part for n, part in enumerate(parts) if chosen >> n & 1]
    for turns in product(*[(False, True) if part[2] else (False,) for part in some]):
        sides = [
            (part[1], part[0]) if turn != across else part[:2]
            for part, turn in zip(some, turns, strict=True)
        ]
        if sum(side for side, _ in sides) <= room:
            best = min(best, max(high for _, high in sides))
    return best


@st.composite
def _few(draw: st.DrawFn) -> list[Part]:
    turns = draw(st.booleans())
    size = st.tuples(st.integers(8, 70), st.integers(8, 50))
    return [(*sides, turns) for sides in draw(st.lists(size, min_size=2, max_size=6))]


@settings(max_examples=50, deadline=None)
@given(_few(), st.sampled_from([0, 3]))
def test_two_stages_are_as_good_as_any_way_of_trying(parts: list[Part], kerf: int) -> None:
    """Rows across the sheet, parts across the rows, lower parts trimmed: no more sheets needed."""
    problem = _problem(parts, (100, 60), kerf, 2)
    solution = solve(problem)
    assert verify(problem, solution) == ()
    fewest = _fewest_in_two_stages(parts, (100, 60), kerf)
    assert solution.bound.value <= fewest == solution.cost


def test_sheets_of_one_plan_may_be_cut_in_either_direction_first() -> None:
    """Two sheets suffice when one is ripped first and the other crosscut first."""
    parts = [
        (43, 20, False), (30, 24, False), (66, 10, False), (68, 30, False),
        (49, 15, False), (44, 33, False), (48, 38, False),
    ]  # fmt: skip
    problem = _problem(parts, (100, 60), 3, 2)
    assert _fewest_in_two_stages(parts, (100, 60), 3) == solve(problem).cost == 2


NESTED: list[Part] = [
    (22, 11, False), (22, 89, False), (70, 23, False), (8, 23, False), (57, 9, False),
    (57, 55, False), (57, 13, False), (21, 64, False), (21, 13, False),
]  # fmt: skip
"""What a sheet of 100 x 100 gives when it is cut in four stages."""


@pytest.mark.parametrize("stages", [4, None])
def test_more_stages_are_used_where_they_save_a_sheet(stages: int | None) -> None:
    """Three stages need two sheets, which is proved; cut as it came about, one is enough."""
    three = solve(_problem(NESTED, (100, 100), 0, 3))
    assert (three.cost, three.verdict) == (2, "proved minimum for three-stage cutting")
    problem = _problem(NESTED, (100, 100), 0, stages)
    deeper = solve(problem)
    assert verify(problem, deeper) == ()
    assert (deeper.cost, deeper.verdict) == (1, "proved minimum for any layout")


def test_more_stages_serve_sheets_with_a_defect_too() -> None:
    """The same parts beside a strip with a knot in it."""
    problem = _problem(NESTED, (104, 100), 0, None)
    knotty = (replace(problem.stock[0], defects=(Defect(101, 50, 2, 2),)),)
    problem = replace(problem, stock=knotty)
    solution = solve(problem)
    assert verify(problem, solution) == ()
    assert solution.cost == 1


def test_free_cutting_goes_as_deep_beside_a_defect() -> None:
    """A sheet cut up without waste in seven stages, with a strip beside it that has a knot."""
    plain = _spiral((101, 97), (20, 13, 11, 17, 7, 9))
    sheet = StockItem("s", 101, 102, defects=(Defect(30, 99, 2, 2),))
    solution = solve(replace(plain, stock=(sheet,)), Stop(200_000))
    assert verify(replace(plain, stock=(sheet,)), solution) == ()
    assert solution.cost == 1


def _fits_at_all(
    sheet: tuple[int, int], spots: tuple[Defect, ...], parts: list[Part], kerf: int
) -> bool:
    """Every cut of every piece, every way to share the parts out: whether one sheet is enough."""

    @cache
    def lies(x0: int, x1: int, y0: int, y1: int, n: int) -> bool:
        length, width, turns = parts[n]
        return any(
            all(
                x + a <= s.x or s.x + s.length <= x or y + b <= s.y or s.y + s.width <= y
                for s in spots
            )
            for a, b in {(length, width), (width, length) if turns else (length, width)}
            for x in range(x0, x1 - a + 1)
            for y in range(y0, y1 - b + 1)
        )

    @cache
    def fits(x0: int, x1: int, y0: int, y1: int, chosen: int) -> bool:
        held = [n for n in range(len(parts)) if chosen >> n & 1]
        if sum(parts[n][0] * parts[n][1] for n in held) > (x1 - x0) * (y1 - y0):
            return False
        if len(held) == 1:
            return lies(x0, x1, y0, y1, held[0])
        shares = [one for one in _subsets(chosen) if one != chosen]
        return any(
            fits(x0, at, y0, y1, one) and fits(at + kerf, x1, y0, y1, chosen ^ one)
            for at in range(x0 + 1, x1 - kerf)
            for one in shares
        ) or any(
            fits(x0, x1, y0, at, one) and fits(x0, x1, at + kerf, y1, chosen ^ one)
            for at in range(y0 + 1, y1 - kerf)
            for one in shares
        )

    return fits(0, sheet[0], 0, sheet[1], (1 << len(parts)) - 1)


def _beside_defects(number: int) -> tuple[Problem, list[Part]]:
    """A few parts; one small sheet with a defect or two, cheap, and sound ones, dear."""
    rng = random.Random(number)  # noqa: S311 - for sizes, not for secrets
    parts = [
        (rng.randint(2, 8), rng.randint(2, 5), rng.random() < 0.5)
        for _ in range(rng.randint(3, 4))
    ]
    spots = tuple(
        Defect(rng.randint(0, 9), rng.randint(0, 7), rng.randint(1, 2), 1)
        for _ in range(rng.randint(1, 2))
    )
    problem = _problem(parts, (11, 8), number % 2, None)
    spoilt = replace(problem.stock[0], price=3, count=1, defects=spots)
    return replace(problem, stock=(spoilt, StockItem("sound", 11, 8, price=10))), parts


def test_free_cutting_round_defects_is_as_good_as_any_way_of_trying() -> None:
    """The cheap sheet is enough wherever any cuts at all make it so, in some of 40 problems."""
    enough = 0
    for number in range(40):
        problem, parts = _beside_defects(number)
        can = _fits_at_all((11, 8), problem.stock[0].defects, parts, problem.kerf)
        solution = solve(problem, Stop(60_000 if can else 2_000))
        assert verify(problem, solution) == ()
        assert (solution.cost == 3) == can, number
        enough += can
    assert 10 < enough < 30


def test_a_bound_for_three_stages_is_never_told_of_free_cutting() -> None:
    """Halves with crossing grain need two sheets; that is not proved for every way of cutting."""
    parts = [(100, 50, False), (50, 100, False)]
    solution = solve(_problem(parts, (100, 100), 0, None), Stop(20_000))
    assert (solution.cost, solution.status) == (2, Status.BOUNDED)
    assert (solution.bound.value, solution.bound.scope) == (1, "any layout")


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(problems())
def test_free_cutting_never_costs_more_than_three_stages(problem: Problem) -> None:
    """With the same work: defects, offcuts, matches and all."""
    three, free = (solve(replace(problem, stages=n), Stop(800)) for n in (3, None))
    assert verify(replace(problem, stages=None), free) == ()
    if Status.SHORT not in {three.status, free.status}:
        assert free.cost <= three.cost


def test_narrow_searches_keep_to_three_stages() -> None:
    """Where no sheet is saved the plan stays as easy to cut as with three stages."""
    parts = [(40, 30, False)] * 6
    three, free = (solve(_problem(parts, (100, 100), 0, n), Stop(5_000)) for n in (3, None))
    assert three.tree == free.tree
