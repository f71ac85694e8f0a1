"""The cheapest mix of fillings in fractions of boards, with new fillings made where they pay."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from casewright.cutting.board_bound import Worths, next_price
from casewright.cutting.board_filling import Fillings, best_fillings
from casewright.cutting.board_master import Master, Mixed
from casewright.cutting.board_task import BoardTask, Counts, Stock, UsedBoard, plus

__all__ = ["Mix", "MixSearch"]

_CELLS_A_NODE = 40_000
_VARIANTS = 12


@dataclass(frozen=True, slots=True)
class Mix:
    """The outcome for some pieces and boards.

    Parameters
    ----------
    bound
        Least cost of any plan for them, checked in whole numbers.
    worths
        The numbers that show it.
    """

    bound: int
    worths: Worths | None


class MixSearch:
    """Mixes for one task and for what is left of it on the way to a plan.

    Parameters
    ----------
    task
        What to cut.
    is_over
        Asked with the work done; says whether to give up.
    """

    def __init__(self, task: BoardTask, is_over: Callable[[int], bool]) -> None:
        self.task = task
        self.master = Master(task)
        self._is_over = is_over
        self._cells = 0
        self._spent = 0
        self._room = max(max(kind.rooms) for kind in task.kinds)

    @property
    def nodes(self) -> int:
        """Work done so far [-]."""
        return self.master.pivots + self._cells // _CELLS_A_NODE + self._spent

    def spend(self, nodes: int) -> None:
        """Count work done elsewhere on this task."""
        self._spent += nodes

    def run(self, left: Counts, stock: Stock) -> Mix:
        """Mix fillings until no better one is left, or until the bound cannot grow."""
        task, scale = self.task, self.master.scale
        self.master.limit(left, stock)
        best = Mix(0, None)
        while True:
            mixed = self.master.solve()
            fillings = best_fillings(task.sizes, left, mixed.worths, self._room)
            if fillings is None:
                return best
            self._cells += fillings.work
            worths = Worths(task, mixed.worths, scale, fillings)
            bound = next_price(task, worths.bound(left, stock))
            if best.worths is None or bound > best.bound:
                best = Mix(bound, worths)
            enough = next_price(task, -(-(mixed.cost - (scale >> 16)) // scale))
            if best.bound >= enough or self._is_over(self.nodes):
                return best
            if not self._offer(mixed, fillings, left, stock):
                return best

    def _offer(self, mixed: Mixed, fillings: Fillings, left: Counts, stock: Stock) -> bool:
        """Add fillings worth more than their board; whether there were any."""
        found = [
            self.master.add(filling)
            for index, kind in enumerate(self.task.kinds)
            if stock[index] != 0
            for filling in self._worthy(
                index, mixed, fillings, left, kind.price * self.master.scale + mixed.rents[index]
            )
        ]
        return any(found)

    def _worthy(
        self, index: int, mixed: Mixed, fillings: Fillings, left: Counts, cost: int
    ) -> Iterator[UsedBoard]:
        rooms = self.task.kinds[index].rooms
        least = cost + (self.master.scale >> 20)
        if sum(map(fillings.value, rooms)) <= least:
            return
        parts = [fillings.counts(room) for room in rooms]
        yield UsedBoard(index, tuple(map(sum, zip(*parts, strict=True))))
        if len(rooms) > 1:
            return
        variants = []
        for at, (size, worth) in enumerate(zip(self.task.sizes, mixed.worths, strict=True)):
            rest = rooms[0] - size
            if left[at] and rest >= 0:
                value = worth + fillings.value(rest)
                if value > least:
                    variants.append((-value, at, rest))
        for _, at, rest in sorted(variants)[:_VARIANTS]:
            counts = plus(fillings.counts(rest), at, 1)
            if counts[at] <= left[at]:
                yield UsedBoard(index, counts)
