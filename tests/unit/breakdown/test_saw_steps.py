"""The order of work in lengths and parts, and plans that are refused."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import SLAB, case_spec, job, length, stock

from casewright.breakdown import (
    CAUTION_WORDS,
    METHOD_WORDS,
    PlanDefectError,
    StockPlan,
    break_down,
    saw_cards,
    saw_steps,
)
from casewright.breakdown.limits import shop_limits
from casewright.breakdown.units import common_unit
from casewright.cutting.engine import Stop
from casewright.cutting.methods import Limits
from casewright.cutting.settling import confirm
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.room.build import build
from casewright.room.model import Room
from casewright.shop import Tool, ToolKind, saw_kerf


def _room(**changes: Any) -> Room:
    facts = {
        f"stock.{key}.thickness": Fact(Origin("measured", "calliper"), built=item.thickness.value)
        for key, item in stock().items()
        if key != "band"
    }
    return build(job(case_spec(front=SLAB, **changes)), facts)


@pytest.fixture(scope="module")
def room() -> Room:
    """An upper with doors."""
    return _room()


@pytest.fixture(scope="module")
def plans(room: Room) -> tuple[StockPlan, ...]:
    """Its plans."""
    return break_down(room, stop=Stop(2000)).plans


def test_every_piece_comes_off_the_saw_once(plans: tuple[StockPlan, ...]) -> None:
    """Parts, spares and test pieces: each is given by exactly one cut."""
    for plan in plans:
        given = [g.piece.id for s in saw_steps(plan) for g in s.gives if g.piece is not None]
        assert sorted(given) == sorted(plan.pieces)


def test_what_a_cut_leaves_and_the_kerf_make_up_what_it_took(
    plans: tuple[StockPlan, ...], room: Room
) -> None:
    """Lengths at the saw close exactly; where one piece is left the blade took all the rest."""
    kerf = saw_kerf(room.spec.shop)
    for plan in plans:
        for step in saw_steps(plan):
            across = "width" if step.direction == "rip" else "length"
            left = [getattr(piece, across).value for piece in step.gives]
            taken = getattr(step.takes, across).value
            assert step.gives
            if len(left) == 2:
                assert sum(left) + kerf == taken
            else:
                assert Fraction(0) <= taken - left[0] <= kerf


def test_setting_is_the_size_of_the_piece_at_the_datum(plans: tuple[StockPlan, ...]) -> None:
    """The check dimension of the first piece is what the tape shows on it."""
    for plan in plans:
        for step in saw_steps(plan):
            across = "width" if step.direction == "rip" else "length"
            assert step.setting == getattr(step.gives[0], across)


def test_cards_hold_every_step_and_name_the_parts(plans: tuple[StockPlan, ...]) -> None:
    """Each setting is one card; the labels of its parts stand on it."""
    for plan in plans:
        cards = list(saw_cards(plan))
        assert sorted(s.number for card in cards for s in card.steps) == [
            step.number for step in saw_steps(plan)
        ]
        marks = {piece.mark for piece in plan.pieces.values() if piece.mark}
        assert {mark for card in cards for mark in card.marks} == marks


def test_the_first_cut_that_fixes_a_size_of_a_piece_names_it(
    plans: tuple[StockPlan, ...],
) -> None:
    """Followed from hand to hand: before that cut both sizes of the piece are still open."""
    told = 0
    for plan in plans:
        steps = list(saw_steps(plan))
        cut_at = {given.name: step for step in steps for given in step.gives}
        for last in steps:
            for given in (each for each in last.gives if each.piece is not None):
                chain, step = [(last, given)], last
                while step.takes.name in cut_at:
                    step, taken = cut_at[step.takes.name], step.takes
                    chain.append((step, taken))
                first = next(
                    step
                    for step, left in reversed(chain)
                    if (step.takes.width.value != left.width.value == given.width.value)
                    or (step.takes.length.value != left.length.value == given.length.value)
                )
                fixes = [step.number for step in steps if given.piece in step.fixes]
                assert fixes == ([] if first is last else [first.number])
                told += len(fixes)
    assert told


def test_methods_and_cautions_are_told_in_words(plans: tuple[StockPlan, ...]) -> None:
    """A whole sheet of 3/4 plywood is over what one person lifts here: it says so."""
    steps = [step for plan in plans if plan.stock == "ply18" for step in saw_steps(plan)]
    assert all(step.method in METHOD_WORDS for step in steps)
    assert steps[0].method == "straightedge"
    assert CAUTION_WORDS["heavy"] in steps[0].cautions


def test_limits_come_from_the_shop(room: Room) -> None:
    """25 kg of a stock of 20 kg/m2 are 1.25 m2; the straightedge and the sled reach so far."""
    unit = common_unit([length("1")], "in")
    limits = shop_limits(room, unit, Fraction(20, 1_000_000))
    assert limits.lift_area == int(Fraction(1_250_000) / unit.step**2)
    assert limits.straightedge == 98 * 64
    assert limits.rip_capacity is None
    assert limits.crosscut_capacity == 24 * 64
    assert limits.narrowest_rip == 2 * 64


def test_without_a_table_saw_nothing_goes_to_a_fence(room: Room) -> None:
    """Every cut is along the straightedge."""
    tools: dict[ToolKind, Tool] = {
        kind: tool for kind, tool in room.spec.shop.tools.items() if kind != "table saw"
    }
    shop = replace(room.spec.shop, tools=tools)
    bare = replace(room, spec=replace(room.spec, shop=shop))
    found = break_down(bare, stop=Stop(2000)).plans
    assert {step.method for plan in found for step in plan.order.steps} == {"straightedge"}


def test_a_doctored_plan_is_refused(plans: tuple[StockPlan, ...]) -> None:
    """A part moved by one step of the unit does not pass."""
    plan = plans[0]
    first, *rest = plan.solution.placements
    moved = replace(first, rect=first.rect._replace(x=first.rect.x + 1))
    wrong = replace(plan.solution, placements=(moved, *rest))
    with pytest.raises(PlanDefectError):
        confirm(plan.problem, wrong, plan.order, Limits())


def test_work_with_a_step_left_out_is_refused(plans: tuple[StockPlan, ...]) -> None:
    """The cuts are made in thought: what is not cut is missed."""
    plan = plans[0]
    short = replace(plan.order, steps=plan.order.steps[:-1])
    with pytest.raises(PlanDefectError):
        confirm(plan.problem, plan.solution, short, Limits())
