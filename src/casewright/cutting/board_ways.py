"""Every way to fill the rooms of a board, long pieces first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from casewright.cutting.board_task import Counts, minus, plus

__all__ = ["undominated", "ways_holding"]

_MOST_COMPARED = 16


def ways_holding(
    first: int, rooms: Sequence[int], sizes: Sequence[int], left: Counts
) -> Iterator[Counts]:
    """All ways to fill a board with a certain piece in it and no room for a further one.

    Parameters
    ----------
    first
        Index of the length that must be among them.
    rooms
        Where pieces may lie.
    sizes, left
        Lengths, longest first, and how many of each there are.
    """
    rest = plus(left, first, -1)
    tried: set[int] = set()
    for at, room in enumerate(rooms):
        if room in tried or room < sizes[first]:
            continue
        tried.add(room)
        others = (room - sizes[first], *rooms[:at], *rooms[at + 1 :])
        for counts in _ways(others, sizes, rest):
            yield plus(counts, first, 1)


def undominated(ways: Iterable[Counts]) -> Iterator[Counts]:
    """Leave out ways that another can replace piece by piece, each by one at least as long.

    Wherever else the longer pieces were to come from, the shorter ones fit in their stead.

    Parameters
    ----------
    ways
        To fill boards of one kind, long pieces first, as `ways_holding` gives them.

    Sources
    -------
    Martello and Toth 1990, Knapsack Problems, section 8.4 on dominance.
    """
    kept: list[list[int]] = []
    for counts in ways:
        row = [size for size, count in enumerate(counts) for _ in range(count)]
        if any(_replaces(other, row) for other in kept):
            continue
        if len(kept) < _MOST_COMPARED:
            kept.append(row)
        yield counts


def _replaces(other: list[int], row: list[int]) -> bool:
    return len(other) >= len(row) and all(a <= b for a, b in zip(other, row, strict=False))


def _ways(rooms: Sequence[int], sizes: Sequence[int], left: Counts) -> Iterator[Counts]:
    for counts in _fillings(rooms[0], sizes, left):
        if len(rooms) == 1:
            yield counts
        else:
            for more in _ways(rooms[1:], sizes, minus(left, counts)):
                yield tuple(map(sum, zip(counts, more, strict=True)))


def _fillings(room: int, sizes: Sequence[int], left: Counts) -> Iterator[Counts]:
    """All ways to fill one room that leave no space for a further piece."""
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
        at, room = _step_back(counts, room, sizes, tails)


def _step_back(
    counts: list[int], room: int, sizes: Sequence[int], tails: Sequence[int]
) -> tuple[int, int]:
    """Take out a late piece for which later, shorter ones can make up; -1 when none is left.

    Returns where to fill up from, and the room there.
    """
    for i in range(len(sizes) - 1, -1, -1):
        if not counts[i]:
            continue
        if room + sizes[i] - tails[i + 1] < sizes[i]:
            counts[i] -= 1
            return i + 1, room + sizes[i]
        room += counts[i] * sizes[i]
        counts[i] = 0
    return -1, room
