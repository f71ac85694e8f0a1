"""Sheets whose work is being eased: how each is cut, and what all of them ask for."""

from __future__ import annotations

import random  # noqa: TID251 - only for the type: the caller seeds it
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from casewright.cutting.census import census_of
from casewright.cutting.census import count as _count
from casewright.cutting.pattern import Pattern
from casewright.cutting.rough_cuts import WAYS, OversizeWay, cut_wide
from casewright.cutting.sheet_work import SheetWork, WorkCounter
from casewright.cutting.work_count import WorkCount

__all__ = ["PlanSheets"]


class _Sheet(NamedTuple):
    """A sheet without first cuts wide of the line, its way and what it is with it, its work.

    `census` has the numbers of its sizes and manners.
    """

    pattern: Pattern
    way: OversizeWay
    cut: Pattern
    work: SheetWork
    census: list[int]


class PlanSheets:
    """Sheets of a plan that may be changed for others.

    Parameters
    ----------
    counter, count
        Count the work; the sheets that stay as they are stand in the count already.
    patterns
        The sheets.
    is_over
        Whether to look at no more ways of cutting them; asked for every way.

    Attributes
    ----------
    patterns
        The sheets without first cuts wide of the line.
    counts
        How often each size is cut, and each kind of part in each manner (`census`).
    """

    def __init__(
        self,
        counter: WorkCounter,
        count: WorkCount,
        patterns: Sequence[Pattern],
        is_over: Callable[[], bool],
    ) -> None:
        self._counter, self._total = counter, count
        self._sheets: list[_Sheet] = []
        self.counts: dict[int, int] = {}
        for pattern in patterns:
            sheet = self._cheapest(pattern, [w for w in WAYS if w is WAYS[0] or not is_over()])
            self._sheets.append(sheet)
            count.add(sheet.work)
            _count(self.counts, sheet.census, 1)
        self.patterns = list(patterns)

    @property
    def work(self) -> int:
        """What all sheets ask for, labels apart [hundredths of a minute]."""
        return self._total.value

    @property
    def cut(self) -> list[Pattern]:
        """The sheets as they are cut."""
        return [sheet.cut for sheet in self._sheets]

    def counts_after(self, changed: Mapping[int, Pattern]) -> dict[int, int]:
        """How often sizes and manners occur when other sheets stand in the place of some."""
        counts, kinds = self.counts.copy(), self._counter.kinds
        for index, pattern in changed.items():
            _count(counts, census_of(pattern, kinds), 1)
            _count(counts, self._sheets[index].census, -1)
        return counts

    def change(self, changed: Mapping[int, Pattern], most: int, rng: random.Random) -> bool:
        """Take other sheets for some, if all then ask for no more than `most`; whether it did.

        Parameters
        ----------
        changed
            By place, places past the last for new ones; sheets with nothing on them go.
        rng
            Offers each sheet one more way.
        """
        last, count = len(self._sheets), self._total
        moved = {i: p for i, p in changed.items() if i >= last or not self._is_same(i, p)}
        # Sheets that came out as they were are offered another way of cutting them all the same.
        changed = moved or {index: changed[index] for index in (rng.choice(sorted(changed)),)}
        old = [self._sheets[index] for index in changed if index < last]
        for sheet in old:
            count.take(sheet.work)
        fresh: dict[int, _Sheet] = {}
        for index, pattern in sorted(changed.items()):
            if pattern.panels:
                ways = rng.choice(WAYS), rng.choice(WAYS)
                if index < last:
                    ways = self._sheets[index].way, ways[1]
                fresh[index] = self._cheapest(pattern, ways)
                count.add(fresh[index].work)
        if count.value > most:
            for sheet in fresh.values():
                count.take(sheet.work)
            for sheet in old:
                count.add(sheet.work)
            return False
        for sheet in fresh.values():
            _count(self.counts, sheet.census, 1)
        for sheet in old:
            _count(self.counts, sheet.census, -1)
        stay = {index: s for index, s in enumerate(self._sheets) if index not in changed}
        self._sheets = [sheet for _, sheet in sorted((stay | fresh).items())]
        self.patterns = [sheet.pattern for sheet in self._sheets]
        return True

    def _is_same(self, index: int, pattern: Pattern) -> bool:
        known = self._sheets[index].pattern
        return pattern.swapped == known.swapped and pattern.panels == known.panels

    def _cheapest(self, pattern: Pattern, ways: Sequence[OversizeWay]) -> _Sheet:
        """A sheet in the way that adds the least work."""
        best: tuple[int, OversizeWay, Pattern, SheetWork] | None = None
        for way in ways:
            cut = cut_wide(pattern, way, self._counter.problem.kerf)
            if best is not None and cut is pattern:
                continue
            work = self._counter.pattern_work(cut)
            price = self._total.price(work)
            if best is None or price < best[0]:
                best = price, way, cut, work
        if best is None:
            msg = "there is always a way"
            raise AssertionError(msg)
        return _Sheet(pattern, *best[1:], census_of(pattern, self._counter.kinds))
