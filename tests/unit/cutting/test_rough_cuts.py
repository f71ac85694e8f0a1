"""First cuts wide of the line: common practice where a straightedge breaks sheets down."""

from __future__ import annotations

import pytest

from casewright.cutting import (
    Limits,
    Load,
    PartDemand,
    Problem,
    Solution,
    StockItem,
    Stop,
    Work,
    WorkModel,
    ease,
    plan_cuts,
    solve,
    verify,
    walk,
    work_of,
)
from casewright.cutting.pattern import pattern_of

FOOT = 384**2
"""A square foot [1/32 in squared]."""

LIMITS = Limits(
    rip_capacity=960, crosscut_capacity=800, straightedge=3_200, lift_area=20 * FOOT,
    narrowest_rip=64, shortest_on_fence=256, longest_on_sled=2_560,
)  # fmt: skip
"""A fence of 30 in, a sled of 25 in; one person handles 20 square feet at the saw [1/32 in]."""

MODEL = WorkModel(LIMITS, load=Load(full=18 * FOOT, half=9 * FOOT))
AS_FOUND = Stop(0)


def _problem(length: int, width: int, count: int, *, kerf: int = 4) -> Problem:
    """Equal parts of one group, out of sheets of 96 x 48 in."""
    part = PartDemand("side", length, width, count, group="sides")
    return Problem("1/32 in", kerf, 3, (StockItem("sheet", 3_072, 1_536),), (part,))


def _eased(problem: Problem) -> Solution:
    solution = ease(problem, solve(problem), MODEL, AS_FOUND)
    assert not verify(problem, solution)
    assert not walk(problem, plan_cuts(problem, solution, LIMITS), LIMITS).missteps
    return solution


def _work(problem: Problem, solution: Solution) -> Work:
    return work_of(problem, solution, plan_cuts(problem, solution, LIMITS), MODEL)


def test_where_there_is_waste_one_setting_gives_all_their_size() -> None:
    """Sides of 34 1/2 x 23 1/4 in, four to a sheet: none gets its size from a clamped guide."""
    problem = _problem(1_104, 744, 16)
    solution = _eased(problem)
    plan = plan_cuts(problem, solution, LIMITS)
    last = {leaf.name: step for step in plan.steps for leaf in step.leaves if leaf.part}
    assert len(last) == 16
    assert {step.method for step in last.values()} <= {"fence", "sled"}
    assert _work(problem, solution).split_groups == 0
    assert solution.cost == solve(problem).cost == 4


def test_where_there_is_none_the_first_cut_is_to_the_line() -> None:
    """Four strips of 11 29/32 in and three kerfs leave nothing of 48 in to cut wide in."""
    problem = _problem(3_072, 381, 8)
    solution = _eased(problem)
    assert solution.cost == 2
    assert {placed.rect.y for placed in solution.placements} == {0, 385, 770, 1_155}


@pytest.mark.parametrize("kerf", [0, 1, 4, 9])
def test_waste_is_left_at_the_edge_too(kerf: int) -> None:
    """As much as one cut uses stays between the last part and the edge of the sheet."""
    problem = _problem(1_104, 744, 8, kerf=kerf)
    solution = _eased(problem)
    for placed in solution.placements:
        assert placed.rect.x1 + 2 * kerf <= 3_072
        assert placed.rect.y1 + 2 * kerf <= 1_536


def test_a_plan_cut_wide_can_be_read_again() -> None:
    """Its sheets are still panels and strips, so that they can be eased further."""
    problem = _problem(1_104, 744, 16)
    solution = _eased(problem)
    patterns = [pattern_of(problem, tree, lambda _: 0) for tree in solution.tree]
    assert [pattern is not None for pattern in patterns] == [True] * 4
