"""How boards are mixed: the linear programme over fillings, as HiGHS solves it.

Its floating-point answer only proposes; whoever uses it checks in whole numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import highspy
import numpy as np

from casewright.cutting.board_task import UNCUT, BoardTask, UsedBoard, plus

__all__ = ["SHARE", "Master", "Mixed"]

SHARE = 2**20
"""Parts of a board in which shares of a mix are told."""

_NOTHING = SHARE >> 12

_FINE = 2**40
_DEAR = 64


class Mixed(NamedTuple):
    """What a mix of fillings costs.

    Parameters
    ----------
    cost
        In scaled units, rounded.
    worths, rents
        What one more piece of each length would cost, and one board less of each kind; scaled
        and rounded.
    """

    cost: int
    worths: tuple[int, ...]
    rents: tuple[int, ...]


class _Silent(highspy.Highs):
    """HiGHS without callbacks: setting them up would print a greeting."""

    def enableCallbacks(self) -> None:  # noqa: N802
        """None are wanted."""


class Master:
    """The programme of one task: at least the wanted pieces, at most the boards there are.

    Attributes
    ----------
    scale
        Parts to one unit of cost in what `solve` gives.
    pivots
        Made so far [-].
    """

    def __init__(self, task: BoardTask) -> None:
        self.task = task
        self.pivots = 0
        self.fillings: list[UsedBoard] = []
        self._known: set[UsedBoard] = set()
        self._top = max(1, *(kind.price for kind in task.kinds), *(task.uncut or ()))
        self.scale = max(1, _FINE // self._top)
        self._solver = _Silent()  # type: ignore[no-untyped-call]
        for name, value in (("output_flag", False), ("threads", 1), ("presolve", "off")):
            self._solver.setOptionValue(name, value)
        for count in task.counts:
            self._solver.addRow(count, highspy.kHighsInf, 0, [], [])
        self._rows: dict[int, int] = {}
        for index, kind in enumerate(task.kinds):
            if kind.count is not None:
                self._rows[index] = len(task.sizes) + len(self._rows)
                self._solver.addRow(-highspy.kHighsInf, kind.count, 0, [], [])
        self._add_ways_out()

    def _add_ways_out(self) -> None:
        """Leaving a piece uncut, at its cost or at one too high to be chosen."""
        none = (0,) * len(self.task.sizes)
        for index in range(len(none)):
            filling = UsedBoard(UNCUT, plus(none, index, 1))
            self._known.add(filling)
            self.fillings.append(filling)
            cost = self.task.uncut[index] / self._top if self.task.uncut else _DEAR
            self._solver.addCol(cost, 0, highspy.kHighsInf, 1, [index], [1])

    def add(self, filling: UsedBoard) -> bool:
        """Offer one more filling; whether it is new."""
        if filling in self._known:
            return False
        self._known.add(filling)
        self.fillings.append(filling)
        rows = [row for row, count in enumerate(filling.counts) if count]
        counts = [filling.counts[row] for row in rows]
        if filling.kind in self._rows:
            rows.append(self._rows[filling.kind])
            counts.append(1)
        cost = self.task.kinds[filling.kind].price / self._top
        self._solver.addCol(
            cost, 0, highspy.kHighsInf, len(rows), np.array(rows, np.int32), np.array(counts)
        )
        return True

    def limit(self, left: Sequence[int], stock: Sequence[int | None]) -> None:
        """Ask for other numbers of pieces, from other numbers of boards."""
        for row, count in enumerate(left):
            self._solver.changeRowBounds(row, count, highspy.kHighsInf)
        for kind, row in self._rows.items():
            self._solver.changeRowBounds(row, -highspy.kHighsInf, stock[kind] or 0)

    def shares(self) -> list[tuple[int, UsedBoard]]:
        """How much of each filling the last mix has, in `SHARE`-ths of a board, most first."""
        found = [
            (round(share * SHARE), filling)
            for share, filling in zip(
                self._solver.getSolution().col_value, self.fillings, strict=True
            )
            if share > 0
        ]
        return sorted((one for one in found if one[0] > _NOTHING), key=lambda one: -one[0])

    def solve(self) -> Mixed:
        """The cheapest mix of the fillings offered so far."""
        self._solver.run()
        answer, facts = self._solver.getSolution(), self._solver.getInfo()
        self.pivots += max(1, facts.simplex_iteration_count)
        whole = self._top * self.scale
        duals = [round(dual * whole) for dual in answer.row_dual]
        wanted = len(self.task.sizes)
        rents = [0] * len(self.task.kinds)
        for kind, row in self._rows.items():
            rents[kind] = max(0, -duals[row])
        return Mixed(
            round(facts.objective_function_value * whole),
            tuple(max(0, dual) for dual in duals[:wanted]),
            tuple(rents),
        )
