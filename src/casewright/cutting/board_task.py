"""Boards to be filled with lengths, in whole numbers without a kerf.

Lengths and rooms are grown by one kerf, so that pieces may touch.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

__all__ = [
    "UNCUT", "BoardTask", "Counts", "Kind", "Stock", "UsedBoard", "minus", "plus", "without",
]  # fmt: skip

Counts = tuple[int, ...]
"""How many of each length."""

Stock = tuple[int | None, ...]
"""How many boards of each kind there are; None: no end."""

UNCUT = -1
"""Stands for the kind of board when a piece is left uncut."""


@dataclass(frozen=True, slots=True)
class Kind:
    """Boards of one kind.

    Parameters
    ----------
    rooms
        The stretches between defects that pieces may lie in, each grown by a kerf.
    count
        How many boards there are; None: no end.
    price
        Of one.
    """

    rooms: tuple[int, ...]
    count: int | None
    price: int

    @property
    def size(self) -> int:
        """All rooms together."""
        return sum(self.rooms)


class UsedBoard(NamedTuple):
    """One board: its kind, and how many of each length come out of it."""

    kind: int
    counts: Counts


@dataclass(frozen=True, slots=True)
class BoardTask:
    """Lengths to cut from kinds of boards at the least cost.

    Parameters
    ----------
    kinds
        At least one.
    sizes
        Lengths grown by a kerf, longest first.
    counts
        How many of each are wanted.
    uncut
        Cost of leaving one of each length uncut; None: all must be cut.
    """

    kinds: tuple[Kind, ...]
    sizes: tuple[int, ...]
    counts: Counts
    uncut: tuple[int, ...] | None = None

    @property
    def stock(self) -> Stock:
        """How many boards of each kind there are; None: no end."""
        return tuple(kind.count for kind in self.kinds)

    def length(self, counts: Sequence[int]) -> int:
        """Of so many pieces, grown."""
        return sum(n * size for n, size in zip(counts, self.sizes, strict=True))

    def price(self, board: UsedBoard) -> int:
        """What a board costs, or a piece that stays uncut."""
        if board.kind == UNCUT:
            return sum(n * cost for n, cost in zip(board.counts, self.uncut or (), strict=True))
        return self.kinds[board.kind].price

    def total(self, boards: Iterable[UsedBoard]) -> int:
        """What boards cost together."""
        return sum(self.price(board) for board in boards)


def plus(counts: Counts, index: int, step: int) -> Counts:
    """The counts with one of them changed."""
    return (*counts[:index], counts[index] + step, *counts[index + 1 :])


def minus(counts: Counts, taken: Counts) -> Counts:
    """What is left of the counts, none below zero."""
    return tuple(max(0, a - b) for a, b in zip(counts, taken, strict=True))


def without(stock: Stock, kind: int) -> Stock:
    """The stock after one board of a kind is taken."""
    count = None if kind == UNCUT else stock[kind]
    return stock if count is None else (*stock[:kind], count - 1, *stock[kind + 1 :])
