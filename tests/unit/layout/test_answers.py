"""Answers that differ in kind, the best first."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from hypothesis import given as examples
from hypothesis import settings
from tests.unit.layout.walls import FILLER, USUAL, case, inches, said, tasks

from casewright.dims import format_length
from casewright.layout.answers import answers, kind_of
from casewright.layout.one_wall import lay_out
from casewright.layout.tasks import RunPlace, WallTask
from casewright.sources import INCH


def _text(steps: int, _: str) -> str:
    return format_length(Fraction(steps, 16) * INCH, "in", precision=16)


def _kitchen() -> WallTask:
    """A sink to stand on a window a little off the middle, a dishwasher beside it, three cases."""
    sink = RunPlace("sink", inches("36"), inches("36"), centre=2 * inches("70"))
    dishwasher = RunPlace("dishwasher", inches("24"), inches("24"), opening=True)
    places = (case("a"), case("b"), sink, dishwasher, case("c"))
    return WallTask(inches("140 1/4"), places, FILLER, FILLER, USUAL)


def test_the_first_is_the_best_and_no_two_are_alike() -> None:
    """At most five, each fills the wall to the step, each says what it trades."""
    found = answers(_kitchen(), _text)
    assert 2 <= len(found) <= 5
    best = lay_out(_kitchen())
    assert best is not None
    assert found[0].layout.cost == best.cost
    assert len({answer.kind for answer in found}) == len(found)
    for answer in found:
        layout = answer.layout
        assert layout.left + sum(layout.widths) + layout.right == inches("140 1/4")
        assert answer.trade
    assert all(a.layout.cost <= b.layout.cost for a, b in pairwise(found))


def test_the_trade_is_told_in_words() -> None:
    """Whether the sink is on its window, what is built, where the fillers go."""
    trades = [" ".join(answer.trade) for answer in answers(_kitchen(), _text)]
    assert any("sink on its centre" in trade for trade in trades)
    assert all("fillers" in trade for trade in trades)
    assert len(set(trades)) == len(trades)


@settings(max_examples=25, deadline=None)
@examples(tasks())
def test_every_answer_is_of_its_kind_and_costs_no_less_than_the_best(task: WallTask) -> None:
    """Whatever the wall."""
    found, best = answers(task, said), lay_out(task)
    assert bool(found) == (best is not None)
    for answer in found:
        assert kind_of(task, answer.layout) == answer.kind
        assert best is not None
        assert answer.layout.cost >= best.cost
