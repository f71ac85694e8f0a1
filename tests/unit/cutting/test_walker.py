"""The simulator rejects plans that cannot be carried out, or not safely."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.cutting_problems import IN, SMALL_SHOP, two_cases

from casewright.cutting import (
    Card,
    CutPlan,
    Limits,
    Problem,
    Rect,
    Slip,
    Step,
    Stop,
    Use,
    plan_cuts,
    solve,
    walk,
)

PROBLEM = two_cases()
PLAN = plan_cuts(PROBLEM, solve(PROBLEM, Stop(2_000)), SMALL_SHOP)


def _with(steps: tuple[Step, ...], plan: CutPlan = PLAN) -> CutPlan:
    return replace(plan, steps=steps)


def _changed(number: int, **changes: object) -> CutPlan:
    steps = [
        replace(step, **changes) if step.number == number else step  # type: ignore[arg-type]
        for step in PLAN.steps
    ]
    return _with(tuple(steps))


def _slips(plan: CutPlan, limits: Limits = SMALL_SHOP, problem: Problem = PROBLEM) -> set[Slip]:
    return {misstep.slip for misstep in walk(problem, plan, limits).missteps}


def test_a_good_plan_makes_every_part() -> None:
    """Nothing goes wrong, and the count is full."""
    walked = walk(PROBLEM, PLAN, SMALL_SHOP)
    assert walked.missteps == ()
    assert walked.made == {part.id: part.count for part in PROBLEM.parts}


def test_a_piece_cannot_be_cut_before_it_is_there() -> None:
    """Steps in reverse find nothing in hand."""
    assert Slip.NOT_IN_HAND in _slips(_with(PLAN.steps[::-1]))


def test_a_piece_cannot_be_cut_twice() -> None:
    """After the cut it is two other pieces."""
    assert Slip.NOT_IN_HAND in _slips(_with((*PLAN.steps, PLAN.steps[0])))


@pytest.mark.parametrize("setting", [-400, 10**6])
def test_the_blade_must_meet_the_piece(setting: int) -> None:
    """A setting beyond the piece cuts air."""
    assert Slip.NO_CUT in _slips(_changed(1, setting=setting))


def test_the_datum_must_suit_the_direction() -> None:
    """A rip is measured from the long edges."""
    first = PLAN.steps[0]
    wrong = "left" if first.direction == "rip" else "bottom"
    assert Slip.NO_CUT in _slips(_changed(1, datum=wrong))


def test_what_falls_is_worked_out_not_believed() -> None:
    """A setting that is off by one leaves other pieces than the step says."""
    assert Slip.WRONG_LEAVINGS in _slips(_changed(1, setting=PLAN.steps[0].setting + 1))


def test_a_wider_blade_is_noticed() -> None:
    """The same steps with another kerf leave other pieces."""
    assert Slip.WRONG_LEAVINGS in _slips(PLAN, problem=replace(PROBLEM, kerf=PROBLEM.kerf + 1))


def test_a_wrong_label_is_noticed() -> None:
    """A piece named as a part must have the part's size."""
    step = next(s for s in PLAN.steps if s.leaves[0].use == "part")
    size = step.leaves[0].rect.length
    other = next(part.id for part in PROBLEM.parts if size not in (part.length, part.width))
    leaves = (replace(step.leaves[0], part=other), *step.leaves[1:])
    assert Slip.WRONG_SIZE in _slips(_changed(step.number, leaves=leaves))


def test_more_sheets_than_there_are_cannot_be_taken() -> None:
    """The pile is counted."""
    item = replace(PROBLEM.stock[0], count=1)
    assert Slip.NO_STOCK in _slips(PLAN, problem=replace(PROBLEM, stock=(item,)))


def test_a_step_must_agree_with_its_card() -> None:
    """The saw is set by the card."""
    cards = (replace(PLAN.cards[0], setting=1), *PLAN.cards[1:])
    assert Slip.CARD in _slips(replace(PLAN, cards=cards))


@pytest.mark.parametrize("sheet", [-1, 1, 10**9])
def test_a_step_is_told_of_the_sheet_that_its_piece_is_cut_from(sheet: int) -> None:
    """On another card of the shop's it would be sought in vain."""
    assert _slips(_changed(1, sheet=sheet)) == {Slip.SHEET}


def test_the_shop_is_not_asked_for_more_than_it_can() -> None:
    """A plan for an unlimited shop breaks the limits of a small one."""
    easy = plan_cuts(PROBLEM, solve(PROBLEM, Stop(2_000)), None)
    assert _slips(easy, Limits()) == set()
    assert Slip.HEAVY in _slips(easy)
    assert Slip.REACH in _slips(easy, Limits(rip_capacity=5 * IN, crosscut_capacity=3 * IN))
    assert Slip.CONTACT in _slips(easy, Limits(shortest_on_fence=200 * IN))
    assert Slip.NARROW in _slips(easy, Limits(narrowest_rip=20 * IN))


def _one_rip(setting: int, use: Use) -> tuple[Problem, CutPlan]:
    """One rip through a sheet, with the piece at the fence put to some use."""
    plan = plan_cuts(PROBLEM, solve(PROBLEM, Stop(2_000)), None)
    step = next(s for s in plan.steps if s.method == "fence" and s.direction == "rip")
    whole = replace(plan.sheets[0].piece, rect=Rect(0, 0, 96 * IN, 48 * IN))
    width = 48 * IN - setting - PROBLEM.kerf
    near = replace(step.leaves[0], name="1.1", rect=Rect(0, 0, 96 * IN, setting), use=use)
    far = replace(near, name="1.2", rect=Rect(0, setting + PROBLEM.kerf, 96 * IN, width), use=None)
    step = replace(
        step, number=1, card=1, sheet=0, piece=whole, datum="bottom", setting=setting,
        leaves=(near, far),
    )  # fmt: skip
    sheets = (replace(plan.sheets[0], piece=whole),)
    return PROBLEM, CutPlan(sheets, (step,), (Card(1, "fence", setting, (1,)),))


@pytest.mark.parametrize(("use", "is_trapped"), [("waste", True), ("offcut", True), (None, False)])
def test_no_loose_offcut_lies_between_blade_and_fence(use: Use, is_trapped: bool) -> None:
    """It would be caught and thrown."""
    problem, plan = _one_rip(6 * IN, use)
    assert (Slip.TRAPPED in _slips(plan, Limits(), problem)) == is_trapped
