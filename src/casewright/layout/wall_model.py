"""The optimisation model of one wall."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from casewright.layout.costs import cost_of, loose
from casewright.layout.demands import LayoutDemand
from casewright.layout.programme import LayoutProgramme, ProgrammeSolution
from casewright.layout.tasks import EndFiller, RunPlace, WallTask, WidthBand
from casewright.layout.wall_layout import WallLayout
from casewright.layout.wall_order import GivenOrder, LayoutOrder, WallOrder

__all__ = ["WallModel", "is_given"]


def is_given(place: RunPlace) -> bool:
    """Whether it is a case whose width is settled."""
    return not place.opening and place.low == place.high


class WallModel:
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
        self.sequence: WallOrder = GivenOrder(task, self.widths)
        if task.is_free:
            self.sequence = LayoutOrder(task, self.widths, self.programme, demand.unlike)

    def solved(self) -> ProgrammeSolution | None:
        """The solution of the programme."""
        whole = dict.fromkeys((self.left, *self.widths, self.right), 1)
        self.programme.require(whole, low=self.task.length, high=self.task.length)
        self._starts()
        self._doors()
        self._corners()
        self._centres()
        self._wishes()
        self._proportions()
        self._spread()
        if self.new is not None:
            self._classes(self.new)
        self._alike()
        self._mirrored()
        self._seams()
        self._kept_clear()
        self._fillers()
        return self.programme.solve()

    def _filler(self, filler: EndFiller | None) -> int:
        if filler is None:
            return self.programme.number(0, 0)
        return self.programme.number(filler.low, filler.high)

    def read(self, solved: ProgrammeSolution) -> WallLayout:
        """The answer that a solution means."""
        values = solved.values
        order = self.sequence.read(values)
        task = replace(
            self.task, places=tuple(self.task.places[n] for n in order), is_free=False, beside=()
        )
        widths = tuple(values[self.widths[n]] for n in order)
        left, right = values[self.left], values[self.right]
        given = {place.low for place in self.task.places if is_given(place)}
        always = self.task.preferences.width * len(given)
        cost = cost_of(task, left, widths, right)
        if cost > solved.cost + always and self.demand.on_centre is not False:
            msg = f"the model has a cost of {solved.cost + always}, its meaning one of {cost}"
            raise ValueError(msg)
        known = order if self.task.is_free else ()
        return WallLayout(task, widths, left, right, cost, solved.bound + always, known)

    def _cases(self) -> list[tuple[int, RunPlace]]:
        """Variables and places of what is built."""
        return [
            (number, place)
            for number, place in zip(self.widths, self.task.places, strict=True)
            if not place.opening
        ]

    def _before(self, slot: int, factor: int = 1) -> dict[int, int]:
        """Terms of where a slot begins."""
        return dict.fromkeys((self.left, *self.sequence.slots[:slot]), factor)

    def _starts(self) -> None:
        """What stands before a place that may not move fills the wall up to it."""
        for place, each in enumerate(self.task.places):
            if each.start is None:
                continue
            for slot, choice in self.sequence.where(place):
                before, start = self._before(slot), each.start
                reach = max(start, self.task.length)
                self.programme.require_if(choice, before, low=start, high=start, reach=reach)

    def _doors(self) -> None:
        """A filler is wide enough for the doors of the case that stands beside it."""
        ends = (
            (self.left, self.task.left, 0),
            (self.right, self.task.right, len(self.widths) - 1),
        )
        for place, each in enumerate(self.task.places):
            for (number, filler, at), need in zip(ends, each.needs, strict=True):
                if filler is None or need <= filler.low:
                    continue
                for slot, choice in self.sequence.where(place):
                    if slot == at:
                        self.programme.require_if(choice, {number: 1}, low=need, reach=need)

    def _corners(self) -> None:
        """What stands in a corner opens past the run round it."""
        for place, (number, each) in enumerate(zip(self.widths, self.task.places, strict=True)):
            for band, at in zip(each.corners, (0, len(self.widths) - 1), strict=True):
                for slot, choice in self.sequence.where(place) if band is not None else ():
                    if slot == at:
                        self._banded(number, each, band, choice)

    def _banded(
        self, number: int, place: RunPlace, band: WidthBand | None, choice: int | None
    ) -> None:
        low, high = band or (place.low, place.high)
        if choice is not None and low > high:
            self.programme.require({choice: 1}, high=0)
        elif low > high:
            self.programme.require({number: 1}, high=place.low - 1)
        else:
            reach = max(place.high, high)
            self.programme.require_if(choice, {number: 1}, low=low, high=high, reach=reach)

    def _centres(self) -> None:
        """Twice the start and the width once make twice the middle."""
        for place, each in enumerate(self.task.places):
            centre = each.centre
            if centre is None:
                continue
            cost = 1 if self.demand.on_centre is False else self.task.preferences.off_centre
            reach = max(centre, 2 * self.task.length)
            off = self.programme.number(0, reach, cost=cost)
            for slot, choice in self.sequence.where(place):
                terms = {**self._before(slot, 2), self.sequence.slots[slot]: 1}
                self.programme.require_if(choice, {**terms, off: -1}, high=centre, reach=reach)
                self.programme.require_if(choice, {**terms, off: 1}, low=centre, reach=reach)
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

    def _proportions(self) -> None:
        """Widths of two cases compare as they are wished to, or it costs."""
        number = {p.key: n for n, p in zip(self.widths, self.task.places, strict=True)}
        for one, other, of_one, of_other in self.task.proportions:
            reach = max(place.high for place in self.task.places) * max(of_one, of_other)
            terms = {number[one]: of_other, number[other]: -of_one}
            self.programme.distance(terms, 0, reach, cost=self.task.preferences.proportion)

    def _spread(self) -> None:
        """Cases that may have any width are much alike, or it costs."""
        free = loose(self.task)
        widths = [n for n, at in zip(self.widths, self.task.places, strict=True) if at.key in free]
        if len(widths) < 2:
            return
        low = min(at.low for at in self.task.places if at.key in free)
        high = max(at.high for at in self.task.places if at.key in free)
        wide, narrow = self.programme.number(low, high), self.programme.number(low, high)
        off = self.programme.number(0, high - low, cost=self.task.preferences.spread)
        self.programme.require({wide: 1, narrow: -1, off: -1}, high=0)
        for number in widths:
            self.programme.require({number: 1, wide: -1}, high=0)
            self.programme.require({narrow: 1, number: -1}, high=0)

    def _classes(self, new: int) -> None:
        """Each free case is as wide as a settled one, or as one of the new widths."""
        free = [(n, place) for n, place in self._cases() if place.low < place.high]
        given = sorted({place.low for _, place in self._cases() if is_given(place)})
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

    def _opened(self, *slots: int) -> tuple[dict[int, int], int]:
        """How many openings stand in some slots: a sum of choices, and a number."""
        found = [self.sequence.opened(slot) for slot in slots]
        return {at: 1 for terms, _ in found for at in terms}, sum(number for _, number in found)

    def _mirrored(self) -> None:
        """The first against the last, the second against the last but one, if both are built."""
        slots = self.sequence.slots
        reach = max(p.high for p in self.task.places) - min(p.low for p in self.task.places)
        for first in range(len(slots) // 2):
            last = len(slots) - 1 - first
            opened, number = self._opened(first, last)
            if number:
                continue
            off = self.programme.number(0, reach, cost=self.task.preferences.mirror)
            spared = {off: -1, **dict.fromkeys(opened, -reach)}
            for one, other in ((first, last), (last, first)):
                self.programme.require({slots[one]: 1, slots[other]: -1, **spared}, high=0)

    def _seams(self) -> None:
        """A seam between two cases stands on one of those it is to stand on, or costs."""
        if not self.task.seams:
            return
        for slot in range(1, len(self.widths)):
            opened, number = self._opened(slot - 1, slot)
            if number:
                continue
            stray = self.programme.choice(cost=self.task.preferences.seam)
            if self.demand.on_seams:
                self.programme.require({stray: 1}, high=0)
            some = {stray: 1, **opened}
            for seam in self.task.seams:
                here = self.programme.choice()
                reach = max(seam, self.task.length)
                before = self._before(slot)
                self.programme.require_if(here, before, low=seam, high=seam, reach=reach)
                some[here] = 1
            self.programme.require(some, low=1)

    def _kept_clear(self) -> None:
        """Each side of a case ends before what is to be kept clear, or begins behind it."""
        count = len(self.widths)
        for slot in range(count + 1 if self.task.clear else 0):
            beside = tuple(each for each in (slot - 1, slot) if 0 <= each < count)
            opened, number = self._opened(*beside)
            if number == len(beside):
                continue
            before = self._before(slot)
            for each in self.task.clear:
                ends, begins = self.programme.choice(), self.programme.choice()
                met = self.programme.choice(cost=self.task.preferences.clash)
                reach = max(each.high, self.task.length)
                self.programme.require_if(ends, before, high=each.low, reach=reach)
                self.programme.require_if(begins, before, low=each.high, reach=reach)
                some = {ends: 1, begins: 1, met: 1}
                if opened:
                    bare = self.programme.choice()
                    self.programme.require({bare: -len(beside), **opened}, low=-number)
                    some[bare] = 1
                self.programme.require(some, low=1)

    def _fillers(self) -> None:
        for number, filler in ((self.left, self.task.left), (self.right, self.task.right)):
            if filler is not None and filler.wished is not None:
                reach = max(abs(filler.high - filler.wished), abs(filler.wished - filler.low))
                cost = self.task.preferences.filler_wish
                self.programme.distance({number: 1}, filler.wished, reach, cost=cost)
        if self.task.has_like_fillers:
            reach = max(end.high for end in (self.task.left, self.task.right) if end)
            cost = self.task.preferences.fillers
            apart = {self.left: 1, self.right: -1}
            self.programme.distance(apart, 0, reach, cost=cost)
            match self.demand.fillers:
                case "equal":
                    self.programme.require(apart, low=-1, high=1)
                case "left":
                    self._least(self.right, self.task.right, 1)
                    self.programme.require(apart, low=self.task.unseen + 1)
                case "right":
                    self._least(self.left, self.task.left, 0)
                    self.programme.require(apart, high=-self.task.unseen - 1)
                case None:
                    pass

    def _least(self, number: int, filler: EndFiller | None, side: int) -> None:
        """A filler as narrow as it may be beside any case."""
        if filler is not None:
            needs = (place.needs[side] for place in self.task.places)
            self.programme.require({number: 1}, high=max(filler.low, *needs))
