"""Sheets into parts: fewest sheets first, then least work at the saw."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import islice
from typing import NamedTuple

from casewright.cutting.apart import Apart
from casewright.cutting.cards import effort
from casewright.cutting.columns import Columns
from casewright.cutting.first_plan import first_plan
from casewright.cutting.frame import Frame, trees_of
from casewright.cutting.outcome import lower_bound, solution_of, sort_out
from casewright.cutting.plain import Plain, is_plain, plain_ways
from casewright.cutting.problem import Problem
from casewright.cutting.searches import AnySearch, search_for
from casewright.cutting.shapes import Found, Task
from casewright.cutting.sheet_dive import SheetDive
from casewright.cutting.solution import Bound, SheetTree, Solution

__all__ = ["Progress", "Stop", "solve"]

_WIDTHS = (1, 4, 16, 64, 256, 512, 1024, 2048, 4096)
_EASY = 4
_NARROW = 16

_SCOPES: dict[int | None, str] = {2: "two-stage cutting", 3: "three-stage cutting"}
_SHARE = 2
_AGAIN = 20
"""Shares of the work that go into the first bound, and into one when a cheaper plan was found."""

_SOON = 8
"""Share of the work after which the bound is looked at even if searches are narrow still."""

_APART = 20
"""Share of the work that goes into sheets with defects by themselves, in each frame."""

_LONGEST = 1 << 18
"""Sides of stock up to which the tables of the bound are made [unit]."""

_ROUND = 1_000_000
"""Most nodes of one round of the bound: none looks up from it."""

_TIMES = 2
"""How much more work goes into plans out of the mix of sheets than into those part by part."""


@dataclass(frozen=True, slots=True)
class Stop:
    """When to be content: after so many places have been tried. A first plan is always made.

    Parameters
    ----------
    nodes
        Places tried; where many are tried at once, some dozens count as one.
    asked
        Tells when someone wants the best plan so far, now. This alone can make the plan depend
        on the machine's speed; None: nobody asks.
    """

    nodes: int = 200_000
    asked: Callable[[], bool] | None = None

    def reached(self, nodes: int) -> bool:
        """Whether that many are enough."""
        return nodes >= self.nodes or self.is_asked()

    def is_asked(self) -> bool:
        """Whether someone wants the best plan so far."""
        return self.asked is not None and self.asked()


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
    same); then the fewest settings and cuts. Guillotine cuts in at most three stages and a trim.

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
    sound, unplaced = sort_out(problem)
    if not sound.parts:
        return solution_of(problem, (), unplaced, Bound(0))
    best: _Plan | None = None
    tries = _Tries(sound, stop, seed)
    for made in tries.run():
        plan = _plan(made)
        if best is None or plan.rank < best.rank:
            best = plan
            if watch is not None:
                found = solution_of(problem, plan.trees, unplaced, tries.bound)
                watch(Progress(found, tries.nodes))
    return solution_of(problem, best.trees if best else (), unplaced, tries.bound)


class _Made(NamedTuple):
    """A plan: sheets by the frame they are laid out in, their price, whether all parts are in."""

    layers: tuple[tuple[Frame, Found], ...]
    price: int
    complete: bool


class _Tries:
    """Searches of growing width over one problem, in every frame, and the bound meanwhile."""

    def __init__(self, problem: Problem, stop: Stop, seed: int) -> None:
        self.stop = stop
        self.seed = seed
        self.bound = lower_bound(problem)
        self.stages = problem.stages
        self.columns: Columns | None = None
        self.dive: SheetDive | None = None
        self.has_looked = False
        self.plans: list[Found] = []
        self.searches: list[tuple[Frame, AnySearch]] = []
        self.aparts: list[tuple[Frame, Apart]] = []
        for frame, task in _frames(problem):
            self.searches.append((frame, search_for(task, self.is_over)))
            apart = Apart(task, self.is_over)
            if apart.can_run and (frame.panels or problem.stages == 2):
                self.aparts.append((frame, apart))
        self.frames = [
            f for f, _ in self.searches if (f.panels or problem.stages == 2) and not f.stacks
        ]
        self.deepest = [f for f, _ in self.searches if f.stacks] or self.frames

    @property
    def searched(self) -> int:
        """Places tried by the searches of whole problems."""
        return sum(search.nodes for _, search in self.searches)

    @property
    def nodes(self) -> int:
        """Places tried in all."""
        others = (self.columns, self.dive, *(apart for _, apart in self.aparts))
        return self.searched + sum(one.nodes for one in others if one)

    def is_over(self) -> bool:
        """Whether enough places have been tried."""
        return self.stop.reached(self.nodes)

    def run(self) -> Iterator[_Made]:
        """Plans, each full one no dearer than those before.

        Wide searches look for cheaper plans only, until the bound is reached; narrow ones also
        for others at the same price, of which the easiest will be taken.
        """
        first = first_plan(self.searches[0][1], self.stop.is_asked)
        yield self._made(self.searches[0][0], first)
        least = first.price if first.complete else None
        if least is not None:
            for made in self._aparts(least):
                least = made.price
                yield made
        for width, guide, seed, (frame, search) in islice(self._passes(), 1, None):
            is_due = width > _NARROW or self.searched > self.stop.nodes // _SOON
            if is_due and least is not None:
                for made in self._mixed(least, _TIMES * self.searched, few=False):
                    least = made.price
                    yield made
            is_easy = width <= _EASY and guide == 0
            is_idle = least is not None and least <= self.bound.value and not is_easy
            if is_idle or self.is_over():
                continue
            limit = least if least is None or is_easy else least - 1
            found = search.run(width, guide, limit=limit, seed=seed)
            if found is not None:
                least = found.price if found.complete else least
                yield self._made(frame, found)
        if least is not None:
            yield from self._mixed(least, self.stop.nodes, few=True)

    def _aparts(self, least: int) -> Iterator[_Made]:
        """Cheaper plans with sheets that have defects filled apart, and the bound after them."""
        for frame, apart in self.aparts:
            for filled, rest in apart.run(least, self.stop.nodes // _APART):
                least = filled.price + rest.price
                layers = ((frame, filled), (frame, rest)) if rest.laid else ((frame, filled),)
                yield _Made(layers, least, complete=True)
        if self.aparts:
            yield from self._mixed(least, _TIMES * self.nodes, few=False)

    def _made(self, frame: Frame, found: Found) -> _Made:
        self.plans.append(found)
        return _Made(((frame, found),), found.price, found.complete)

    def _mixed(self, least: int, most: int, *, few: bool) -> Iterator[_Made]:
        """Cheaper plans out of the mix of sheets, with so much work."""
        if not self.has_looked:
            self.has_looked = True
            self._look(least)
        self._raise(least)
        dive = self.dive
        while dive and dive.can_fix(least - 1, few=few) and not self.is_over():
            if least <= self.bound.value:
                break
            layers = dive.run(least - 1)
            if layers is not None:
                least = sum(found.price for _, found in layers)
                framed = tuple((self.deepest[place], found) for place, found in layers)
                self._raise(least)
                yield _Made(framed, least, complete=True)
            elif dive.nodes > most:
                break

    def _look(self, least: int) -> None:
        """Look for a better bound, with a part of the work allowed."""
        if self.bound.value >= least:
            return
        if any(max(b.du, b.dv) > _LONGEST for b in self.searches[0][1].task.bins):
            return
        tasks = self._tasks(self.frames)
        most = self.stop.nodes // _SHARE
        columns = Columns(tasks, self.is_over)
        if columns.effort > min(most, _ROUND):
            return
        self.columns = columns
        for found in self.plans:
            columns.offer_plan(found)
        columns.raise_to(least, most)
        self._prove(least)
        self.dive = SheetDive(self._tasks(self.deepest), columns, self.is_over, self.seed)

    def _raise(self, least: int) -> None:
        """Look for a better bound on plans that cost less than the best one, for money."""
        columns = self.columns
        if columns is not None and self.bound.value < least and columns.cap(least - 1):
            columns.raise_to(least, columns.nodes + self.stop.nodes // _AGAIN)
            self._prove(least)

    def _prove(self, least: int) -> None:
        """Take over the bound of the columns: all plans cost that much, or as much as the best."""
        value = min(least, self.columns.bound) if self.columns else 0
        if value > self.bound.value and self.stages in _SCOPES:
            self.bound = replace(self.bound, value=value, scope=_SCOPES[self.stages])

    def _tasks(self, frames: Sequence[Frame]) -> list[Task]:
        return [search.task for frame, search in self.searches if frame in frames]

    def _passes(self) -> Iterator[tuple[int, int, int | None, tuple[Frame, AnySearch]]]:
        """Widths, guides and seeds.

        Plans without panels are plans with one panel, so they are looked for only for their ease;
        those of more than three stages only for the sheets that they save.
        """
        last = len(_WIDTHS) + 4
        for turn in range(last):
            width = _WIDTHS[min(turn, len(_WIDTHS) - 1)]
            seed = self.seed + turn if turn >= len(_WIDTHS) else None
            for guide in range(max(search.guides for _, search in self.searches)):
                for frame, search in self.searches:
                    is_easy = width <= _EASY and guide == 0
                    is_due = is_easy or frame.panels or self.stages == 2
                    if guide < search.guides and is_due and not (is_easy and frame.stacks):
                        yield width, guide, seed, (frame, search)


def _frames(problem: Problem) -> Iterator[tuple[Frame, Task]]:
    """The frames to look in, each with its task; only one of two that are mirror images."""
    seen: set[Task] = set()
    depths = ((False, False),) if problem.stages == 2 else ((True, False), (False, False))
    if problem.stages is None or problem.stages > 3:
        depths = (*depths, (True, True))
    for panels, stacks in depths:
        for first in ("crosscut", "rip"):
            frame = Frame(problem, first, panels, stacks)
            task = frame.task()
            if task not in seen:
                seen.add(task)
                yield frame, task


def _plan(made: _Made) -> _Plan:
    trees = trees_of([(frame, found.laid) for frame, found in made.layers])
    placed = sum(part.du * part.dv for _, found in made.layers for part in found.laid)
    return _Plan(placed, made.price, effort(trees), trees)
