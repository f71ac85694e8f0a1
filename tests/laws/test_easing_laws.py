"""Laws of easing: whatever the plan, it becomes no worse, and can be cut."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from graphlib import CycleError, TopologicalSorter

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.cutting_problems import problems, shops

from casewright.cutting import (
    Load,
    Problem,
    Rates,
    Solution,
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
from casewright.cutting.pattern import kinds_of, pattern_of, tree_of
from casewright.cutting.plain import is_plain
from casewright.cutting.sheet_work import SheetWork, WorkCounter
from casewright.cutting.solution import Leaf, Node
from casewright.cutting.work_count import WorkCount

_SHORT = Stop(500)
_FEW = settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def _grouped(draw: st.DrawFn) -> Problem:
    problem = draw(problems())
    names = st.sampled_from([None, "a", "b"])
    parts = tuple(replace(part, group=draw(names)) for part in problem.parts)
    return replace(problem, parts=parts)


@st.composite
def _models(draw: st.DrawFn) -> WorkModel:
    heavy = draw(st.sampled_from([None, 400, 1_500]))
    rates = Rates(
        reach=draw(st.sampled_from([0, 3])), reach_length=7, hour=draw(st.sampled_from([0, 40]))
    )
    return WorkModel(draw(shops()), rates, Load(heavy, heavy // 2 if heavy else None))


def _work(problem: Problem, solution: Solution, model: WorkModel) -> Work:
    return work_of(problem, solution, plan_cuts(problem, solution, model.limits), model)


@_FEW
@given(_grouped(), _models(), st.integers(0, 3), st.integers(0, 1))
def test_easing_keeps_parts_and_sheets(
    problem: Problem, model: WorkModel, seed: int, more: int
) -> None:
    """The same parts are placed, for no more than is allowed, with no more work."""
    solution = solve(problem, _SHORT)
    eased = ease(problem, solution, model, _SHORT, seed, more=more)
    assert verify(problem, eased) == ()
    assert Counter((p.part, p.copy) for p in eased.placements) == Counter(
        (p.part, p.copy) for p in solution.placements
    )
    assert eased.unplaced == solution.unplaced
    assert eased.cost <= solution.cost + more
    assert _work(problem, eased, model).total <= _work(problem, solution, model).total


@_FEW
@given(_grouped(), _models())
def test_an_eased_plan_can_be_walked(problem: Problem, model: WorkModel) -> None:
    """Its steps can be done one after the other, safely, and make every part."""
    eased = ease(problem, solve(problem, _SHORT), model, _SHORT)
    walked = walk(problem, plan_cuts(problem, eased, model.limits), model.limits)
    assert walked.missteps == ()
    assert walked.made == Counter(placed.part for placed in eased.placements)


@_FEW
@given(_grouped(), _models())
def test_work_counted_sheet_by_sheet_is_the_work_of_the_order(
    problem: Problem, model: WorkModel
) -> None:
    """What the search compares plans by is what the order of work asks for, labels apart.

    Settings may be made twice where the order cannot wait, so the order may ask for more.
    """
    solution = solve(problem, _SHORT)
    work = _work(problem, solution, model)
    counter = WorkCounter(problem, kinds_of(problem.parts), model)
    numbers = {name: k for k, kind in enumerate(counter.kinds) for name, _ in kind.copies}
    trees = [replace(tree, root=_named(tree.root, numbers)) for tree in solution.tree]
    tally = WorkCount(model.rates)
    for tree in trees:
        tally.add(counter.tree_work(tree))
    total = tally.value
    plan = plan_cuts(problem, solution, model.limits)
    twice = len(plan.cards) - len({(card.method, card.setting) for card in plan.cards})
    guides = sum(card.method == "straightedge" for card in plan.cards)
    if twice == 0 or guides == len(plan.cards):
        assert total == work.total - work.parts * model.rates.label
    for tree in trees:
        tally.take(counter.tree_work(tree))
    assert tally.value == 0


@_FEW
@given(_grouped(), _models())
def test_work_counted_by_rows_is_the_work_of_the_cut_tree(
    problem: Problem, model: WorkModel
) -> None:
    """Sheets in panels and strips, counted as they are taken apart, and as they are cut."""
    if not is_plain(problem):
        return
    counter = WorkCounter(problem, kinds_of(problem.parts), model)
    numbers = {name: k for k, kind in enumerate(counter.kinds) for name, _ in kind.copies}
    for tree in solve(problem, _SHORT).tree:
        pattern = pattern_of(problem, tree, numbers.__getitem__)
        if pattern is not None:
            again = tree_of(problem, pattern, 0, lambda kind: (str(kind), 1))
            assert _shares(counter.pattern_work(pattern)) == _shares(counter.tree_work(again))


def _shares(work: SheetWork) -> dict[str, object]:
    return {**work._asdict(), "shared": set(work.shared)}


@_FEW
@given(_grouped(), _models())
def test_a_setting_is_made_once_where_an_order_allows_it(
    problem: Problem, model: WorkModel
) -> None:
    """Settings that need each other's pieces in no circle are made once each (graphlib)."""
    plan = plan_cuts(problem, solve(problem, _SHORT), model.limits)
    setting = {step.piece.name: (step.method, step.setting) for step in plan.steps}
    needs: dict[object, set[object]] = {}
    for step in plan.steps:
        for leaf in step.leaves:
            own, after = setting[step.piece.name], setting.get(leaf.name)
            if after not in (None, own):
                needs.setdefault(after, set()).add(own)
    try:
        TopologicalSorter(needs).prepare()
    except CycleError:
        return
    cards = [(card.method, card.setting) for card in plan.cards if card.method != "straightedge"]
    assert len(cards) == len(set(cards))


def _named(node: Node, numbers: dict[str, int]) -> Node:
    if isinstance(node, Leaf):
        return replace(node, part=str(numbers[node.part])) if node.use == "part" else node
    return replace(node, pieces=tuple(_named(piece, numbers) for piece in node.pieces))
