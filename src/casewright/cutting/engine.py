"""Sheets into parts: fewest sheets first, then least work at the saw."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

from casewright.cutting.cards import effort
from casewright.cutting.frame import trees_of
from casewright.cutting.nest_tree import nested_trees
from casewright.cutting.outcome import solution_of, sort_out
from casewright.cutting.plain import Plain, is_plain, plain_ways
from casewright.cutting.problem import Problem
from casewright.cutting.solution import Bound, Reason, SheetTree, Solution, Status
from casewright.cutting.stop import Stop
from casewright.cutting.tries import Made, Tries

__all__ = ["Progress", "Stop", "solve"]

_USUAL = 3
"""Stages in which sheets are cut unless more are allowed."""


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a search is.

    Parameters
    ----------
    solution
        The best plan so far, with the bound so far.
    nodes
        Places tried.
    """

    solution: Solution
    nodes: int

    @property
    def cost(self) -> int:
        """What the best plan costs, in the measure of the bound."""
        return self.solution.cost

    @property
    def bound(self) -> Bound:
        """What no plan can beat."""
        return self.solution.bound


@dataclass(frozen=True, slots=True)
class _Plan:
    placed: int
    price: int
    effort: int
    trees: tuple[SheetTree, ...]

    @property
    def rank(self) -> tuple[int, int, int, int]:
        return -self.placed, self.price, len(self.trees), self.effort


def solve(
    problem: Problem,
    stop: Stop | None = None,
    seed: int = 0,
    watch: Callable[[Progress], None] | None = None,
) -> Solution:
    """Cut the parts from the sheets.

    As many parts as the stock allows; then the cheapest sheets (the fewest, when all cost the
    same); then the fewest settings and cuts. Guillotine cuts in as many stages as the problem
    allows, and a trim; where it allows more than three and nothing is proved with them, as much
    work goes into a search in three.

    Parameters
    ----------
    problem
        What to cut from what.
    stop
        When to be content; counted work, never the clock.
    seed
        Breaks ties in the later tries.
    watch
        Called with every better plan.

    Returns
    -------
    The plan. The same problem, stop and seed give the same plan.
    """
    stop = stop or Stop()
    if is_plain(problem):
        return _solve(problem, stop, seed, watch)
    best: Solution | None = None
    ways = plain_ways(problem)
    some = replace(stop, nodes=stop.nodes // len(ways))
    for plain in ways:
        tell = partial(_told_of, plain, watch) if watch is not None and best is None else None
        inner = _solve(plain.inner, some, seed, tell)
        found = plain.outer(inner, None if best is None else best.bound)
        if best is None or _full(found) <= _full(best):
            best = found
    if best is None:
        msg = "there is always a way"
        raise AssertionError(msg)
    return best


def _told_of(plain: Plain, watch: Callable[[Progress], None], made: Progress) -> None:
    watch(Progress(plain.outer(made.solution), made.nodes))


def _full(solution: Solution) -> tuple[int, int]:
    """The more is placed, and the less it costs, the less."""
    return -sum(placed.rect.area for placed in solution.placements), solution.cost


def _solve(
    problem: Problem, stop: Stop, seed: int, watch: Callable[[Progress], None] | None
) -> Solution:
    """The best plan; one in more than three stages only where it beats those in three."""
    found = _searched(problem, stop, seed, watch)
    is_deep = problem.stages is None or problem.stages > _USUAL
    if not is_deep or found.status is Status.PROVED:
        return found
    usual = _searched(replace(problem, stages=_USUAL), stop, seed, None)
    if _full(usual) > _full(found):
        return found
    left = tuple(entry for entry in usual.unplaced if entry.reason is not Reason.NO_STOCK)
    return solution_of(problem, usual.tree, left, found.bound)


def _searched(
    problem: Problem, stop: Stop, seed: int, watch: Callable[[Progress], None] | None
) -> Solution:
    sound, unplaced = sort_out(problem)
    if not sound.parts:
        return solution_of(problem, (), unplaced, Bound(0))
    best: _Plan | None = None
    tries = Tries(sound, stop, seed)
    for made in tries.run():
        plan = _plan(made)
        if best is None or plan.rank < best.rank:
            best = plan
            tries.keep(made)
            if watch is not None:
                found = solution_of(problem, plan.trees, unplaced, tries.bound)
                watch(Progress(found, tries.nodes))
    return solution_of(problem, best.trees if best else (), unplaced, tries.bound)


def _plan(made: Made) -> _Plan:
    if made.nested is not None:
        frame, nested = made.nested
        dealt = [iter(copies) for copies in frame.names().values()]
        trees = nested_trees(frame.problem, nested, lambda shape: next(dealt[shape]))
        area = sum(shape.du * shape.dv * shape.count for shape in frame.task().shapes)
        return _Plan(area, made.price, effort(trees), trees)
    trees = trees_of([(frame, found.laid) for frame, found in made.layers])
    placed = sum(part.du * part.dv for _, found in made.layers for part in found.laid)
    return _Plan(placed, made.price, effort(trees), trees)
