"""Sheets into parts: fewest sheets first, then least work at the saw."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.cutting.cards import effort
from casewright.cutting.frame import Frame
from casewright.cutting.outcome import lower_bound, solution_of, sort_out
from casewright.cutting.problem import Problem
from casewright.cutting.search import Found, Search
from casewright.cutting.solution import Bound, SheetTree, Solution

__all__ = ["Stop", "solve"]

_WIDEST = 1024
_SHUFFLED_FROM = 4
_EASY = 2
_EFFORTS = (0, 2)


@dataclass(frozen=True, slots=True)
class Stop:
    """When to be content: after so many places have been tried. A first plan is always made."""

    nodes: int = 200_000

    def reached(self, nodes: int) -> bool:
        """Whether that many are enough."""
        return nodes >= self.nodes


@dataclass(frozen=True, slots=True)
class _Plan:
    placed: int
    price: int
    effort: int
    trees: tuple[SheetTree, ...]

    @property
    def rank(self) -> tuple[int, int, int, int]:
        return -self.placed, self.price, len(self.trees), self.effort


def solve(problem: Problem, stop: Stop | None = None, seed: int = 0) -> Solution:
    """Cut the parts from the sheets.

    As many parts as the stock allows; then the cheapest sheets (the fewest, when all cost the
    same); then the fewest settings and cuts. Guillotine cuts in at most three stages and a trim.

    Parameters
    ----------
    problem
        What to cut from what.
    stop
        When to be content; counted work, never the clock.
    seed
        Breaks ties in the later tries.

    Returns
    -------
    The plan. The same problem, stop and seed give the same plan.
    """
    stop = stop or Stop()
    sound, unplaced = sort_out(problem)
    if not sound.parts:
        return solution_of(problem, (), unplaced, Bound(0))
    bound = lower_bound(sound)
    best: _Plan | None = None
    for frame, found in _tries(sound, stop, seed, bound):
        plan = _plan(frame, found)
        if best is None or plan.rank < best.rank:
            best = plan
    return solution_of(problem, best.trees if best else (), unplaced, bound)


def _tries(problem: Problem, stop: Stop, seed: int, bound: Bound) -> Iterator[tuple[Frame, Found]]:
    """Plans from searches of growing width.

    While the bound is not reached, each looks for a cheaper plan than the best so far; the narrow
    ones, and all after that, also for one with less effort at the same price.
    """
    rng = random.Random(seed)  # noqa: S311 - for ties, not for secrets
    searches: list[tuple[Frame, Search]] = []

    def is_over() -> bool:
        return stop.reached(sum(search.nodes for _, search in searches))

    searches += [(frame, Search(frame.task(), is_over)) for frame in _frames(problem)]
    least: int | None = None
    is_first = True
    for width, weight, (frame, search) in _passes(searches):
        is_proved = least == bound.value
        is_idle = is_proved if weight == 0 else not is_proved and width > _EASY
        if not is_first and (is_over() or is_idle):
            continue
        limit = least - 1 if least is not None and weight == 0 else least
        ties = rng if width >= _SHUFFLED_FROM else None
        found = search.run(width, weight, limit=limit, rng=ties, finish=is_first)
        if found is not None:
            least = found.price if found.complete else least
            is_first = False
            yield frame, found


def _passes(
    searches: Sequence[tuple[Frame, Search]],
) -> Iterator[tuple[int, int, tuple[Frame, Search]]]:
    """Widths of the beam and weights of effort, each for the searches worth it.

    Plans without panels are plans with one panel, so they are looked for only for their ease.
    """
    width = 1
    while width <= _WIDEST:
        for weight in _EFFORTS:
            for frame, search in searches:
                if weight or frame.panels or frame.problem.stages == 2:
                    yield width, weight, (frame, search)
        width *= 2


def _frames(problem: Problem) -> tuple[Frame, ...]:
    two = (Frame(problem, "crosscut", panels=False), Frame(problem, "rip", panels=False))
    if problem.stages == 2:
        return two
    return Frame(problem, "crosscut", panels=True), Frame(problem, "rip", panels=True), *two


def _plan(frame: Frame, found: Found) -> _Plan:
    trees = frame.trees(found.laid)
    placed = sum(part.du * part.dv for part in found.laid)
    return _Plan(placed, found.price, effort(trees), trees)
