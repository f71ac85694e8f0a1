"""One wall, its sequence given: widths and fillers that fill it exactly, at the least cost."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from casewright.layout.costs import cost_of
from casewright.layout.programme import LayoutProgramme, ProgrammeSolution
from casewright.layout.tasks import EndFiller, RunPlace, WallTask

__all__ = ["FillersAsked", "LayoutDemand", "WallLayout", "lay_out"]

FillersAsked = Literal["equal", "left", "right"]
"""Alike to the step, or what can go there at the left, or at the right."""


@dataclass(frozen=True, slots=True)
class LayoutDemand:
    """What is insisted on beside the task.

    Parameters
    ----------
    on_centre
        True: every middle stands on what it is to stand on, to the half step. False: it may stand
        off at little cost, for what else that gives. None: as the preferences have it.
    fillers
        Where the filler goes; None: wherever it is best.
    one_width
        Every case whose width is free is as wide as the others.
    """

    on_centre: bool | None = None
    fillers: FillersAsked | None = None
    one_width: bool = False


_NO_DEMAND = LayoutDemand()

_MOST_NEW = 4
"""More different new widths than this are not tried [-]: nobody wants to set up for them."""


@dataclass(frozen=True, slots=True)
class WallLayout:
    """An answer: it fills the wall to the step.

    Parameters
    ----------
    widths
        Of the places, left to right [steps].
    left, right
        Fillers [steps]; 0 where there is none.
    cost, bound
        What it costs, and what no answer to the same task and demand costs less than; 0 where
        that is not known [points].
    """

    task: WallTask
    widths: tuple[int, ...]
    left: int
    right: int
    cost: int
    bound: int

    @property
    def starts(self) -> tuple[int, ...]:
        """Left ends of the places from the wall's left end [steps]."""
        ends = [self.left]
        for width in self.widths:
            ends.append(ends[-1] + width)
        return tuple(ends[:-1])

    @property
    def is_proved(self) -> bool:
        """Whether no better answer exists."""
        return self.bound == self.cost

    def off_centre(self, number: int) -> int:
        """How far the middle of a place stands right of what it is to stand on [half steps]."""
        centre = self.task.places[number].centre
        if centre is None:
            return 0
        return 2 * self.starts[number] + self.widths[number] - centre


def lay_out(task: WallTask, demand: LayoutDemand = _NO_DEMAND) -> WallLayout | None:
    """The best answer to a task that meets a demand, or None when nothing fits.

    Few different widths are tried first. An answer is the best of all once one more width would
    cost more than it, whatever the rest of that answer cost.
    """
    least = _Model(task, demand, None).solved()
    if least is None:
        return None
    free = sum(not place.opening and place.low < place.high for place in task.places)
    given = len({place.low for place in task.places if _is_given(place)})
    best: WallLayout | None = None
    reached = 0
    most = min(free, _MOST_NEW)
    for new in range(most + 1):
        model = _Model(task, demand, new)
        solved = model.solved()
        if solved is not None and (best is None or solved.cost < reached):
            best, reached = model.read(solved), solved.cost
        more = task.preferences.width * (new + 1) + least.bound
        if best is not None and (reached <= more or new == most):
            bound = min(reached, solved.bound) if solved is not None else reached
            bound = bound if new == free else min(bound, more)
            known = bound + task.preferences.width * given
            return replace(best, bound=0 if demand.on_centre is False else known)
    return _of_many_widths(task, demand, free)


def _of_many_widths(task: WallTask, demand: LayoutDemand, free: int) -> WallLayout | None:
    """The best answer where fewer widths than there are cases do not fit at all."""
    model = _Model(task, demand, free)
    solved = model.solved()
    return None if solved is None else model.read(solved)


def _is_given(place: RunPlace) -> bool:
    """Whether it is a case whose width is settled."""
    return not place.opening and place.low == place.high


class _Model:
    """The programme of one task.

    Parameters
    ----------
    new
        How many widths may be built that no settled case has; None: any number, at no cost.
    """

    def __init__(self, task: WallTask, demand: LayoutDemand, new: int | None) -> None:
        self.task, self.demand, self.new = task, demand, new
        self.programme = LayoutProgramme()
        self.widths = [self.programme.number(each.low, each.high) for each in task.places]
        self.left = self._filler(task.left)
        self.right = self._filler(task.right)

    def solved(self) -> ProgrammeSolution | None:
        """The solution of the programme."""
        whole = dict.fromkeys((self.left, *self.widths, self.right), 1)
        self.programme.require(whole, low=self.task.length, high=self.task.length)
        self._starts()
        self._centres()
        self._wishes()
        if self.new is not None:
            self._classes(self.new)
        self._alike()
        self._mirrored()
        self._fillers()
        return self.programme.solve()

    def _filler(self, filler: EndFiller | None) -> int:
        if filler is None:
            return self.programme.number(0, 0)
        return self.programme.number(filler.low, filler.high)

    def read(self, solved: ProgrammeSolution) -> WallLayout:
        """The answer that a solution means."""
        values = solved.values
        widths = tuple(values[number] for number in self.widths)
        left, right = values[self.left], values[self.right]
        given = {place.low for place in self.task.places if _is_given(place)}
        always = self.task.preferences.width * len(given)
        cost = cost_of(self.task, left, widths, right)
        if cost > solved.cost + always and self.demand.on_centre is not False:
            msg = f"the model has a cost of {solved.cost + always}, its meaning one of {cost}"
            raise ValueError(msg)
        return WallLayout(self.task, widths, left, right, cost, solved.bound + always)

    def _cases(self) -> list[tuple[int, RunPlace]]:
        """Variables and places of what is built."""
        return [
            (number, place)
            for number, place in zip(self.widths, self.task.places, strict=True)
            if not place.opening
        ]

    def _starts(self) -> None:
        """What stands before a place that may not move fills the wall up to it."""
        for index, place in enumerate(self.task.places):
            if place.start is not None:
                before = dict.fromkeys((self.left, *self.widths[:index]), 1)
                self.programme.require(before, low=place.start, high=place.start)

    def _centres(self) -> None:
        """Twice the start and the width once make twice the middle."""
        for index, place in enumerate(self.task.places):
            if place.centre is None:
                continue
            terms = dict.fromkeys((self.left, *self.widths[:index]), 2)
            terms[self.widths[index]] = 1
            cost = self.task.preferences.off_centre
            if self.demand.on_centre is False:
                cost = 1
            reach = max(place.centre, 2 * self.task.length)
            off = self.programme.distance(terms, place.centre, reach, cost=cost)
            if self.demand.on_centre:
                self.programme.require({off: 1}, high=1)

    def _wishes(self) -> None:
        weights = self.task.preferences
        for number, place in self._cases():
            if place.wished is not None:
                reach = max(abs(place.high - place.wished), abs(place.wished - place.low))
                self.programme.distance({number: 1}, place.wished, reach, cost=weights.wish)
            if place.low < weights.narrow:
                orphan = self.programme.choice(cost=weights.orphan)
                short = weights.narrow - place.low
                self.programme.require({number: 1, orphan: short}, low=weights.narrow)

    def _classes(self, new: int) -> None:
        """Each free case is as wide as a settled one, or as one of the new widths."""
        free = [(n, place) for n, place in self._cases() if place.low < place.high]
        given = sorted({place.low for _, place in self._cases() if _is_given(place)})
        low = min((place.low for _, place in free), default=0)
        high = max((place.high for _, place in free), default=0)
        widths = [self.programme.number(low, high) for _ in range(new)]
        used = [self.programme.choice(cost=self.task.preferences.width) for _ in range(new)]
        for one, other in pairwise(widths):
            self.programme.require({one: 1, other: -1}, low=0)
        for number, place in free:
            choices = [self._as_given(number, place, size) for size in given]
            for width, use in zip(widths, used, strict=True):
                choice = self.programme.choice()
                self.programme.require({choice: 1, use: -1}, high=0)
                above, below = place.high - low, high - place.low
                self.programme.require({number: 1, width: -1, choice: above}, high=above)
                self.programme.require({width: 1, number: -1, choice: below}, high=below)
                choices.append(choice)
            self.programme.require(dict.fromkeys(choices, 1), low=1, high=1)

    def _as_given(self, number: int, place: RunPlace, size: int) -> int:
        """A choice to make a case as wide as a settled one."""
        choice = self.programme.choice()
        if not place.low <= size <= place.high:
            self.programme.require({choice: 1}, high=0)
            return choice
        self.programme.require({number: 1, choice: place.high - size}, high=place.high)
        self.programme.require({number: 1, choice: place.low - size}, low=place.low)
        return choice

    def _alike(self) -> None:
        if self.demand.one_width:
            free = [number for number, place in self._cases() if place.low < place.high]
            for one, other in pairwise(free):
                self.programme.require({one: 1, other: -1}, low=0, high=0)

    def _mirrored(self) -> None:
        """The first case against the last, the second against the last but one, and so on."""
        cases = self._cases()
        for (one, first), (other, second) in zip(
            cases[: len(cases) // 2], cases[::-1], strict=False
        ):
            reach = max(first.high, second.high) - min(first.low, second.low)
            self.programme.distance(
                {one: 1, other: -1}, 0, reach, cost=self.task.preferences.mirror
            )

    def _fillers(self) -> None:
        for number, filler in ((self.left, self.task.left), (self.right, self.task.right)):
            if filler is not None and filler.wished is not None:
                reach = max(abs(filler.high - filler.wished), abs(filler.wished - filler.low))
                cost = self.task.preferences.filler_wish
                self.programme.distance({number: 1}, filler.wished, reach, cost=cost)
        if self.task.left is not None and self.task.right is not None:
            reach = max(self.task.left.high, self.task.right.high)
            cost = self.task.preferences.fillers
            apart = {self.left: 1, self.right: -1}
            self.programme.distance(apart, 0, reach, cost=cost)
            match self.demand.fillers:
                case "equal":
                    self.programme.require(apart, low=-1, high=1)
                case "left":
                    self.programme.require({self.right: 1}, high=self.task.right.low)
                case "right":
                    self.programme.require({self.left: 1}, high=self.task.left.low)
                case None:
                    pass
