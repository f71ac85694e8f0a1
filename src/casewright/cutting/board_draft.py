"""A plan for boards in the making."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from dataclasses import dataclass, field

from casewright.cutting.board_task import (
    UNCUT,
    BoardTask,
    Counts,
    Stock,
    UsedBoard,
    minus,
    without,
)

__all__ = ["Draft"]


@dataclass(slots=True)
class Draft:
    """Boards fixed so far.

    Parameters
    ----------
    task
        What to cut.
    left, stock
        Pieces still to be cut, and the boards that are left for them.
    boards, price
        Boards fixed, and what they cost together.
    """

    task: BoardTask
    left: Counts
    stock: Stock
    boards: list[UsedBoard] = field(default_factory=list)
    price: int = 0

    @classmethod
    def of(cls, task: BoardTask) -> Draft:
        """One without any boards yet."""
        return cls(task, task.counts, task.stock)

    def fix(self, filling: UsedBoard, times: int) -> int:
        """Cut so many boards by a filling, as far as pieces and stock go; how many were."""
        made = 0
        while made < times:
            counts = tuple(map(min, filling.counts, self.left))
            stock = None if filling.kind == UNCUT else self.stock[filling.kind]
            if stock == 0 or not any(counts):
                break
            board = UsedBoard(filling.kind, counts)
            self.boards.append(board)
            self.price += self.task.price(board)
            self.left = minus(self.left, counts)
            self.stock = without(self.stock, filling.kind)
            made += 1
        return made

    def reopened(self, rng: random.Random, pieces: int) -> Draft:
        """The same with boards taken back, drawn by lot, up to so many pieces left to cut."""
        boards = list(self.boards)
        rng.shuffle(boards)
        loose = sum(self.left)
        while boards and loose + sum(boards[-1].counts) <= pieces:
            loose += sum(boards.pop().counts)
        draft = Draft.of(self.task)
        for board in boards:
            draft.fix(board, 1)
        return draft
