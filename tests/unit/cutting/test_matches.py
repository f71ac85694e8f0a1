"""Parts through which the grain runs come out of one piece, in their order."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.cutting_problems import IN, SHEET, SMALL_SHOP, part, sheet_problem

from casewright.cutting import (
    Breach,
    Match,
    PartDemand,
    Problem,
    ProblemError,
    Reason,
    Slip,
    Solution,
    Status,
    Stop,
    Trim,
    WorkModel,
    board_problem,
    ease,
    plan_cuts,
    read_problem,
    replan,
    solve,
    solve_boards,
    verify,
    walk,
    work_of,
    write_problem,
)

QUICK = Stop(20_000)
DOORS = sheet_problem(
    part("door", "29 1/2", "14 7/8", 3), part("shelf", "32 7/8", "11 5/8", 6),
    part("drawer", "6", "30"), part("left", "23 3/8", "14 15/16"),
    part("right", "23 3/8", "14 15/16"),
)  # fmt: skip
ROW = Match("row", "across", ("door",))
FACE = Match("face", "along", (Match("", "across", ("left", "right")), "drawer"))
MATCHED = replace(DOORS, matches=(ROW, FACE))


def _lies(solution: Solution, name: str) -> list[tuple[int, int, int]]:
    return [(p.sheet, p.rect.x, p.rect.y) for p in solution.placements if p.part == name]


def _is_sound(problem: Problem, solution: Solution) -> bool:
    plan = plan_cuts(problem, solution, SMALL_SHOP)
    return not verify(problem, solution) and not walk(problem, plan, SMALL_SHOP).missteps


def test_doors_lie_side_by_side_a_kerf_apart() -> None:
    solution = solve(MATCHED, QUICK)
    assert _is_sound(MATCHED, solution)
    (s0, x0, y0), (s1, x1, y1), (s2, x2, y2) = _lies(solution, "door")
    step = 15 * IN  # 14 7/8 and the blade's 1/8
    assert (s0, x0) == (s1, x1) == (s2, x2)
    assert (y1 - y0, y2 - y1) == (step, step)


def test_a_drawer_lies_in_line_with_the_doors_below_it() -> None:
    solution = solve(MATCHED, QUICK)
    ((sheet, x, y),) = _lies(solution, "drawer")
    assert _lies(solution, "left") == [(sheet, x - 23 * IN - IN // 2, y)]
    assert _lies(solution, "right") == [(sheet, x - 23 * IN - IN // 2, y + 15 * IN + IN // 16)]


def test_like_doors_get_their_width_at_one_setting() -> None:
    solution = solve(MATCHED, QUICK)
    plan = plan_cuts(MATCHED, solution, SMALL_SHOP)
    cards = [step.card for step in plan.steps for piece in step.leaves if piece.part == "door"]
    assert len(cards) == 3
    assert len(set(cards)) == 1
    last = [step for step in plan.steps for piece in step.leaves if piece.part == "door"][-1]
    assert last.leaves[0].part == "door"  # set by the fence, not left over


def test_room_for_that_setting_costs_no_sheet() -> None:
    just = replace(SHEET, width=3 * 15 * IN - IN // 8)
    problem = replace(
        sheet_problem(part("door", "29 1/2", "14 7/8", 3), sheet=just), matches=(ROW,)
    )
    solution = solve(problem, QUICK)
    assert _is_sound(problem, solution)
    assert solution.cost == 1


def test_easing_keeps_matches() -> None:
    solution = solve(MATCHED, QUICK)
    model = WorkModel(SMALL_SHOP)
    eased = ease(MATCHED, solution, model, Stop(5_000))
    assert _is_sound(MATCHED, eased)
    before, after = (
        work_of(MATCHED, s, plan_cuts(MATCHED, s, SMALL_SHOP), model).total
        for s in (solution, eased)
    )
    assert after <= before


def test_parts_that_are_apart_are_refused() -> None:
    apart = solve(DOORS, QUICK)
    plan = plan_cuts(DOORS, apart, SMALL_SHOP)
    other = replace(DOORS, matches=(Match("odd", "across", ("drawer", "left", "shelf")),))
    assert {v.breach for v in verify(other, apart)} >= {Breach.MATCH}
    assert {slip.slip for slip in walk(other, plan, SMALL_SHOP).missteps} == {Slip.MATCH}
    assert ease(other, apart, WorkModel(), QUICK) is apart


def test_a_row_wider_than_the_sheet_is_left_over_together() -> None:
    wide = replace(DOORS, parts=(part("door", "29 1/2", "16 1/2", 3),), matches=(ROW,))
    solution = solve(wide, QUICK)
    assert [(e.part, e.count, e.reason) for e in solution.unplaced] == [
        ("door", 3, Reason.MATCHED)
    ]
    assert not verify(wide, solution)


def test_the_bound_counts_matches() -> None:
    """Two doors of 20 in fit a sheet, their match with a third does not: two sheets are needed."""
    parts = (part("a", "60", "20", 1), part("b", "60", "20", 1), part("c", "60", "27", 1))
    pairs = (Match("ab", "across", ("a", "b")),)
    problem = replace(sheet_problem(*parts), matches=pairs)
    solution = solve(problem, QUICK)
    assert (solution.cost, solution.status) == (2, Status.PROVED)
    assert _is_sound(problem, solution)


def test_planned_again_a_match_stays_whole() -> None:
    last = solve(MATCHED, QUICK)
    cut = {tree.sheet for tree in last.tree if _lies(last, "door")[0][0] == tree.sheet}
    more = replace(MATCHED, parts=(*MATCHED.parts, part("new", "20", "10")))
    made = replan(more, last, cut, QUICK)
    assert _is_sound(more, made.solution)
    assert _lies(made.solution, "door") == _lies(last, "door")


def test_a_match_that_is_cut_apart_is_told() -> None:
    last = solve(DOORS, QUICK)
    other = replace(DOORS, matches=(Match("odd", "across", ("drawer", "left", "shelf")),))
    with pytest.raises(ProblemError, match='match "odd": of is cut already in part'):
        replan(other, last, range(len(last.tree)), QUICK)


def test_drawer_fronts_of_a_board_in_line() -> None:
    stock = [replace(SHEET, width=6 * IN)]
    fronts = [PartDemand(f"f{n}", size * IN, 6 * IN) for n, size in enumerate((20, 30, 20, 40))]
    problem = replace(
        board_problem("1/32 in", 4, stock, fronts), matches=(Match("run", "along", ("f0", "f3")),)
    )
    solution = solve_boards(problem)
    assert not verify(problem, solution)
    assert _lies(solution, "f3")[0][1] == _lies(solution, "f0")[0][1] + 20 * IN + 4


def test_json_keeps_matches() -> None:
    assert read_problem(write_problem(MATCHED)) == MATCHED


@pytest.mark.parametrize(
    ("matches", "says"),
    [
        ((Match("row", "across", ()),), "of is empty"),
        ((Match("row", "across", ("nobody",)),), "ids of parts of the problem"),
        ((Match("row", "across", ("door", "door")),), '"door" once more'),
        ((ROW, Match("two", "along", ("door",))), '"door" once more'),
        ((ROW, replace(FACE, id="row")), "used twice"),
    ],
)
def test_matches_without_meaning(matches: tuple[Match, ...], says: str) -> None:
    with pytest.raises(ProblemError, match=says):
        replace(DOORS, matches=matches)


def test_what_may_turn_has_no_grain_to_match() -> None:
    sheet = sheet_problem(part("toe", "30", "4", 2, rotate=True))
    with pytest.raises(ProblemError, match="parts whose grain is fixed"):
        replace(sheet, matches=(Match("row", "along", ("toe",)),))


def test_parts_begin_at_the_edge_that_is_as_bought() -> None:
    """The left end is trimmed, the right one is not: the right one is the datum."""
    sheet = replace(SHEET, trim=Trim(left=IN // 4))
    problem = sheet_problem(part("side", "34 1/2", "23 1/4", 2), sheet=sheet)
    solution = solve(problem, QUICK)
    assert _is_sound(problem, solution)
    assert {p.rect.x1 for p in solution.placements} == {sheet.length}
    plan = plan_cuts(problem, solution, SMALL_SHOP)
    first = next(step for step in plan.steps if step.direction == "crosscut")
    assert (first.datum, first.is_factory) == ("right", True)
