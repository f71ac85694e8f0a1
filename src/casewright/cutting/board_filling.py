"""The most valuable filling of a board: the knapsack of lengths, exactly, in whole numbers."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from casewright.cutting.board_fullest import Batch, batches
from casewright.cutting.board_task import Counts

__all__ = ["Fillings", "best_fillings"]

_Ints = npt.NDArray[np.int64]

_MOST_CELLS = 30_000_000
_MOST_STATES = 200_000
_MOST_WORTH = 2**62


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
    wanted = [count if worth > 0 else 0 for count, worth in zip(counts, worths, strict=True)]
    chosen = list(batches(sizes, wanted, room))
    if sum(worths[batch.kind] * batch.pieces for batch in chosen) > _MOST_WORTH:
        return None
    if len(chosen) * (room + 1) <= _MOST_CELLS:
        return _Table(worths, chosen, room)
    states = _States(worths, chosen, room)
    return states if states.is_whole else None


class _Table(Fillings):
    """One cell for every length."""

    def __init__(self, worths: Sequence[int], chosen: list[Batch], room: int) -> None:
        super().__init__(len(worths), len(chosen) * (room + 1))
        best: _Ints = np.zeros(room + 1, np.int64)
        self._taken: list[tuple[Batch, npt.NDArray[np.bool_]]] = []
        for batch in chosen:
            other = best[: room + 1 - batch.size] + worths[batch.kind] * batch.pieces
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

    def __init__(self, worths: Sequence[int], chosen: list[Batch], room: int) -> None:
        lengths: _Ints = np.zeros(1, np.int64)
        values: _Ints = np.zeros(1, np.int64)
        self._before: list[tuple[Batch, _Ints, int]] = []
        work = 0
        for batch in chosen:
            plain = len(lengths)
            fit = int(np.searchsorted(lengths, room - batch.size, side="right"))
            joined = np.concatenate([lengths, lengths[:fit] + batch.size])
            worth = np.concatenate([values, values[:fit] + worths[batch.kind] * batch.pieces])
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
        super().__init__(len(worths), work)
        self.is_whole = len(self._before) == len(chosen) and len(lengths) <= _MOST_STATES
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
