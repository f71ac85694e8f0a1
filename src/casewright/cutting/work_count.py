"""The work of a plan, kept while sheets come and go."""

from __future__ import annotations

from dataclasses import dataclass, field

from casewright.cutting.rates import Rates
from casewright.cutting.row_work import reversed_pair, takes_stop
from casewright.cutting.sheet_work import SheetWork

__all__ = ["WorkCount"]


@dataclass(slots=True)
class WorkCount:
    """Sums over sheets; what several sheets share counts once.

    Parameters
    ----------
    rates
        What things cost.
    circle
        What it costs when each of two settings needs pieces that the other gives: one of the two
        must be made twice [hundredths of a minute].

    Attributes
    ----------
    value
        The work of the sheets that are counted, labels apart [hundredths of a minute].
    """

    rates: Rates
    circle: int = 0
    value: int = 0
    _known: dict[int, int] = field(default_factory=dict)

    def price(self, work: SheetWork) -> int:
        """What a sheet would add."""
        rates, known = self.rates, self._known
        value = work.own
        for set_up in work.set_ups.difference(known):
            value += rates.stop if takes_stop(set_up) else rates.fence
        split = len(work.ways.difference(known)) + work.lays
        if split:
            value += rates.split_group * (split - len(work.members.difference(known)))
        lies = work.lies.difference(known)
        if lies:
            value += rates.flip * self._flips(lies, work.lies)
        if self.circle:
            value += self.circle * self._circles(work.orders)
        return value

    def add(self, work: SheetWork) -> None:
        """Count a sheet."""
        self.value += self.price(work)
        known = self._known
        for one in work.shared:
            known[one] = known.get(one, 0) + 1

    def take(self, work: SheetWork) -> None:
        """Count a sheet no longer."""
        known = self._known
        for one in work.shared:
            if known[one] == 1:
                del known[one]
            else:
                known[one] -= 1
        self.value -= self.price(work)

    def _circles(self, own: frozenset[int]) -> int:
        """Pairs of settings that come to need each other."""
        known, circles = self._known, 0
        for pair in own.difference(known):
            back = reversed_pair(pair)
            circles += back in known or (pair < back and back in own)
        return circles

    def _flips(self, fresh: frozenset[int], own: frozenset[int]) -> int:
        """Groups that come to lie both ways."""
        known, flips = self._known, 0
        for lie in fresh:
            other = lie - 2 if lie % 4 == 2 else lie + 2
            flips += other in known or (lie < other and other in own)
        return flips
