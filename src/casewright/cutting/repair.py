"""Putting parts back into a plan one by one, each where it costs the least."""

from __future__ import annotations

import random  # noqa: TID251 - only for the type: the caller seeds it
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from casewright.cutting.pattern import Kind, Panel, Pattern, Slot, Strip, new_pattern
from casewright.cutting.problem import Problem
from casewright.cutting.rates import Rates

__all__ = ["Manner", "Repair", "Size", "manners_of", "sizes_of"]

Size = tuple[bool, int]
"""Whether a size is ripped, and the grown size."""

Manner = tuple[bool, int, bool]
"""How a part is cut: in a pattern across the sheet, its size along u, trimmed along v."""

_SKIP = 20
"""One good place in so many is passed over."""

_SIDE = 4
"""Ground beside a short strip counts one part in so many: other parts may still go there."""


def sizes_of(pattern: Pattern) -> Iterator[Size]:
    """The sizes that a sheet is cut to: the settings it takes, whatever the saw."""
    along_v, along_u = not pattern.swapped, pattern.swapped
    for panel in pattern.panels:
        if len(pattern.panels) > 1:
            yield along_u, panel.du
        for strip in panel.strips:
            yield along_v, strip.dv
            for slot in strip.slots:
                yield along_u, slot.du
                if slot.dv < strip.dv:
                    yield along_v, slot.dv


def manners_of(pattern: Pattern) -> Iterator[tuple[int, Manner | None]]:
    """For every part of a sheet its kind with the manner in which it is cut, and with None."""
    for panel in pattern.panels:
        for strip in panel.strips:
            for slot in strip.slots:
                yield slot.kind, (pattern.swapped, slot.du, slot.dv < strip.dv)
                yield slot.kind, None


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
    sizes
        How often each size is cut; sizes already there cost no setting. Changed in place.
    manners
        How often each kind is cut in each manner, and in any (None). Changed in place.
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
    sizes: Counter[Size]
    manners: Counter[tuple[int, Manner | None]]
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
        ways = {swapped: self._ways(kind, swapped=swapped) for swapped in (False, True)}
        area = ways[False][0].du * ways[False][0].dv
        for index, pattern in enumerate(self.patterns):
            if pattern.free < area:
                continue
            for slot in ways[pattern.swapped]:
                for cost, panel, strip in self._places(pattern, slot):
                    self.nodes += 1
                    if (best is None or cost < best[0]) and self.rng.randrange(_SKIP):
                        best = cost, index, panel, strip, slot
        if best is None:
            return self._open(kind)
        self._put(self._owned(best[1]), *best[2:])
        return True

    def _ways(self, kind: int, *, swapped: bool) -> list[Slot]:
        entry, kerf = self.kinds[kind], self.problem.kerf
        long, wide = entry.length + kerf, entry.width + kerf
        ways = [Slot(kind, long, wide)]
        if entry.rotate and long != wide:
            ways.append(Slot(kind, wide, long))
        return [Slot(kind, w.dv, w.du) for w in ways] if swapped else ways

    def _places(self, pattern: Pattern, slot: Slot) -> Iterator[tuple[int, int, int]]:
        """Cost, number of the panel, number of the strip; one past the last is a new one."""
        du, dv = slot.du, slot.dv
        rates, ground, area = self.rates, self._ground, du * dv
        apart = self._apart(pattern, slot)
        across = 0 if self.sizes[pattern.swapped, du] else rates.stop
        fence = 0 if self.sizes[not pattern.swapped, dv] else rates.fence
        for space in pattern.spaces:
            if du > space.du or dv > space.dv:
                continue
            panel = pattern.panels[space.panel]
            if space.strip is None:
                wider = du - panel.du
                used = max(wider, 0) * pattern.v + max(-wider, 0) * dv // _SIDE
                cost = across + fence + 2 * rates.cut + ground(used) + apart[0]
                yield cost, space.panel, len(panel.strips)
                continue
            strip = panel.strips[space.strip]
            wider, taller = strip.du + du - panel.du, dv - strip.dv
            used = max(wider, 0) * pattern.v + max(taller, 0) * panel.du - area
            cost = across + rates.cut + ground(used)
            if taller > 0:
                cost += fence + (rates.cut + rates.fence // 2) * len(strip.slots)
            elif taller < 0:
                cost += fence + rates.cut + ground(-taller * du)
            yield cost + apart[taller < 0], space.panel, space.strip
        spare = pattern.u - pattern.du
        may_part = self.problem.stages != 2 or not pattern.panels
        if may_part and du <= spare and dv <= pattern.v:
            used = du * pattern.v * 3 // 4 - area
            cost = across + fence + 3 * rates.cut + ground(used) + apart[0]
            yield cost, len(pattern.panels), 0

    def _apart(self, pattern: Pattern, slot: Slot) -> tuple[int, int]:
        """Price of cutting a part in another manner than those it belongs to: strip, trimmed."""
        kind = slot.kind
        if self.kinds[kind].group is None or not self.manners[kind, None]:
            return 0, 0
        split, known = self.rates.split_group, self.manners
        return (
            0 if known[kind, (pattern.swapped, slot.du, False)] else split,
            0 if known[kind, (pattern.swapped, slot.du, True)] else split,
        )

    def _ground(self, area: int) -> int:
        """Price of ground that is used up beyond a part's own."""
        return self.waste * area // self.mean

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
                for slot in self._ways(kind, swapped=swapped):
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
        if b == len(pattern.panels):
            pattern.panels.append(Panel())
        panel = pattern.panels[b]
        if r == len(panel.strips):
            panel.strips.append(Strip())
        panel.strips[r].add(slot)
        pattern.measure()
        strip = panel.strips[r]
        self.manners[slot.kind, (pattern.swapped, slot.du, slot.dv < strip.dv)] += 1
        self.manners[slot.kind, None] += 1
        self.sizes[not pattern.swapped, slot.dv] += 1
        self.sizes[pattern.swapped, slot.du] += 1
