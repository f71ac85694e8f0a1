"""Boards filled one after the other in every way, while the limits last: the exact finish."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import islice

from casewright.cutting.board_bound import Worths, length_bound, next_price
from casewright.cutting.board_task import (
    UNCUT,
    BoardTask,
    Counts,
    Stock,
    UsedBoard,
    minus,
    plus,
    without,
)
from casewright.cutting.board_ways import undominated, ways_holding

__all__ = ["BoardSearch"]

_MOST_WAYS = 2_000
_WAYS_A_NODE = 8


@dataclass(frozen=True, slots=True)
class _Stage:
    """A half-made plan: what is left, from what, what it has cost, how to go on."""

    left: Counts
    stock: Stock
    price: int
    choices: Iterator[UsedBoard]


class BoardSearch:
    """Looks for the cheapest boards.

    The longest piece left is always next: some board must hold it. A half-made plan is given up
    when what is left cannot be had below the best price known.

    Parameters
    ----------
    task
        What to cut.
    worths
        What each piece is worth, for a bound on what is left; None: by length alone.
    is_over
        Asked with the number of fillings tried; says whether to give up.

    Attributes
    ----------
    nodes
        Fillings tried [-].
    is_exhaustive
        Whether every way was looked at, so that the answer of the last run is the best there is.
    """

    def __init__(
        self, task: BoardTask, worths: Worths | None, is_over: Callable[[int], bool]
    ) -> None:
        self.task = task
        self.nodes = 0
        self.is_exhaustive = True
        self._worths = worths
        self._is_over = is_over

    def run(self, left: Counts, stock: Stock, enough: int, below: int) -> list[UsedBoard] | None:
        """Boards that give every piece left.

        Parameters
        ----------
        left, stock
            Pieces to cut, and boards to cut them from.
        enough
            A price to be content with.
        below
            Only plans cheaper than this count.

        Returns
        -------
        The cheapest found; None when none were.
        """
        self.is_exhaustive = True
        best: list[UsedBoard] | None = None
        seen: dict[tuple[Counts, Stock], int] = {}
        stack = [_Stage(left, stock, 0, self._choices(left, stock, below))]
        path: list[UsedBoard] = []
        while stack and below > enough:
            if self._is_over(self.nodes):
                self.is_exhaustive = False
                break
            stage = stack[-1]
            filling = next(stage.choices, None)
            del path[len(stack) - 1 :]
            if filling is None:
                stack.pop()
                continue
            self.nodes += 1
            rest, price = minus(stage.left, filling.counts), stage.price + self.task.price(filling)
            boards = without(stage.stock, filling.kind)
            if self._is_hopeless(rest, boards, price, below, seen):
                continue
            path.append(filling)
            if any(rest):
                choices = self._choices(rest, boards, below - price)
                stack.append(_Stage(rest, boards, price, choices))
            else:
                best, below = list(path), price
        return best

    def _choices(self, left: Counts, stock: Stock, below: int) -> Iterator[UsedBoard]:
        """Every board that could hold the longest piece left, least dear first."""
        longest = next(i for i, count in enumerate(left) if count)
        ways: list[UsedBoard] = []
        for index, kind in enumerate(self.task.kinds):
            if stock[index] == 0 or kind.price >= below:
                continue
            holding = ways_holding(longest, kind.rooms, self.task.sizes, left)
            found = list(islice(holding, _MOST_WAYS + 1))
            self.nodes += len(found) // _WAYS_A_NODE
            if len(found) > _MOST_WAYS:
                self.is_exhaustive = False
            ways += [UsedBoard(index, counts) for counts in undominated(found[:_MOST_WAYS])]
        if self.task.uncut is not None:
            ways.append(UsedBoard(UNCUT, plus((0,) * len(left), longest, 1)))
        yield from sorted(dict.fromkeys(ways), key=self._dearness)

    def _dearness(self, board: UsedBoard) -> tuple[int, int, int]:
        price = self.task.price(board)
        length = self.task.length(board.counts)
        loss = 0
        if self._worths is not None:
            worth = sum(
                n * each for n, each in zip(board.counts, self._worths.each, strict=True) if n
            )
            loss = price * self._worths.scale - worth
            loss += 0 if board.kind == UNCUT else self._worths.rents[board.kind]
        return loss, (price << 40) // length, -length

    def _is_hopeless(
        self,
        left: Counts,
        stock: Stock,
        price: int,
        below: int,
        seen: dict[tuple[Counts, Stock], int],
    ) -> bool:
        if price >= below or price + self._at_least(left, stock) >= below:
            return True
        key = left, stock
        if seen.get(key, price + 1) <= price:
            return True
        seen[key] = price
        return False

    def _at_least(self, left: Counts, stock: Stock) -> int:
        """What the pieces that are left cost at the least."""
        if self._worths is None:
            return length_bound(self.task, left)
        return next_price(self.task, self._worths.bound(left, stock))
