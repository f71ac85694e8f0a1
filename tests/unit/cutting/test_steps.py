"""The order of work: as a careful person would cut, with the safe method named."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.cutting_problems import IN, SHEET, SMALL_SHOP, inches, part, sheet_problem, two_cases

from casewright.cutting import (
    CutPlan,
    Limits,
    PartDemand,
    Problem,
    Step,
    Stop,
    Trim,
    board_problem,
    plan_cuts,
    solve,
    solve_boards,
    walk,
)
from casewright.cutting.methods import Sawing, choose_method
from casewright.cutting.problem import StockItem


def _plan(problem: Problem, limits: Limits | None = SMALL_SHOP) -> CutPlan:
    return plan_cuts(problem, solve(problem, Stop(20_000)), limits)


def _strips(
    count: int, *, limits: Limits | None = SMALL_SHOP, trim: Trim | None = None
) -> CutPlan:
    sheet = replace(SHEET, trim=trim or Trim())
    strip = PartDemand("strip", sheet.usable_length, inches("11 5/8"), count)
    return _plan(sheet_problem(strip, sheet=sheet), limits)


def test_a_heavy_sheet_is_parted_near_the_middle_first() -> None:
    """On foam with the straightedge, measured from a factory edge; then halves go to the fence."""
    plan = _strips(4)
    first = plan.steps[0]
    assert (first.method, first.cautions) == ("straightedge", ("heavy",))
    assert (first.datum, first.is_factory) == ("bottom", True)
    assert first.setting == 2 * inches("11 5/8") + inches("1/8")
    assert {step.method for step in plan.steps[1:]} == {"fence"}
    assert {step.setting for step in plan.steps[1:]} == {inches("11 5/8")}


def test_without_limits_everything_goes_to_the_fence() -> None:
    """One setting, one card, three cuts and the one that frees the leftover."""
    plan = _strips(4, limits=None)
    assert [(card.method, card.setting) for card in plan.cards] == [("fence", inches("11 5/8"))]
    assert plan.cards[0].steps == (1, 2, 3, 4)


def test_settings_descend_across_all_sheets_each_set_once() -> None:
    """Widest rips first, longest crosscuts first, like settings of all sheets in one run."""
    parts = part("side", "31", "23 1/4", 9), part("shelf", "23", "11 1/2", 12)
    plan = _plan(sheet_problem(*parts, part("nailer", "30", "4", 6), stages=2), Limits())
    for method in ("fence", "sled"):
        settings = [card.setting for card in plan.cards if card.method == method]
        assert settings == sorted(set(settings), reverse=True)
    assert len({step.sheet for step in plan.steps}) > 1


def test_every_piece_is_there_before_it_is_cut() -> None:
    """A step takes a sheet, or what an earlier step left."""
    plan = _plan(two_cases())
    in_hand = {sheet.piece.name for sheet in plan.sheets}
    for step in plan.steps:
        assert step.piece.name in in_hand
        in_hand.remove(step.piece.name)
        in_hand |= {leaf.name for leaf in step.leaves}


def test_numbers_cards_and_sheets_agree() -> None:
    """Steps are numbered as they come; each stands on one card and on its sheet's page."""
    plan = _plan(two_cases())
    assert [step.number for step in plan.steps] == list(range(1, len(plan.steps) + 1))
    assert [n for card in plan.cards for n in card.steps] == [s.number for s in plan.steps]
    for card in plan.cards:
        own = [plan.steps[number - 1] for number in card.steps]
        assert {(step.method, step.setting) for step in own} == {(card.method, card.setting)}
    pages = [step for sheet in range(len(plan.sheets)) for step in plan.on_sheet(sheet)]
    assert sorted(pages, key=lambda step: step.number) == list(plan.steps)


def test_every_part_is_labelled_once_at_the_cut_that_frees_it() -> None:
    """Piece names are unique; the label is the part and its copy."""
    problem = two_cases()
    plan = _plan(problem)
    freed = [leaf for step in plan.steps for leaf in step.leaves if leaf.use == "part"]
    assert len({leaf.name for leaf in freed}) == len(freed)
    assert len({(leaf.part, leaf.copy) for leaf in freed}) == sum(p.count for p in problem.parts)


def test_a_rough_edge_comes_off_last_from_the_sawn_edge() -> None:
    """The band at the trim is ripped oversize, turned round, and cut to the common setting."""
    plan = _strips(2, limits=None, trim=Trim(4, 4, 4, 4))
    rips = [step for step in plan.steps if step.direction == "rip"]
    trimmed = [step for step in rips if step.datum == "top"]
    assert trimmed
    assert all(step.setting == inches("11 5/8") for step in trimmed)
    assert all(not step.is_factory for step in trimmed)


def test_the_piece_at_the_datum_measures_the_setting() -> None:
    """The first-piece check is the size of what lies between datum and blade."""
    for step in _plan(two_cases()).steps:
        rect = step.leaves[0].rect
        assert step.setting == (rect.width if step.direction == "rip" else rect.length)


def test_boards_are_cut_at_the_stop_from_long_to_short() -> None:
    """All boards at one stop before the next."""
    stock = [StockItem("1x4", 96 * IN, inches("3 1/2"))]
    parts = [PartDemand("rail", 30 * IN, inches("3 1/2"), 4),
             PartDemand("short rail", 20 * IN, inches("3 1/2"), 3)]  # fmt: skip
    problem = board_problem("1/32 in", 4, stock, parts)
    plan = plan_cuts(problem, solve_boards(problem), Limits())
    assert [(card.method, card.setting) for card in plan.cards] == [
        ("sled", 30 * IN),
        ("sled", 20 * IN),
    ]


CUTS = [
    # setting, along, across; method; cautions
    ("rip", "12", "96", "24", "fence", ()),
    ("rip", "30", "96", "48", "straightedge", {"heavy"}),
    ("rip", "25", "40", "40", "straightedge", {"beyond fence", "too wide for sled"}),
    ("rip", "1 1/2", "40", "20", "carrier", {"narrow rip"}),
    ("rip", "20", "12", "30", "sled", {"wide against fence"}),
    ("rip", "6", "8", "20", "sled", {"short along fence"}),
    ("crosscut", "30", "12", "60", "sled", ()),
    ("crosscut", "20", "30", "60", "fence", {"too wide for sled"}),
    ("crosscut", "30", "12", "80", "straightedge", {"long crosscut", "wide against fence"}),
    ("crosscut", "1", "12", "60", "sled", {"short piece"}),
    ("rip", "12", "120", "48", "straightedge", {"heavy", "beyond straightedge"}),
]  # fmt: skip


@pytest.mark.parametrize(("direction", "setting", "along", "across", "method", "cautions"), CUTS)
def test_the_safe_method_is_named_with_what_stood_against_the_others(
    direction: str, setting: str, along: str, across: str, method: str, cautions: set[str]
) -> None:
    """No narrow rip by hand, nothing wider than long at the fence, nothing that hangs off."""
    cut = Sawing(direction, inches(setting), inches(along), inches(across))  # type: ignore[arg-type]
    found, told = choose_method(cut, SMALL_SHOP)
    assert found == method
    assert set(cautions) <= set(told)
    assert bool(told) == bool(cautions)


def test_a_narrow_strip_gets_a_carrier_in_the_plan() -> None:
    """Rips of 1 1/2 in are flagged at the very step."""
    plan = _plan(sheet_problem(part("scribe", "30", "1 1/2", 6)))
    narrow = [step for step in plan.steps if "narrow rip" in step.cautions]
    assert narrow
    assert {step.method for step in narrow} == {"carrier"}
    assert all(isinstance(step, Step) for step in narrow)


def test_an_order_made_without_looking_ahead_can_be_cut(monkeypatch: pytest.MonkeyPatch) -> None:
    """As for thousands of parts of different sizes, of which a look ahead would take minutes."""
    monkeypatch.setattr("casewright.cutting.cut_order._AT_ONCE", 0)
    sizes = [(str(20 + n % 7), str(5 + n % 5)) for n in range(30)]
    problem = sheet_problem(*(part(f"p{n}", *size) for n, size in enumerate(sizes)))
    plan = _plan(problem)
    walked = walk(problem, plan, SMALL_SHOP)
    assert not walked.missteps
    assert sum(walked.made.values()) == len(sizes)
