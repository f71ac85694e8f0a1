"""What a plan asks of the person at the saw, against counts made by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.cutting_problems import IN, SHEET, SMALL_SHOP, inches, part, sheet_problem

from casewright.cutting import (
    Load,
    Problem,
    Rates,
    Stop,
    Trim,
    Work,
    WorkModel,
    break_even,
    ease,
    plan_cuts,
    solve,
    verify,
    weigh,
    work_of,
)

_MODEL = WorkModel(SMALL_SHOP, load=Load(full=18 * (12 * IN) ** 2, half=9 * (12 * IN) ** 2))


def _work(problem: Problem, model: WorkModel = _MODEL) -> Work:
    solution = solve(problem, Stop(20_000))
    return work_of(problem, solution, plan_cuts(problem, solution, model.limits), model)


def test_four_strips_of_a_sheet_by_hand() -> None:
    """Parted in the middle on the floor, then each half ripped twice at one setting of the fence.

    A full sheet is 32 square feet, half of it 16, a strip of a half with what is left 8: one heavy
    lift, two half heavy ones. Minutes of each thing: common practice, the defaults of `Rates`.
    """
    work = _work(sheet_problem(part("strip", "96", "11 5/8", 4)))
    assert (work.full_lifts, work.half_lifts) == (1, 2)
    assert (work.fences, work.stops, work.guides) == (1, 0, 1)
    assert work.least_settings == 2
    assert (work.cuts, work.parts, work.turns) == (4, 4, 0)
    minutes = 4 + 2 * 2 + 1.5 + 2.5 + 4 * 0.3 + 4 * 0.4
    assert work.total == minutes * 100


def test_every_rate_counts_for_what_it_names() -> None:
    """A minute more for one thing is a minute more for each of them."""
    problem = sheet_problem(part("strip", "40", "11 5/8", 6))
    before = _work(problem)
    counts = {
        "full_lift": before.full_lifts, "half_lift": before.half_lifts, "fence": before.fences,
        "stop": before.stops, "guide": before.guides, "cut": before.cuts, "label": before.parts,
        "turn": before.turns,
    }  # fmt: skip
    for name, count in counts.items():
        rates = replace(Rates(), **{name: getattr(Rates(), name) + 100})
        assert _work(problem, replace(_MODEL, rates=rates)).total == before.total + 100 * count


@pytest.mark.parametrize(
    ("trim", "lost"),
    [
        (Trim(), 0),
        (Trim(left=4, bottom=4), 0),  # parts begin at the other edges
        (Trim(left=4, right=4), 1),
        (Trim(4, 4, 4, 4), 2),
    ],
)
def test_a_datum_that_is_trimmed_off_is_counted(trim: Trim, lost: int) -> None:
    """One for each direction of each sheet; it costs no time at the saw."""
    sheet = replace(SHEET, trim=trim)
    work = _work(sheet_problem(part("strip", "40", "11 5/8", 6), sheet=sheet))
    assert work.lost_datums == lost
    assert work.price == lost * Rates().lost_datum
    assert work.time + work.price == work.total


def test_an_offcut_is_worth_its_share_of_the_sheet() -> None:
    """A sheet of 70 at 35 an hour is 120 minutes; half of it kept at 40 of a hundred is 24."""
    sheet = replace(SHEET, price=70)
    problem = sheet_problem(part("half", "48", "47"), sheet=sheet)
    model = replace(_MODEL, rates=replace(Rates(), hour=35))
    solution = solve(problem, Stop(1_000))
    work = work_of(problem, solution, plan_cuts(problem, solution), model)
    kept = (96 * IN - inches("48 1/8")) / (96 * IN)
    assert work.offcuts == pytest.approx(120 * 100 * 0.4 * kept, abs=1)


def test_five_sheets_against_six() -> None:
    """By hand: 5 p + 172.06 = 6 p + 92.64 at p = 79.42; at 70 the six sheets cost less."""
    price = break_even(17206, 9264, 1) / 100
    assert price == Fraction(7942, 100)
    assert 5 * 70 + Fraction("172.06") > 6 * 70 + Fraction("92.64")


def test_a_trade_needs_more_sheets() -> None:
    """Plans from equally many sheets have no price at which they change places."""
    with pytest.raises(ValueError, match="more sheets"):
        break_even(10, 5, 0)


def _sets() -> Problem:
    """Three sets of sides that belong together, and shelves between them."""
    sizes = (("34 1/2", "23 1/4"), ("36", "11 7/8"), ("29", "16 1/2"))
    parts = [replace(part(f"s{i}", *size, 6), group=f"g{i}") for i, size in enumerate(sizes)]
    shelves = [part(f"f{i}", f"{28 - i}", "11", 3, rotate=i == 2) for i in range(4)]
    return sheet_problem(*parts, *shelves)


def test_easing_saves_work_from_no_more_sheets() -> None:
    """The same parts, the same number of sheets, less to do; and again the same plan."""
    problem = _sets()
    solution = solve(problem, Stop(20_000))
    eased = ease(problem, solution, _MODEL, Stop(20_000))
    plans = [plan_cuts(problem, one, SMALL_SHOP) for one in (solution, eased)]
    before, after = (
        work_of(problem, one, plan, _MODEL)
        for one, plan in zip((solution, eased), plans, strict=True)
    )
    assert verify(problem, eased) == ()
    assert eased.cost == solution.cost
    assert after.total < before.total
    assert ease(problem, solution, _MODEL, Stop(20_000)) == eased


def test_one_more_sheet_is_told_only_when_it_saves_work() -> None:
    """The easier plan takes one sheet more, and the price in minutes is the work it saves."""
    problem = _sets()
    solution = ease(problem, solve(problem, Stop(20_000)), _MODEL, Stop(10_000))
    trade = weigh(problem, solution, _MODEL, Stop(20_000))
    assert trade.fewest.solution.cost == solution.cost
    if trade.easiest is None:
        assert trade.minutes == 0
    else:
        assert trade.easiest.solution.cost == solution.cost + 1
        saved = trade.fewest.work.total - trade.easiest.work.total
        assert trade.minutes == Fraction(saved, 100) > 0


def test_the_start_keeps_to_the_work_that_is_allowed() -> None:
    """With fewer places than parts there is nothing to be gained, and nothing is looked at."""
    parts = (part(f"p{n}", f"{9 + n % 37}", f"{6 + n % 11}") for n in range(1_100))
    problem = sheet_problem(*parts)
    solution = solve(problem, Stop(0))
    assert ease(problem, solution, _MODEL, Stop(1_000)) is solution
    assert weigh(problem, solution, _MODEL, Stop(1_000)).easiest is None
