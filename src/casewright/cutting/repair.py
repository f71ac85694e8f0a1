"""Putting parts back into a plan one by one, each where it costs the least."""

from __future__ import annotations

import random  # noqa: TID251 - only for the type: the caller seeds it
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from casewright.cutting.census import any_manner, count, manner, size
from casewright.cutting.pattern import Kind, Pattern, Slot, Space, new_pattern
from casewright.cutting.problem import Problem
from casewright.cutting.rates import Rates

__all__ = ["Repair", "Ways", "ways_of"]

Ways = tuple[tuple[Slot, ...], tuple[Slot, ...]]
"""How a part may lie, in a pattern along the sheet and in one across it."""

_SKIP = 20
"""One good place in so many is passed over."""

_SIDE = 4
"""Ground beside a short strip counts one part in so many: other parts may still go there."""


def ways_of(kind: int, entry: Kind, kerf: int) -> Ways:
    """How a part may lie."""
    long, wide = entry.length + kerf, entry.width + kerf
    ways = [Slot(kind, long, wide)]
    if entry.rotate and long != wide:
        ways.append(Slot(kind, wide, long))
    return tuple(ways), tuple(Slot(kind, way.dv, way.du) for way in ways)


@dataclass(slots=True)
class Repair:
    """Places for parts on the sheets of a plan.

    Parameters
    ----------
    problem, kinds
        What is cut.
    rates
        What a setting and a cut cost.
    patterns
        The sheets. The list is changed in place; a sheet is copied before it is changed.
    counts
        How often each size is cut, and each manner (`census`); sizes already there cost no
        setting. Changed in place.
    ways
        How each kind may lie.
    waste
        Price of a mean part's area of ground used up [hundredths of a minute].
    most
        Money (or sheets) that may be spent in all.
    stock
        Pieces of stock that are taken besides, by place in the problem.
    priced
        Whether stock is counted by its price.
    rng
        Passes over a good place now and then.
    mean
        Area of a mean part [unit squared].
    own
        Sheets, by place, that may be changed as they are.
    nodes
        Places tried so far.
    """

    problem: Problem
    kinds: tuple[Kind, ...]
    rates: Rates
    patterns: list[Pattern]
    counts: dict[int, int]
    ways: Sequence[Ways]
    waste: int
    most: int
    stock: Counter[int]
    priced: bool
    rng: random.Random
    mean: int = 1
    own: set[int] = field(default_factory=set)
    nodes: int = field(default=0)

    def put(self, kind: int) -> bool:
        """Put one part in its cheapest place; False when there is none."""
        best: tuple[int, int, int, int, Slot] | None = None
        ways, least = self.ways[kind], -1
        area = ways[0][0].du * ways[0][0].dv
        for index, pattern in enumerate(self.patterns):
            if pattern.free < area:
                continue
            for slot in ways[pattern.swapped]:
                _, du, dv = slot
                spaces = [space for space in pattern.spaces if space[0] >= du and space[1] >= dv]
                if not spaces:
                    continue
                for cost, panel, strip in self._places(pattern, slot, spaces):
                    self.nodes += 1
                    if (best is None or cost < least) and self.rng.randrange(_SKIP):
                        best, least = (cost, index, panel, strip, slot), cost
        if best is None:
            return self._open(kind)
        self._put(self._owned(best[1]), *best[2:])
        return True

    def _places(
        self, pattern: Pattern, slot: Slot, spaces: Sequence[Space]
    ) -> Iterator[tuple[int, int, int]]:
        """Cost, number of the panel, number of the strip; one past the last is a new one."""
        _, du, dv = slot
        rates, waste, mean, area = self.rates, self.waste, self.mean, du * dv
        panels, v = pattern.panels, pattern.v
        in_strip, trimmed = self._apart(pattern, slot)
        across = 0 if size(du, is_rip=pattern.swapped) in self.counts else rates.stop
        fence = 0 if size(dv, is_rip=not pattern.swapped) in self.counts else rates.fence
        for *_, p, s in spaces:
            if p == len(panels):
                if self.problem.stages != 2 or not panels:
                    cost = across + fence + 3 * rates.cut + in_strip
                    yield cost + waste * (du * v * 3 // 4 - area) // mean, p, 0
                continue
            panel = panels[p]
            if s == len(panel.strips):
                wider = du - panel.du
                used = wider * v if wider > 0 else -wider * dv // _SIDE
                yield across + fence + 2 * rates.cut + waste * used // mean + in_strip, p, s
                continue
            strip = panel.strips[s]
            wider, taller = strip.du + du - panel.du, dv - strip.dv
            used = max(wider, 0) * v + max(taller, 0) * panel.du - area
            cost = across + rates.cut + waste * used // mean
            if taller > 0:
                cost += fence + (rates.cut + rates.fence // 2) * len(strip.slots)
            elif taller < 0:
                cost += fence + rates.cut + waste * (-taller * du) // mean
            yield cost + (trimmed if taller < 0 else in_strip), p, s

    def _apart(self, pattern: Pattern, slot: Slot) -> tuple[int, int]:
        """Price of cutting a part in another manner than those it belongs to: strip, trimmed."""
        kind, du, _ = slot
        if self.kinds[kind].group is None or any_manner(kind) not in self.counts:
            return 0, 0
        strip, trimmed = (
            manner(kind, du, swapped=pattern.swapped, trimmed=is_trimmed) in self.counts
            for is_trimmed in (False, True)
        )
        split = self.rates.split_group
        return 0 if strip else split, 0 if trimmed else split

    def open_empty(self) -> None:
        """Bring one more sheet, if one may be had; it costs nothing while it stays empty."""
        offers = list(self._offers())
        if offers:
            self._bring(new_pattern(self.problem, offers[0], swapped=self.rng.randrange(2) == 0))

    def _open(self, kind: int) -> bool:
        """A new sheet for a part, the cheapest that holds it."""
        for stock in self._offers():
            ways = (False, True) if self.rng.randrange(2) == 0 else (True, False)
            for swapped in ways:
                pattern = new_pattern(self.problem, stock, swapped=swapped)
                for slot in self.ways[kind][swapped]:
                    if slot.du <= pattern.u and slot.dv <= pattern.v:
                        self._bring(pattern)
                        self._put(pattern, 0, 0, slot)
                        return True
        return False

    def _bring(self, pattern: Pattern) -> None:
        self.patterns.append(pattern)
        self.own.add(len(self.patterns) - 1)

    def _offers(self) -> Iterator[int]:
        """Stock of which a piece is left and can be paid, the cheapest first."""
        taken = self.stock + Counter(pattern.stock for pattern in self.patterns)
        spent = sum(count * self._price(stock) for stock, count in taken.items())
        for stock in sorted(range(len(self.problem.stock)), key=lambda i: (self._price(i), i)):
            item = self.problem.stock[stock]
            is_left = item.count is None or taken[stock] < item.count
            if is_left and not item.defects and spent + self._price(stock) <= self.most:
                yield stock

    def _owned(self, index: int) -> Pattern:
        if index not in self.own:
            self.patterns[index] = self.patterns[index].copy()
            self.own.add(index)
        return self.patterns[index]

    def _price(self, stock: int) -> int:
        return self.problem.stock[stock].price if self.priced else 1

    def _put(self, pattern: Pattern, b: int, r: int, slot: Slot) -> None:
        strip, counts = pattern.lay(b, r, slot), self.counts
        kind, du, dv = slot
        numbers = [size(dv, is_rip=not pattern.swapped), size(du, is_rip=pattern.swapped)]
        if self.kinds[kind].group is not None:
            is_trimmed = dv < strip.dv
            numbers += (
                manner(kind, du, swapped=pattern.swapped, trimmed=is_trimmed),
                any_manner(kind),
            )
        count(counts, numbers, 1)
