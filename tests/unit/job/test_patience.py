"""How long a search goes on, by a clock of our own."""

from __future__ import annotations

import sys
from dataclasses import dataclass, field
from types import FrameType

import pytest
from tests.cut_files import part, problem

from casewright.cutting import Status, WorkModel, read_problem, solve
from casewright.job import bare_cutting
from casewright.job.bare_cutting import cut
from casewright.job.cut_file import CutTask
from casewright.job.patience import Ending, Patience


@dataclass
class Clock:
    """Goes on by a step each time it is read [s]."""

    step: float
    now: float = field(default=0.0)

    def __call__(self) -> float:
        """The time."""
        self.now += self.step
        return self.now


def _task(*parts: tuple[int, int]) -> CutTask:
    rows = [part(f"p{n}", *sides, rotate=n % 2 == 0) for n, sides in enumerate(parts)]
    return CutTask(read_problem(problem(*rows)), WorkModel())


# Found by trial to stay one sheet above its bound for long.
_HARD = _task(*((200 + 397 * n % 1799, 80 + 211 * n % 619) for n in range(60)))
_EASY = _task((600, 300), (500, 400))


def test_without_a_time_the_clock_does_not_matter() -> None:
    """The same plan by a slow clock and by a fast one: the same on every machine."""
    plans = [
        cut(_HARD, Patience(2_000, clock=Clock(step)), lambda _: None) for step in (1e-6, 1e6)
    ]
    assert plans[0].solution == plans[1].solution
    assert [plan.ending for plan in plans] == [Ending.CONTENT, Ending.CONTENT]


def test_when_the_time_is_over_there_is_a_plan() -> None:
    """Even if it was over before anything was tried."""
    found = cut(_HARD, Patience(seconds=1e-9, clock=Clock(1.0)), lambda _: None)
    assert found.ending is Ending.TIME
    assert len(found.solution.placements) == 60


def test_more_time_is_used_in_longer_searches(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each search may try more than the one before; the best plan of all is kept."""
    tried: list[int] = []

    def watched(problem, stop, watch):  # type: ignore[no-untyped-def]
        tried.append(stop.nodes)
        return solve(problem, stop, watch=watch)

    monkeypatch.setattr(bare_cutting, "solve", watched)
    found = cut(_HARD, Patience(seconds=60, clock=Clock(0.02)), lambda _: None)
    assert len(tried) > 1
    assert tried == sorted(tried)
    assert found.ending is Ending.TIME
    once = solve(_HARD.problem)
    assert found.solution.cost <= once.cost + 1


def test_a_proved_plan_does_not_use_up_the_time() -> None:
    """Nothing better can be found: it ends long before its hour."""
    clock = Clock(1e-4)
    found = cut(_EASY, Patience(seconds=3600, clock=clock), lambda _: None)
    assert found.ending is Ending.CONTENT
    assert found.solution.status is Status.PROVED
    assert clock.now < 3600 / 2


def test_a_problem_of_many_parts_keeps_to_its_time() -> None:
    """Finishing needs time too: by a clock that counts calls, little goes on after the end."""
    many = _task(*((200 + 397 * n % 1799, 80 + 211 * n % 619) for n in range(400)))
    calls = 0

    def count(frame: FrameType, event: str, _: object) -> None:
        nonlocal calls
        calls += event == "call"

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        found = cut(many, Patience(seconds=1.0, clock=lambda: calls / 1_000_000), lambda _: None)
    finally:
        sys.setprofile(before)
    assert len(found.solution.placements) == 400
    assert calls < 1.1 * 1_000_000


def test_who_asks_gets_the_first_plan() -> None:
    """It is whole, and says that someone asked."""
    found = cut(_HARD, Patience(10**9, asked=lambda: True), lambda _: None)
    assert found.ending is Ending.ASKED
    assert len(found.solution.placements) == 60
