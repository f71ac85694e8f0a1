"""Boards filled one after the other: greedily at first, then every way while the limits last.

Lengths are grown by one kerf, so that pieces may touch.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice
from math import ceil
from typing import NamedTuple

__all__ = ["BoardSearch", "BoardTask", "Kind", "UsedBoard"]

_MOST_FILLINGS = 400

_Counts = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Kind:
    """Boards of one length, grown by a kerf; how many there are (None: no end); their price."""

    size: int
    count: int | None
    price: int


@dataclass(frozen=True, slots=True)
class BoardTask:
    """Kinds of boards, and lengths to cut, grown by a kerf, longest first, with their counts."""

    kinds: tuple[Kind, ...]
    sizes: tuple[int, ...]
    counts: tuple[int, ...]


class UsedBoard(NamedTuple):
    """One board: its kind, and how many of each length come out of it."""

    kind: int
    counts: _Counts


@dataclass(frozen=True, slots=True)
class _Stage:
    """A half-made plan: what is left, what it has cost, the boards used, how to go on."""

    left: _Counts
    price: int
    used: _Counts
    choices: Iterator[UsedBoard]


class BoardSearch:
    """Looks for the cheapest boards.

    Parameters
    ----------
    task
        What to cut.
    is_over
        Asked with the number of fillings tried; says whether to give up.
    """

    def __init__(self, task: BoardTask, is_over: Callable[[int], bool]) -> None:
        self.task = task
        self.nodes = 0
        self.is_exhaustive = True
        self._is_over = is_over
        self._rate = min(Fraction(kind.price, kind.size) for kind in task.kinds)

    def run(self, enough: int) -> list[UsedBoard] | None:
        """The cheapest boards that give every piece; None when none were found.

        Stops at a price of `enough`. `is_exhaustive` tells afterwards whether every way was
        looked at, so that the answer is the best there is.
        """
        best = self._greedy()
        least = None if best is None else self._price(best)
        seen: dict[tuple[_Counts, _Counts], int] = {}
        none = (0,) * len(self.task.kinds)
        stack = [_Stage(self.task.counts, 0, none, self._choices(self.task.counts, none))]
        path: list[UsedBoard] = []
        while stack and (least is None or least > enough):
            if self._is_over(self.nodes):
                self.is_exhaustive = False
                break
            stage = stack[-1]
            filling = next(stage.choices, None)
            if filling is None:
                stack.pop()
                del path[max(0, len(stack) - 1) :]
                continue
            self.nodes += 1
            after = self._after(stage, filling)
            if self._is_hopeless(after, least, seen):
                continue
            del path[len(stack) - 1 :]
            path.append(filling)
            if not any(after.left):
                best, least = list(path), after.price
            else:
                stack.append(after)
        return best

    def fill_as_much(self) -> list[UsedBoard]:
        """Boards with as much cut from them as the finite stock seems to allow."""
        left, boards = self.task.counts, []
        order = sorted(range(len(self.task.kinds)), key=lambda i: -self.task.kinds[i].size)
        for index in order:
            kind = self.task.kinds[index]
            made = 0
            while any(left) and (kind.count is None or made < kind.count):
                ways = islice(self._fillings(kind.size, left), _MOST_FILLINGS)
                counts = max(ways, key=self._length)
                if not any(counts):
                    break
                boards.append(UsedBoard(index, counts))
                left = _minus(left, counts)
                made += 1
        return boards

    def _length(self, counts: _Counts) -> int:
        return sum(n * size for n, size in zip(counts, self.task.sizes, strict=True))

    def _price(self, boards: list[UsedBoard]) -> int:
        return sum(self.task.kinds[board.kind].price for board in boards)

    def _greedy(self) -> list[UsedBoard] | None:
        """Longest pieces first, always from the board that is cheapest for what comes of it."""
        left, boards = self.task.counts, []
        used = [0] * len(self.task.kinds)
        while any(left):
            ways = [
                UsedBoard(i, counts)
                for i, kind in enumerate(self.task.kinds)
                if kind.count is None or used[i] < kind.count
                for counts in islice(self._holding_longest(kind.size, left), 1)
            ]
            if not ways:
                return None
            board = min(ways, key=self._dearness)
            used[board.kind] += 1
            boards.append(board)
            left = _minus(left, board.counts)
        return boards

    def _dearness(self, board: UsedBoard) -> tuple[int, int]:
        kind = self.task.kinds[board.kind]
        length = self._length(board.counts)
        return (kind.price << 40) // length, kind.size - length

    def _choices(self, left: _Counts, used: _Counts) -> Iterator[UsedBoard]:
        """Every board that could hold the longest piece left, least dear first."""
        ways: list[UsedBoard] = []
        for index, kind in enumerate(self.task.kinds):
            if kind.count is None or used[index] < kind.count:
                found = list(islice(self._holding_longest(kind.size, left), _MOST_FILLINGS + 1))
                if len(found) > _MOST_FILLINGS:
                    self.is_exhaustive = False
                ways += [UsedBoard(index, counts) for counts in found[:_MOST_FILLINGS]]
        yield from sorted(ways, key=self._dearness)

    def _holding_longest(self, size: int, left: _Counts) -> Iterator[_Counts]:
        longest = next(i for i, count in enumerate(left) if count)
        room = size - self.task.sizes[longest]
        if room >= 0:
            for counts in self._fillings(room, _plus(left, longest, -1)):
                yield _plus(counts, longest, 1)

    def _fillings(self, room: int, left: _Counts) -> Iterator[_Counts]:
        """All ways to fill a board that leave no room for a further piece, long pieces first."""
        sizes = self.task.sizes
        tails = [0]
        for size, count in zip(reversed(sizes), reversed(left), strict=True):
            tails.append(tails[-1] + size * count)
        tails.reverse()
        counts = [0] * len(sizes)
        at = 0
        while at >= 0:
            for i in range(at, len(sizes)):
                counts[i] = min(left[i], room // sizes[i])
                room -= counts[i] * sizes[i]
            skipped = [size for i, size in enumerate(sizes) if counts[i] < left[i]]
            if not skipped or room < skipped[-1]:
                yield tuple(counts)
            at, room = self._step_back(counts, room, tails)

    def _step_back(self, counts: list[int], room: int, tails: list[int]) -> tuple[int, int]:
        """Take out a late piece for which later, shorter ones can make up; -1 when none is left.

        Returns where to fill up from, and the room there.
        """
        sizes = self.task.sizes
        for i in range(len(sizes) - 1, -1, -1):
            if not counts[i]:
                continue
            if room + sizes[i] - tails[i + 1] < sizes[i]:
                counts[i] -= 1
                return i + 1, room + sizes[i]
            room += counts[i] * sizes[i]
            counts[i] = 0
        return -1, room

    def _after(self, stage: _Stage, board: UsedBoard) -> _Stage:
        left = _minus(stage.left, board.counts)
        used = _plus(stage.used, board.kind, 1)
        price = stage.price + self.task.kinds[board.kind].price
        return _Stage(left, price, used, self._choices(left, used))

    def _is_hopeless(
        self, stage: _Stage, least: int | None, seen: dict[tuple[_Counts, _Counts], int]
    ) -> bool:
        if least is not None and stage.price + self._at_least(stage) >= least:
            return True
        key = stage.left, stage.used
        if seen.get(key, stage.price + 1) <= stage.price:
            return True
        seen[key] = stage.price
        return False

    def _at_least(self, stage: _Stage) -> int:
        """What the length that is left costs at the least, rounded up."""
        return ceil(self._length(stage.left) * self._rate)


def _plus(counts: _Counts, index: int, step: int) -> _Counts:
    return (*counts[:index], counts[index] + step, *counts[index + 1 :])


def _minus(counts: _Counts, taken: _Counts) -> _Counts:
    return tuple(a - b for a, b in zip(counts, taken, strict=True))
