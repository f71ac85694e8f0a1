"""A lower bound for three-stage cutting by column generation, checked in whole numbers.

The linear programme over sheets only proposes what each part is worth; whatever it proposes, no
sheet can be worth more than the pricing finds, and this alone makes the bound.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Any

import highspy
import numpy as np

from casewright.cutting.bounds import lift
from casewright.cutting.clear_area import clear_area
from casewright.cutting.pricing import Column, Pricing
from casewright.cutting.shapes import Action, Found, Task

__all__ = ["Columns"]

_FINE = 1 << 40
_DEAR = 4
_CELLS, _SWEEP, _SOLVED = 1_250, 1_500, 1_000
"""Cells that count as one node; nodes for which a pricing counts besides, and one mix (measured:
all take about as long as nodes of the searches)."""

_STEADY, _OF = 9, 10


class _Silent(highspy.Highs):
    """HiGHS without callbacks: setting them up would print a greeting."""

    def enableCallbacks(self) -> None:  # noqa: N802
        """None are wanted."""


class Columns:
    """Column generation over the sheets of one problem, in all frames at once.

    Parameters
    ----------
    tasks
        The problem in each frame; shapes and bins in the same order.
    is_over
        Whether to give up; `nodes` counts the work so far.

    Attributes
    ----------
    bound
        The best bound so far, in the measure of the bins' prices.
    values
        What one part of each shape is worth, by the values that gave the best bound; of these,
        no sheet holds more than it costs times `scale`.
    """

    def __init__(self, tasks: Sequence[Task], is_over: Callable[[], bool]) -> None:
        self.bins = tasks[0].bins
        self.wanted = tuple(s.count for s in tasks[0].shapes)
        self._areas = [s.du * s.dv for s in tasks[0].shapes]
        self._clear = {
            b.index: clear_area(b, tasks[0].shapes, tasks[0].kerf) for b in self.bins if b.defects
        }
        self.nodes = 0
        self.bound = 0
        self._best = Fraction(0)
        self._is_over = is_over
        self._pricings = [Pricing(task, is_over) for task in tasks]
        self._scale = max(1, _FINE // max(1, *(b.price for b in self.bins)))
        rate = max(Fraction(b.price * self._scale, b.area) for b in self.bins)
        self.values = tuple(int(s.du * s.dv * rate) for s in tasks[0].shapes)
        self._known: dict[Column, None] = {}
        self._least: dict[int, int] = {}
        self._start()

    @property
    def effort(self) -> int:
        """Nodes that one round counts for."""
        cells = sum(pricing.cells for pricing in self._pricings)
        return cells // _CELLS + _SWEEP * len(self._pricings) + _SOLVED

    def _start(self) -> None:
        self._solver = _Silent()  # type: ignore[no-untyped-call]
        for name, value in (("output_flag", False), ("threads", 1), ("presolve", "off")):
            self._solver.setOptionValue(name, value)
        for count in self.wanted:
            self._solver.addRow(count, highspy.kHighsInf, 0, [], [])
        self._rows: dict[int, int] = {}
        for b in self.bins:
            if b.count is not None or self.is_priced:
                self._rows[b.index] = len(self.wanted) + len(self._rows)
                self._solver.addRow(-highspy.kHighsInf, _up_to(b.count), 0, [], [])
        dear = _DEAR * max(1, *(b.price for b in self.bins))
        for row in range(len(self.wanted)):
            self._solver.addCol(dear, 0, highspy.kHighsInf, 1, [row], [1])

    @property
    def is_priced(self) -> bool:
        """Whether stock differs in price."""
        return len({b.price for b in self.bins}) > 1

    def cap(self, money: int) -> bool:
        """Look at plans alone that cost no more than this, where stock differs in price.

        None of them takes more of a stock than the money buys, nor less of it than the bound
        leaves when there is no more of all the others. The bound then holds for such plans.

        Returns
        -------
        Whether that leaves less to choose from than before.
        """
        before = self.bins, dict(self._least)
        for index in self._rows if self.is_priced else ():
            b = self.bins[index]
            if not b.price:
                continue
            most = min(money // b.price, money if b.count is None else b.count)
            self.bins = (*self.bins[:index], replace(b, count=most), *self.bins[index + 1 :])
            others = [(o.price, o.count) for o in self.bins if o.index != index]
            if all(count is not None or not price for price, count in others):
                rest = self.bound - sum(price * (count or 0) for price, count in others)
                self._least[index] = min(most, max(self._least.get(index, 0), -(-rest // b.price)))
        return (self.bins, self._least) != before

    def offer(self, columns: Iterable[Column]) -> bool:
        """Let the mix use more sheets; whether any was new."""
        fresh = [column for column in dict.fromkeys(columns) if column not in self._known]
        self._known.update(dict.fromkeys(fresh))
        for column in fresh:
            rows = [row for row, count in enumerate(column.counts) if count]
            counts = [column.counts[row] for row in rows]
            if column.bin in self._rows:
                rows.append(self._rows[column.bin])
                counts.append(1)
            self._solver.addCol(
                self.bins[column.bin].price, 0, highspy.kHighsInf, len(rows),
                np.array(rows, np.int32), np.array(counts),
            )  # fmt: skip
        return bool(fresh)

    def offer_plan(self, found: Found) -> None:
        """Let the mix use the sheets of a plan."""
        sheets: list[tuple[int, list[int]]] = []
        for laid in found.laid:
            if laid.action == Action.NEW_SHEET:
                sheets.append((laid.bin, [0] * len(self.wanted)))
            sheets[-1][1][laid.shape] += 1
        self.offer(Column(index, tuple(counts)) for index, counts in sheets)

    def shares(
        self, wanted: Sequence[int], stock: Sequence[int | None], *, afresh: bool = False
    ) -> list[tuple[int, Column]]:
        """The cheapest mix for some of the parts from some of the stock.

        Parameters
        ----------
        wanted, stock
            How many are left, by shape and by bin.
        afresh
            Whether to look for other sheets that suit just these parts.

        Returns
        -------
        Each sheet with how many of it the mix takes, in thousandths.
        """
        for row, count in enumerate(wanted):
            self._solver.changeRowBounds(row, count, highspy.kHighsInf)
        for index, row in self._rows.items():
            most = stock[index]
            most = self.bins[index].count if most is None else most
            self._solver.changeRowBounds(row, -highspy.kHighsInf, _up_to(most))
        self._solver.run()
        if afresh and self.offer(self._price(self._duals())):
            self._solver.run()
        found = self._solver.getSolution().col_value[len(self.wanted) :]
        return [
            (round(share * 1000), column) for share, column in zip(found, self._known, strict=True)
        ]

    def _all_wanted(self) -> None:
        """Mix for all parts from all stock again."""
        for row, count in enumerate(self.wanted):
            self._solver.changeRowBounds(row, count, highspy.kHighsInf)
        for index, row in self._rows.items():
            most = _up_to(self.bins[index].count)
            self._solver.changeRowBounds(row, self._least.get(index, 0), most)

    def raise_to(self, target: int, most: int | None = None) -> int:
        """Raise the bound until it reaches a target or can rise no more, with so many nodes.

        Returns
        -------
        The best bound so far.
        """
        self._all_wanted()
        self.offer(self._price(self.values))
        while self.bound < target and not self._is_over():
            if most is not None and self.nodes > most:
                break
            cost, duals = self._mix()
            if self._rounded(cost) <= self.bound:
                break
            point = tuple(
                (_STEADY * best + (_OF - _STEADY) * dual) // _OF
                for best, dual in zip(self.values, duals, strict=True)
            )
            if not self.offer(self._price(point)) and not self.offer(self._price(duals)):
                break
        return self.bound

    def _mix(self) -> tuple[Fraction, tuple[int, ...]]:
        """Cost of the cheapest mix of the sheets offered, and what each part adds to it."""
        self._solver.run()
        self.nodes += _SOLVED
        cost = round(self._solver.getInfo().objective_function_value * _FINE)
        # A hair less, as the solver's last digits are not to be trusted; only hope hangs on it.
        return Fraction(cost, _FINE) - Fraction(1, 1 << 20), self._duals()

    def _duals(self) -> tuple[int, ...]:
        duals = self._solver.getSolution().row_dual[: len(self.wanted)]
        return tuple(max(0, round(dual * self._scale)) for dual in duals)

    def _price(self, values: Sequence[int]) -> list[Column]:
        """The best sheets by these values, and the bound that follows from them."""
        found = [pricing.best(values) for pricing in self._pricings]
        if not all(found):
            return []
        self.nodes += self.effort - _SOLVED
        worths = [max(worth for worth, _ in sheets) for sheets in zip(*found, strict=True)]
        for index, area in self._clear.items():
            worths[index] = min(worths[index], self._most_on(area, values))
        bound = self._bound(values, worths)
        if bound > self._best:
            self._best, self.values = bound, tuple(values)
            self.bound = self._rounded(bound)
        return [column for sheets in found for _, column in sheets]

    def _most_on(self, clear: int, values: Sequence[int]) -> int:
        """The most that parts on so much clear area are worth: defects are not priced."""
        dearest = max(Fraction(v, area) for v, area in zip(values, self._areas, strict=True))
        return int(dearest * clear)

    def _bound(self, values: Sequence[int], worths: Sequence[int]) -> Fraction:
        """The most that these values prove: each sheet holds at most its worth of parts.

        Scaled so that some stock is worth just its price, or not at all; stock that there is only
        so much of may be worth more, which is taken off for every piece of it. Stock of which
        some is taken in any case may be worth less, which is put on for those.
        """
        total = sum(n * value for n, value in zip(self.wanted, values, strict=True))
        pairs = list(zip(self.bins, worths, strict=True))
        best = Fraction(0)
        scales = {(b.price, worth) for b, worth in pairs if worth} | {(1, self._scale)}
        for price, most in scales:
            share = Fraction(price, most)
            rents = [(b, worth * share - b.price) for b, worth in pairs]
            if any(b.count is None and rent > 0 for b, rent in rents):
                continue
            paid = sum(
                rent * ((b.count or 0) if rent > 0 else self._least.get(b.index, 0))
                for b, rent in rents
            )
            best = max(best, total * share - paid)
        return best

    def _rounded(self, cost: Fraction) -> int:
        return lift(self.bins, ceil(cost))


def _up_to(count: int | None) -> Any:
    """A bound as the solver takes it."""
    return highspy.kHighsInf if count is None else count
