"""The most valuable filling of a board: the knapsack of lengths, exactly, in whole numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from casewright.cutting.board_task import Counts

__all__ = ["Fillings", "best_fillings"]

_Ints = npt.NDArray[np.int64]

_MOST_CELLS = 30_000_000
_MOST_STATES = 200_000
_MOST_WORTH = 2**62


class _Batch(NamedTuple):
    """So many pieces of one length, taken together or not at all."""

    kind: int
    pieces: int
    size: int
    worth: int


class Fillings:
    """The best fillings of every room up to the largest.

    Attributes
    ----------
    work
        Cells computed [-].
    """

    def __init__(self, kinds: int, work: int) -> None:
        self._kinds = kinds
        self.work = work

    def value(self, room: int) -> int:
        """Greatest worth of pieces that fit in a room."""
        raise NotImplementedError

    def counts(self, room: int) -> Counts:
        """Pieces that have this worth."""
        raise NotImplementedError


def best_fillings(
    sizes: Sequence[int], counts: Sequence[int], worths: Sequence[int], room: int
) -> Fillings | None:
    """Fill rooms with pieces of greatest worth.

    Parameters
    ----------
    sizes, counts, worths
        Length of each kind of piece, how many there are, what one is worth.
    room
        The largest room that will be asked for.

    Returns
    -------
    None when it would take too much memory, or when the worths are too great to be summed.
    """
    batches = list(_batches(sizes, counts, worths, room))
    if sum(batch.worth for batch in batches) > _MOST_WORTH:
        return None
    if len(batches) * (room + 1) <= _MOST_CELLS:
        return _Table(len(sizes), batches, room)
    states = _States(len(sizes), batches, room)
    return states if states.is_whole else None


def _batches(
    sizes: Sequence[int], counts: Sequence[int], worths: Sequence[int], room: int
) -> Iterator[_Batch]:
    """Pieces in batches of 1, 2, 4 and so on, of which every number can be put together."""
    for index, (size, count, worth) in enumerate(zip(sizes, counts, worths, strict=True)):
        left, pieces = min(count, room // size) if worth > 0 else 0, 1
        while left:
            pieces = min(pieces, left)
            yield _Batch(index, pieces, pieces * size, pieces * worth)
            left -= pieces
            pieces *= 2


class _Table(Fillings):
    """One cell for every length."""

    def __init__(self, kinds: int, batches: list[_Batch], room: int) -> None:
        super().__init__(kinds, len(batches) * (room + 1))
        best: _Ints = np.zeros(room + 1, np.int64)
        self._taken: list[tuple[_Batch, npt.NDArray[np.bool_]]] = []
        for batch in batches:
            other = best[: room + 1 - batch.size] + batch.worth
            rest = best[batch.size :]
            self._taken.append((batch, other > rest))
            np.maximum(rest, other, out=rest)
        self._best = best

    def value(self, room: int) -> int:
        return int(self._best[room])

    def counts(self, room: int) -> Counts:
        found = [0] * self._kinds
        for batch, taken in reversed(self._taken):
            if room >= batch.size and taken[room - batch.size]:
                found[batch.kind] += batch.pieces
                room -= batch.size
        return tuple(found)


class _States(Fillings):
    """Only lengths at which the worth grows; for rooms too large for a table."""

    def __init__(self, kinds: int, batches: list[_Batch], room: int) -> None:
        lengths: _Ints = np.zeros(1, np.int64)
        values: _Ints = np.zeros(1, np.int64)
        self._before: list[tuple[_Batch, _Ints, int]] = []
        work = 0
        for batch in batches:
            plain = len(lengths)
            fit = int(np.searchsorted(lengths, room - batch.size, side="right"))
            joined = np.concatenate([lengths, lengths[:fit] + batch.size])
            worth = np.concatenate([values, values[:fit] + batch.worth])
            order = np.lexsort((-worth, joined))
            ordered = worth[order]
            grows = np.ones(len(order), np.bool_)
            grows[1:] = ordered[1:] > np.maximum.accumulate(ordered)[:-1]
            order = order[grows]
            lengths, values = joined[order], worth[order]
            self._before.append((batch, order, plain))
            work += len(joined)
            if len(lengths) > _MOST_STATES:
                break
        super().__init__(kinds, work)
        self.is_whole = len(self._before) == len(batches) and len(lengths) <= _MOST_STATES
        self._lengths, self._values = lengths, values

    def value(self, room: int) -> int:
        return int(self._values[self._at(room)])

    def counts(self, room: int) -> Counts:
        found = [0] * self._kinds
        at = self._at(room)
        for batch, order, plain in reversed(self._before):
            at = int(order[at])
            if at >= plain:
                found[batch.kind] += batch.pieces
                at -= plain
        return tuple(found)

    def _at(self, room: int) -> int:
        return int(np.searchsorted(self._lengths, room, side="right")) - 1
