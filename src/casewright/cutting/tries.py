"""Searches of every kind over one problem, and the bound meanwhile."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import islice
from typing import NamedTuple

from casewright.cutting.apart import Apart
from casewright.cutting.columns import Columns
from casewright.cutting.first_plan import first_plan
from casewright.cutting.frame import Frame
from casewright.cutting.nest import Nest, Nested
from casewright.cutting.outcome import lower_bound
from casewright.cutting.problem import Problem
from casewright.cutting.searches import AnySearch, search_for
from casewright.cutting.shapes import Action, Found, Task
from casewright.cutting.sheet_dive import SheetDive
from casewright.cutting.stop import Stop

__all__ = ["Made", "Tries"]

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

_DEEP = 3
"""Share of the work that goes into cuts of any depth."""

_LONGEST = 1 << 18
"""Sides of stock up to which the tables of the bound are made [unit]."""

_ROUND = 1_000_000
"""Most nodes of one round of the bound: none looks up from it."""

_TIMES = 2
"""How much more work goes into plans out of the mix of sheets than into those part by part."""


class Made(NamedTuple):
    """A plan: sheets by the frame they are laid out in, their price, whether all parts are in.

    Or sheets divided to any depth.
    """

    layers: tuple[tuple[Frame, Found], ...]
    price: int
    complete: bool
    nested: tuple[Frame, Nested] | None = None


class Tries:
    """Searches of growing width over one problem, in every frame, and the bound meanwhile."""

    def __init__(self, problem: Problem, stop: Stop, seed: int) -> None:
        self.stop = stop
        self.seed = seed
        self.bound = lower_bound(problem)
        self.stages = problem.stages
        self.columns: Columns | None = None
        self.late = 0
        self.nest: Nest | None = None
        self.best_bins: tuple[int, ...] = ()
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
        if problem.stages is None:
            self.nest = Nest(self.searches[0][1].task, self.is_over, seed)
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
        others = (self.columns, self.dive, self.nest, *(apart for _, apart in self.aparts))
        return self.searched + sum(one.nodes for one in others if one)

    def is_over(self) -> bool:
        """Whether enough places have been tried."""
        return self.stop.reached(self.nodes)

    def _is_bound_over(self) -> bool:
        """Whether enough work went into the bound, which has its share whatever came first."""
        return self.stop.reached(self.nodes - self.late)

    def run(self) -> Iterator[Made]:
        """Plans, each full one no dearer than those before.

        Wide searches look for cheaper plans only, until the bound is reached; narrow ones also
        for others at the same price, of which the easiest will be taken.
        """
        first = first_plan(self.searches[0][1], self.stop.is_asked)
        self.late = max(0, self.nodes - self.stop.nodes // _SHARE)
        yield self._made(self.searches[0][0], first)
        least = first.price if first.complete else None
        if least is not None:
            for made in self._aparts(least):
                least = made.price
                yield made
        for width, guide, seed, (frame, search) in islice(self._passes(), 1, None):
            is_due = width > _NARROW or self.searched > self.stop.nodes // _SOON
            if is_due and least is not None:
                for made in self._by_sheets(least):
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

    def _aparts(self, least: int) -> Iterator[Made]:
        """Cheaper plans with sheets that have defects filled apart, and the bound after them."""
        for frame, apart in self.aparts:
            for filled, rest in apart.run(least, self.stop.nodes // _APART):
                least = filled.price + rest.price
                layers = ((frame, filled), (frame, rest)) if rest.laid else ((frame, filled),)
                yield Made(layers, least, complete=True)
        if self.aparts:
            yield from self._mixed(least, _TIMES * self.nodes, few=False)

    def _by_sheets(self, least: int) -> Iterator[Made]:
        """Cheaper plans that are not made part by part."""
        for made in self._mixed(least, _TIMES * self.searched, few=False):
            least = made.price
            yield made
        if self.nest is not None:
            yield from self._nested(least)

    def keep(self, made: Made) -> None:
        """The best plan so far."""
        self.best_bins = tuple(
            part.bin
            for _, found in made.layers
            for part in found.laid
            if part.action == Action.NEW_SHEET
        )

    def _nested(self, least: int) -> Iterator[Made]:
        """Cheaper plans with cuts of any depth: one sheet fewer, or a cheaper one in its place."""
        nest, frame, bins = self.nest, self.searches[0][0], self.best_bins
        most = self.stop.nodes // _DEEP
        offers = self._cheaper(bins)
        while nest is not None and offers and least > self.bound.value and nest.nodes < most:
            found = nest.run(offers.pop(0), (most - nest.nodes) // (len(offers) + 1))
            if found is not None and found.price < least:
                least, bins = found.price, tuple(index for index, _ in found.sheets)
                offers = self._cheaper(bins)
                yield Made((), least, complete=True, nested=(frame, found))
        self.nest = None

    def _cheaper(self, bins: tuple[int, ...]) -> list[tuple[int, ...]]:
        """The sheets of a plan but for one, or with a cheaper one for it, the dearest first."""
        stock = self.searches[0][1].task.bins
        found = set()
        for place, index in enumerate(bins):
            rest = bins[:place] + bins[place + 1 :]
            found.add(rest)
            for b in stock:
                is_left = b.count is None or bins.count(b.index) < b.count
                if is_left and b.price < stock[index].price:
                    found.add((*rest, b.index))
        alike = {tuple(sorted(offer)) for offer in found if offer}
        return sorted(alike, key=lambda offer: (-sum(stock[n].price for n in offer), offer))

    def _made(self, frame: Frame, found: Found) -> Made:
        self.plans.append(found)
        return Made(((frame, found),), found.price, found.complete)

    def _mixed(self, least: int, most: int, *, few: bool) -> Iterator[Made]:
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
                yield Made(framed, least, complete=True)
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
        columns = Columns(tasks, self._is_bound_over)
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
