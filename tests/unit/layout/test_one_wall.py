"""One wall filled: against brute force over all widths, and by hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given as examples
from hypothesis import settings
from tests.unit.layout.walls import FILLER, USUAL, case, inches, tasks

from casewright.layout.conflicts import conflicts, relieved
from casewright.layout.one_wall import lay_out
from casewright.layout.tasks import Preferences, RunPlace, WallTask
from casewright.layout.wall_layout import WallLayout

_Answer = tuple[int, tuple[int, ...], int]


def _all(task: WallTask) -> Iterator[_Answer]:
    """Every way to fill the wall: left filler, widths, right filler."""
    needs = task.places[0].needs[0], task.places[-1].needs[1]
    ends = [
        range(max(each.low, need), each.high + 1) if each else range(1)
        for each, need in zip((task.left, task.right), needs, strict=True)
    ]
    for left in ends[0]:
        for widths in product(*(range(p.low, p.high + 1) for p in task.places)):
            right = task.length - left - sum(widths)
            starts = [left + sum(widths[:n]) for n in range(len(widths))]
            held = all(
                place.start is None or place.start == start
                for place, start in zip(task.places, starts, strict=True)
            )
            if right in ends[1] and held:
                yield left, widths, right


def _cost(task: WallTask, answer: _Answer) -> int:
    """What an answer costs, reckoned from the meaning of the preferences."""
    left, widths, right = answer
    likes, cost, x = task.preferences, 0, left
    for place, width in zip(task.places, widths, strict=True):
        if place.centre is not None:
            cost += likes.off_centre * abs(2 * x + width - place.centre)
        x += width
    built = [(p, w) for p, w in zip(task.places, widths, strict=True) if not p.opening]
    cost += likes.width * len({width for _, width in built})
    for place, width in built:
        if place.wished is not None:
            cost += likes.wish * abs(width - place.wished)
        cost += likes.orphan * (width < likes.narrow)
    for n in range(len(widths) // 2):
        if not task.places[n].opening and not task.places[-1 - n].opening:
            cost += likes.mirror * abs(widths[n] - widths[-1 - n])
    for filler, width in ((task.left, left), (task.right, right)):
        if filler and filler.wished is not None:
            cost += likes.filler_wish * abs(width - filler.wished)
    if task.left and task.right:
        cost += likes.fillers * abs(left - right)
    cost += likes.proportion * _off(task, widths)
    compared = {key for a, b, _, _ in task.proportions for key in (a, b)}
    loose = [
        width
        for p, width in built
        if p.low < p.high and p.wished is None and p.key not in compared
    ]
    cost += likes.spread * (max(loose) - min(loose)) if loose else 0
    return cost + likes.seam * _stray(task, answer) + likes.clash * _met(task, answer)


def _off(task: WallTask, widths: tuple[int, ...]) -> int:
    """By how much cases are off the proportion that is wished for."""
    wide = {place.key: width for place, width in zip(task.places, widths, strict=True)}
    return sum(abs(wide[a] * of_b - wide[b] * of_a) for a, b, of_a, of_b in task.proportions)


def _met(task: WallTask, answer: _Answer) -> int:
    """Sides of cases that stand before what is to be kept clear."""
    at, found = answer[0], 0
    for place, width in zip(task.places, answer[1], strict=True):
        sides = {at, at + width} if not place.opening else set[int]()
        at += width
        found += sum(t.low < x < t.high for t in task.clear for x in sides)
    # A seam between two cases is one place, however many sides meet there.
    inner = [answer[0] + sum(answer[1][:n]) for n in range(1, len(answer[1]))]
    for n, x in enumerate(inner, start=1):
        if not task.places[n - 1].opening and not task.places[n].opening:
            found -= sum(t.low < x < t.high for t in task.clear)
    return found


def _stray(task: WallTask, answer: _Answer) -> int:
    """Seams between two cases that are on none of those they are to be on."""
    left, widths, _ = answer
    found = 0
    for n in range(1, len(widths)):
        free = task.places[n - 1].opening or task.places[n].opening
        found += bool(task.seams) and left + sum(widths[:n]) not in task.seams and not free
    return found


def _answer(found: WallLayout) -> _Answer:
    return found.left, found.widths, found.right


@settings(max_examples=120, deadline=None)
@examples(tasks())
def test_no_answer_is_better_and_what_fits_is_found(task: WallTask) -> None:
    """Brute force over every width and filler of walls up to some 40 steps."""
    every = list(_all(task))
    found = lay_out(task)
    if not every:
        assert found is None
        assert conflicts(task)
        return
    assert not conflicts(task)
    assert found is not None
    assert _answer(found) in every
    best = min(_cost(task, each) for each in every)
    assert _cost(task, _answer(found)) == found.cost == best
    assert found.is_proved


@settings(max_examples=80, deadline=None)
@examples(tasks())
def test_every_relief_makes_room_and_a_step_less_does_not(task: WallTask) -> None:
    """Of a single conflict; each relief changes one fact alone."""
    found = conflicts(task)
    if len(found) != 1:
        return
    for relief in found[0].reliefs:
        assert not conflicts(relieved(task, found[0], relief))
        less = replace(relief, steps=relief.steps - (1 if relief.steps > 0 else -1))
        if less.steps and relief.of not in ("another", "without"):
            assert conflicts(relieved(task, found[0], less))


def test_three_equal_uppers_between_two_walls() -> None:
    """102 1/4: three cases of 33 and two fillers of 1 5/8, or another equal share (by hand)."""
    task = WallTask(inches("102 1/4"), tuple(case(key) for key in "abc"), FILLER, FILLER, USUAL)
    found = lay_out(task)
    assert found is not None
    assert len(set(found.widths)) == 1
    assert found.left == found.right
    assert sum(found.widths) + found.left + found.right == task.length


def test_what_cannot_be_equal_differs_by_as_little_as_can_be() -> None:
    """2402 mm open at both ends: 801, 800 and 801, as a woodworker would divide it."""
    free = (RunPlace(key, 300, 900) for key in "abc")
    found = lay_out(WallTask(2402, tuple(free), None, None, Preferences.usual(25)))
    assert found is not None
    assert found.widths == (801, 800, 801)


def test_a_sink_stands_on_the_middle_of_its_window() -> None:
    """A sink of 36 on 50 1/4 of a wall of 100 1/2: equal flanks, equal fillers."""
    sink = RunPlace("sink", inches("36"), inches("36"), centre=2 * inches("50 1/4"))
    task = WallTask(inches("100 1/2"), (case("a"), sink, case("b")), FILLER, FILLER, USUAL)
    found = lay_out(task)
    assert found is not None
    assert found.off_centre(1) == 0
    assert found.widths[0] == found.widths[2]


def test_a_dishwasher_an_eighth_too_wide_for_what_is_left() -> None:
    """24 in opening, 23 7/8 left: 1/8 short, and the smallest relief is that eighth."""
    dishwasher = RunPlace("dishwasher", inches("24"), inches("24"), opening=True)
    sink = RunPlace("sink", inches("36"), inches("36"))
    task = WallTask(inches("59 7/8"), (sink, dishwasher), None, None, USUAL)
    assert lay_out(task) is None
    [found] = conflicts(task)
    assert found.short == inches("0 1/8")
    assert found.places == ("sink", "dishwasher")
    assert {relief.steps for relief in found.reliefs} == {inches("0 1/8")}


def test_wall_cases_leave_a_window_free() -> None:
    """A window from 30 to 70 may not move: cases fill the wall up to it and from it (by hand)."""
    window = RunPlace("window", inches("40"), inches("40"), start=inches("30"), opening=True)
    task = WallTask(inches("100"), (case("a"), window, case("b")), FILLER, FILLER, USUAL)
    found = lay_out(task)
    assert found is not None
    assert found.starts[1] == inches("30")
    assert found.widths[0] == found.widths[2] == inches("30") - found.left
    assert found.left == found.right


@pytest.mark.parametrize("count", [1, 6, 12])
def test_a_long_run_is_proved_best(count: int) -> None:
    """Equal cases as far as the grid lets them be; the bound meets the cost."""
    places = tuple(case(f"c{n}", "12", "36") for n in range(count))
    found = lay_out(WallTask(inches("25") * count + 3, places, FILLER, FILLER, USUAL))
    assert found is not None
    assert found.is_proved
    assert len(set(found.widths)) <= 2


def test_six_widths_where_six_are_asked_for() -> None:
    """Bands that no two cases share: each gets a width of its own."""
    places = tuple(RunPlace(f"c{n}", 10 * n, 10 * n + 4) for n in range(2, 8))
    found = lay_out(WallTask(sum(p.low for p in places) + 9, places, None, None, USUAL))
    assert found is not None
    assert len(set(found.widths)) == 6
    assert sum(found.widths) == found.task.length


def test_two_pinned_seams_too_near_are_told_with_what_would_do() -> None:
    """A sink of 36 pinned at 50, what is right of it at 85 7/8: an eighth short (by hand)."""
    sink = RunPlace("sink", inches("36"), inches("36"), start=inches("50"))
    washer = RunPlace("washer", inches("24"), inches("24"), start=inches("85 7/8"), opening=True)
    places = (case("a"), case("c"), sink, washer, case("b"))
    task = WallTask(inches("140"), places, FILLER, FILLER, USUAL)
    [found] = conflicts(task)
    assert (found.after, found.before, found.short) == ("sink", "washer", 2)
    moved = {(each.key, each.steps) for each in found.reliefs if each.of == "seam"}
    assert moved == {("sink", -2), ("washer", 2)}
    for relief in found.reliefs:
        assert not conflicts(relieved(task, found, relief))


def test_a_seam_that_its_neighbours_leave_no_room_for_is_not_moved() -> None:
    """What stands left of the sink cannot be narrower: only the other pin may move."""
    hard = RunPlace("a", inches("48"), inches("48"))
    sink = RunPlace("sink", inches("36"), inches("36"), start=inches("48"))
    last = RunPlace("b", inches("9"), inches("36"), start=inches("83"))
    [found] = conflicts(WallTask(inches("110"), (hard, sink, last), None, None, USUAL))
    assert [each.key for each in found.reliefs if each.of == "seam"] == ["b"]


def test_a_pin_too_near_is_moved_and_no_case_is_made_narrower_than_cases_are() -> None:
    """9 and a filler of 3/4 before a pin at 3: 6 3/4 short; past it 110 of 117 can be filled."""
    pinned = RunPlace("b", inches("9"), inches("36"), start=inches("3"))
    places = (case("a"), pinned, case("c"), case("d"))
    task = WallTask(
        inches("120"), places, FILLER, FILLER, USUAL, another=(inches("9"), inches("36"))
    )
    left, _right = conflicts(task)
    assert (left.short, left.before) == (inches("6 3/4"), "b")
    assert {(each.of, each.key, each.steps) for each in left.reliefs if each.of != "wall"} == {
        ("seam", "b", left.short)
    }
