"""Plans at once: board after board, each as good as it gets, without looking ahead."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import islice

from casewright.cutting.board_fullest import fullest
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
from casewright.cutting.board_ways import ways_holding

__all__ = ["fill_fully", "fill_greedily"]

_Fill = Callable[[BoardTask, Counts, int], Iterator[UsedBoard]]


def fill_greedily(task: BoardTask, left: Counts, stock: Stock) -> list[UsedBoard] | None:
    """Longest pieces first, each board taken by whatever is longest and fits.

    The board is always the one that is cheapest for what comes of it.

    Returns
    -------
    None when the boards do not suffice and every piece must be cut.
    """
    return _fill(task, left, stock, _longest_first)


def fill_fully(task: BoardTask, left: Counts, stock: Stock) -> list[UsedBoard] | None:
    """Longest pieces first, each board filled up as far as lengths can fill it.

    Returns
    -------
    None when the boards do not suffice and every piece must be cut.

    Sources
    -------
    Gupta and Ho 1999, minimum bin slack, with the longest piece in every bin.
    """
    return _fill(task, left, stock, _fullest_first)


def _fill(task: BoardTask, left: Counts, stock: Stock, fill: _Fill) -> list[UsedBoard] | None:
    boards: list[UsedBoard] = []
    while any(left):
        longest = next(i for i, count in enumerate(left) if count)
        offered = [kind for kind, count in enumerate(stock) if count != 0]
        ways = [board for kind in offered for board in fill(task, left, kind)]
        if not ways and task.uncut is None:
            return None
        uncut = UsedBoard(UNCUT, plus((0,) * len(left), longest, 1))
        board = min(ways, key=lambda board: _dearness(task, board), default=uncut)
        repeat = _repeats(board, left, stock)
        boards += [board] * repeat
        for _ in range(repeat):
            left, stock = minus(left, board.counts), without(stock, board.kind)
    return boards


def _longest_first(task: BoardTask, left: Counts, kind: int) -> Iterator[UsedBoard]:
    longest = next(i for i, count in enumerate(left) if count)
    ways = ways_holding(longest, task.kinds[kind].rooms, task.sizes, left)
    for counts in islice(ways, 1):
        yield UsedBoard(kind, counts)


def _fullest_first(task: BoardTask, left: Counts, kind: int) -> Iterator[UsedBoard]:
    longest = next(i for i, count in enumerate(left) if count)
    rooms = sorted(task.kinds[kind].rooms)
    at = next((at for at, room in enumerate(rooms) if room >= task.sizes[longest]), None)
    if at is None:
        return
    rooms[at] -= task.sizes[longest]
    counts = plus((0,) * len(left), longest, 1)
    for room in rooms:
        more = fullest(task.sizes, minus(left, counts), room)
        counts = tuple(map(sum, zip(counts, more, strict=True)))
    yield UsedBoard(kind, counts)


def _repeats(board: UsedBoard, left: Counts, stock: Stock) -> int:
    """How often a filling can be cut in the same way."""
    times = min(n // count for n, count in zip(left, board.counts, strict=True) if count)
    count = None if board.kind == UNCUT else stock[board.kind]
    return times if count is None else min(times, count)


def _dearness(task: BoardTask, board: UsedBoard) -> tuple[int, int]:
    length = task.length(board.counts)
    return (task.price(board) << 40) // length, task.kinds[board.kind].size - length
