"""The work of a plan, kept while sheets come and go."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from casewright.cutting.pattern import Kind
from casewright.cutting.rates import Rates
from casewright.cutting.sheet_work import SetUp, SheetWork

__all__ = ["WorkCount"]

_One = TypeVar("_One", bound=Hashable)


@dataclass(slots=True)
class WorkCount:
    """Sums over sheets; what several sheets share counts once.

    Parameters
    ----------
    kinds, rates
        The parts put together by what they are, and what things cost.
    circle
        What it costs when each of two settings needs pieces that the other gives: one of the two
        must be made twice [hundredths of a minute].

    Attributes
    ----------
    value
        The work of the sheets that are counted, labels apart [hundredths of a minute].
    """

    kinds: Sequence[Kind]
    rates: Rates
    circle: int = 0
    value: int = 0
    _set_ups: dict[SetUp, int] = field(default_factory=dict)
    _orders: dict[tuple[SetUp, SetUp], int] = field(default_factory=dict)
    _ways: dict[Hashable, int] = field(default_factory=dict)
    _parts: dict[int, int] = field(default_factory=dict)
    _lies: dict[tuple[str | None, bool], int] = field(default_factory=dict)

    def price(self, work: SheetWork) -> int:
        """What a sheet would add."""
        rates = self.rates
        value = work.own
        for one in work.set_ups:
            if one not in self._set_ups:
                value += rates.stop if one[0] == "sled" else rates.fence
        split = len({(kind, way) for kind, _, way in work.groups} - self._ways.keys())
        split += sum(count for *_, count in work.lays)
        if split:
            fresh = {kind for kind, *_ in (*work.groups, *work.lays) if kind not in self._parts}
            value += rates.split_group * (split - len(fresh))
        if self.circle:
            value += self.circle * self._circles(work)
        return value + rates.flip * self._flips(work)

    def add(self, work: SheetWork) -> None:
        """Count a sheet."""
        self.value += self.price(work)
        self._count(work, 1)

    def take(self, work: SheetWork) -> None:
        """Count a sheet no longer."""
        self._count(work, -1)
        self.value -= self.price(work)

    def _circles(self, work: SheetWork) -> int:
        known, own = self._orders, work.orders
        return sum(
            (b, a) in known or (a < b and (b, a) in own) for a, b in own if (a, b) not in known
        )

    def _flips(self, work: SheetWork) -> int:
        known = self._lies
        own = set(self._lies_of(work))
        return sum(
            (group, not turned) in known or (turned and (group, False) in own)
            for group, turned in own
            if (group, turned) not in known
        )

    def _lies_of(self, work: SheetWork) -> Iterable[tuple[str | None, bool]]:
        for kind, turned, _ in (*work.groups, *work.lays):
            yield self.kinds[kind].group, turned

    def _count(self, work: SheetWork, step: int) -> None:
        _count(self._set_ups, work.set_ups, step)
        _count(self._ways, {(kind, way) for kind, _, way in work.groups}, step)
        _count(self._lies, self._lies_of(work), step)
        _count(self._parts, (kind for kind, *_ in (*work.groups, *work.lays)), step)
        if self.circle:
            _count(self._orders, work.orders, step)


def _count(counts: dict[_One, int], found: Iterable[_One], step: int) -> None:
    for one in found:
        count = counts.get(one, 0) + step
        if count:
            counts[one] = count
        else:
            del counts[one]
