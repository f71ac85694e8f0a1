"""Laws of planning anew: cut sheets stay, nothing is lost, and no more moves than was changed."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from tests.cutting_problems import part, problems, sheet_problem, two_cases

from casewright.cutting import (
    Node,
    PartDemand,
    Problem,
    ProblemError,
    Solution,
    Split,
    StockItem,
    Stop,
    plan_cuts,
    replan,
    solve,
    verify,
    walk,
)

_SHORT = Stop(500)
_FEW = settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def _edits(draw: st.DrawFn) -> tuple[Problem, Solution, Problem, frozenset[int]]:
    """A problem with its plan, the problem after an edit, and the sheets that are cut."""
    before = draw(problems())
    plan = solve(before, _SHORT)
    parts: list[PartDemand] = []
    for old in before.parts:
        match draw(st.sampled_from(("same", "same", "gone", "more", "fewer", "longer"))):
            case "same":
                parts.append(old)
            case "more":
                parts.append(replace(old, count=old.count + draw(st.integers(1, 3))))
            case "fewer" if old.count > 1:
                parts.append(replace(old, count=old.count - 1))
            case "longer":
                parts.append(replace(old, length=old.length + draw(st.integers(1, 4))))
            case _:
                pass
    if draw(st.booleans()) or not parts:
        parts.append(PartDemand("fresh", draw(st.integers(8, 30)), draw(st.integers(8, 20))))
    sheets = range(len(plan.tree))
    cut = draw(st.sets(st.sampled_from(sheets))) if sheets else set()
    stay = {part.id for part in parts if part in before.parts}
    matches = tuple(match for match in before.matches if stay.issuperset(match.parts))
    return before, plan, replace(before, parts=tuple(parts), matches=matches), frozenset(cut)


def _cuts(node: Node) -> list[tuple[object, ...]]:
    if not isinstance(node, Split):
        return []
    inner = [cut for piece in node.pieces for cut in _cuts(piece)]
    return [(node.rect, node.direction, node.cuts), *inner]


@_FEW
@given(_edits(), st.integers(0, 2))
def test_a_new_plan_can_be_cut_and_keeps_what_is_cut(
    edit: tuple[Problem, Solution, Problem, frozenset[int]], seed: int
) -> None:
    """The verifier accepts it, and every cut of a cut sheet is where it was."""
    _, last, problem, cut = edit
    made = replan(problem, last, cut, _SHORT, seed)
    assert verify(problem, made.solution) == ()
    now = {origin: tree for tree, origin in zip(made.solution.tree, made.origins, strict=True)}
    for number in cut:
        assert now[number].stock == last.tree[number].stock
        assert _cuts(now[number].root) == _cuts(last.tree[number].root)


@_FEW
@given(_edits())
def test_what_is_not_cut_yet_can_be_cut_safely(
    edit: tuple[Problem, Solution, Problem, frozenset[int]],
) -> None:
    """A gone part leaves no cut behind that parts one leftover from another."""
    _, last, problem, cut = edit
    made = replan(problem, last, cut, _SHORT)
    open_trees = [
        tree for tree, origin in zip(made.solution.tree, made.origins, strict=True)
        if origin not in cut
    ]  # fmt: skip
    trees = tuple(replace(tree, sheet=number) for number, tree in enumerate(open_trees))
    order = plan_cuts(problem, replace(made.solution, tree=trees))
    assert walk(problem, order).missteps == ()


@_FEW
@given(_edits())
def test_every_piece_is_kept_moved_added_or_dropped(
    edit: tuple[Problem, Solution, Problem, frozenset[int]],
) -> None:
    """The four sorts add up to both plans."""
    _, last, problem, cut = edit
    made = replan(problem, last, cut, _SHORT)
    went = made.movement
    assert went.kept + went.moved + went.added == len(made.solution.placements)
    assert went.kept + went.moved + went.dropped == len(last.placements)


@_FEW
@given(problems())
def test_nothing_moves_when_nothing_changed(problem: Problem) -> None:
    """Whatever was planned stands."""
    last = solve(problem, _SHORT)
    assume(not any(item.count is not None for item in problem.stock))
    made = replan(problem, last, stop=Stop(0))
    if made.solution.cost == last.cost:
        assert made.movement == type(made.movement)(len(last.placements), 0, 0, 0)
        assert made.solution.tree == last.tree
    else:
        assert made.solution.cost < last.cost


def test_one_more_small_part_leaves_one_sheet_as_it_is() -> None:
    """A third test piece of 12 by 6 fits on the emptier of the two sheets of two cases."""
    problem = two_cases()
    last = solve(problem)
    parts = tuple(replace(p, count=p.count + (p.id == "test piece")) for p in problem.parts)
    made = replan(replace(problem, parts=parts), last)
    assert made.solution.cost == solve(replace(problem, parts=parts)).cost == 2
    assert (made.movement.added, made.movement.dropped) == (1, 0)
    assert sorted(made.origins, key=str) in ([0, None], [1, None])


def test_a_part_from_a_cut_sheet_that_changed_is_cut_again() -> None:
    """A side cut at 40 in is of no use when 41 is wanted; its piece is left over."""
    problem = sheet_problem(part("side", "40", "11 7/8", 2), part("shelf", "30", "11", 2))
    last = solve(problem)
    assert len(last.tree) == 1
    longer = replace(problem, parts=(replace(problem.parts[0], length=41 * 32), problem.parts[1]))
    made = replan(longer, last, {0})
    assert made.origins == (0, None)
    assert Counter(p.part for p in made.solution.placements if p.sheet == 0) == {"shelf": 2}
    assert Counter(p.part for p in made.solution.placements if p.sheet == 1) == {"side": 2}
    assert made.movement.added == made.movement.dropped == 2


def test_a_cut_sheet_needs_its_stock() -> None:
    """The message names the sheet and the stock."""
    problem = sheet_problem(part("side", "40", "11 7/8", 2))
    last = solve(problem)
    other = replace(problem, stock=(StockItem("other", 3072, 1536),))
    with pytest.raises(ProblemError, match=r'sheet 1.*"ply"'):
        replan(other, last, {0})
    assert replan(other, last).origins == (None,)
