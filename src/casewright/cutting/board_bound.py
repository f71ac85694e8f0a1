"""Lower bounds for boards, in whole numbers: what no plan can do without."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, gcd
from typing import TYPE_CHECKING

from casewright.cutting.board_task import BoardTask, Counts

if TYPE_CHECKING:  # it loads NumPy, which small plans do without
    from casewright.cutting.board_filling import Fillings

__all__ = ["Worths", "length_bound", "next_price"]

_MOST_SUMS = 200_000


class Worths:
    """What each length is worth, checked: no board can be filled with more than it costs.

    Any such numbers give a lower bound, wherever they come from, because every piece must come
    out of some board, or stay uncut at its own cost. A board of which there are only so many may
    be filled with more, if its rent makes up for it.

    Parameters
    ----------
    task
        Pieces and boards.
    worths
        One for each length, in `scale`-ths of the unit of prices.
    scale
        See `worths`.
    fillings
        The best fillings by these worths, for pieces at least as many as the task's.
    """

    def __init__(
        self, task: BoardTask, worths: Sequence[int], scale: int, fillings: Fillings
    ) -> None:
        self.scale = scale
        values = [sum(map(fillings.value, kind.rooms)) for kind in task.kinds]
        endless = [
            Fraction(kind.price * scale, value)
            for kind, value in zip(task.kinds, values, strict=True)
            if kind.count is None and value
        ]
        share = min([Fraction(1), *endless])
        top, under = share.numerator, share.denominator
        each = [worth * top // under for worth in worths]
        if task.uncut is not None:
            each = [min(worth, cost * scale) for worth, cost in zip(each, task.uncut, strict=True)]
        self.each = tuple(each)
        self.rents = tuple(
            0 if kind.count is None else max(0, ceil(value * share) - kind.price * scale)
            for kind, value in zip(task.kinds, values, strict=True)
        )

    def bound(self, left: Sequence[int], stock: Sequence[int | None]) -> int:
        """Least cost of cutting the pieces that are left from the stock that is left."""
        total = sum(n * worth for n, worth in zip(left, self.each, strict=True))
        total -= sum((n or 0) * rent for n, rent in zip(stock, self.rents, strict=True))
        return max(0, -(-total // self.scale))


def length_bound(task: BoardTask, left: Counts | None = None) -> int:
    """Least cost by length alone: bought by the piece of a board, cheapest length first."""
    if task.uncut is not None:
        return 0
    rest = task.length(task.counts if left is None else left)
    cost = Fraction(0)
    for kind in sorted(task.kinds, key=lambda kind: Fraction(kind.price, kind.size)):
        most = rest if kind.count is None else min(rest, kind.count * kind.size)
        cost += Fraction(most * kind.price, kind.size)
        rest -= most
    return next_price(task, ceil(cost))


def next_price(task: BoardTask, least: int) -> int:
    """The least sum of prices of boards that is not below a bound."""
    if task.uncut is not None:
        return least
    prices = {kind.price for kind in task.kinds if kind.price}
    step = gcd(*prices) if prices else 1
    steps = -(-least // step)
    if steps > _MOST_SUMS or len(prices) < 2:
        return max(steps * step, least)
    most = steps + max(prices) // step
    sums, mask = 1, (1 << most + 1) - 1
    for price in sorted(prices):
        shift = price // step
        while shift <= most:
            sums |= sums << shift & mask
            shift *= 2
    sums >>= steps
    return (steps + (sums & -sums).bit_length() - 1) * step if sums else steps * step
