"""Guillotine cuts of any depth: sheets as pieces within pieces, taken apart and put back.

A sheet is divided along one axis, its pieces along the other, and so on, as deep as it goes. What
is free of a division lies together, so that it may grow when its neighbours go. Sizes are grown by
a kerf; see `casewright.cutting.shapes` for u and v.
"""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from casewright.cutting.shapes import Task

__all__ = ["Nest", "Nested", "Nook"]

_FREE = -1
_SKIP, _HIGHEST, _SPOTS = 50, 4, (1, 2, 2, 3)
"""One good place in so many is passed over; levels above a part that are emptied with it, at the
most; how many places are emptied at a time."""

_ORDERS, _BY_CHANCE = 8, 7
"""Ways to put parts in order, most of them by area; and the number of that by chance."""

_OTHER = 6
"""One first cut in so many runs the other way."""

_AT_ONCE = 16
"""So many places looked at count as one node (measured)."""

_WARM = 4
"""Mean parts by which more may be left over at first, and it be followed all the same."""


@dataclass(slots=True)
class Nook:
    """A piece of a sheet: divided, a part, or free.

    Parameters
    ----------
    du, dv
        Its sides.
    shape
        Of the part it is; below 0: none.
    axis, inner
        Along which its pieces follow each other, u for 0 and v for 1; none for a part or a free
        piece.
    """

    du: int
    dv: int
    shape: int = _FREE
    axis: int = 0
    inner: list[Nook] = field(default_factory=list)

    @property
    def is_free(self) -> bool:
        """Whether nothing lies in it."""
        return self.shape == _FREE and not self.inner

    def copy(self) -> Nook:
        """A copy that shares nothing."""
        return Nook(self.du, self.dv, self.shape, self.axis, [one.copy() for one in self.inner])


class Nested(NamedTuple):
    """Sheets, each with its bin and how it is divided, and their price."""

    sheets: tuple[tuple[int, Nook], ...]
    price: int


class _Place(NamedTuple):
    """A free piece with the way to it from the whole sheet."""

    way: tuple[int, ...]
    du: int
    dv: int


class Nest:
    """Looks for sheets that hold all parts of a task.

    Parameters
    ----------
    task
        What to cut, from stock without defects.
    is_over
        Whether to give up; `nodes` counts the places tried so far.
    seed
        Where to look.

    Sources
    -------
    Schrimpf et al. 2000, ruin and recreate; Gardeyn and Wauters 2022, of guillotine cuts, with as
    many sheets as are aimed at.
    """

    def __init__(self, task: Task, is_over: Callable[[], bool], seed: int) -> None:
        self.nodes = 0
        self._task, self._is_over = task, is_over
        self._rng = random.Random(seed)  # noqa: S311 - to look about, not for secrets
        self._areas = [shape.du * shape.dv for shape in task.shapes]
        wanted = [shape.count for shape in task.shapes]
        self._all = [n for n, count in enumerate(wanted) for _ in range(count)]
        self._mean = sum(self._areas[n] for n in self._all) // max(1, len(self._all))

    def run(self, bins: Sequence[int], most: int) -> Nested | None:
        """All parts on just these sheets, told by their bins, with so many nodes; None: not found.

        Parts are taken out here and there and put back; a plan with a little more left over may
        be followed for a while, ever less so.
        """
        if sum(map(self._area_of, bins)) < self._mean * len(self._all):
            return None
        start = self.nodes
        sheets = [Nook(self._task.bins[n].du, self._task.bins[n].dv) for n in bins]
        left = self._fill(sheets, self._all, set(range(len(sheets))))
        least = self._left_area(left)
        while least and self.nodes < start + most and not self._is_over():
            tried, own, loose = self._emptied(sheets)
            over = self._fill(tried, [*left, *loose], own)
            area = self._left_area(over)
            warmth = _WARM * self._mean * (start + most - self.nodes) // most
            if area <= least + self._rng.randrange(max(1, warmth)) // 2:
                sheets, left, least = tried, over, area
        if least:
            return None
        used = [(n, sheet) for n, sheet in zip(bins, sheets, strict=True) if not sheet.is_free]
        return Nested(tuple(used), sum(self._task.bins[n].price for n, _ in used))

    def _area_of(self, index: int) -> int:
        return self._task.bins[index].area

    def _left_area(self, left: Sequence[int]) -> int:
        return sum(self._areas[n] for n in left)

    def _emptied(self, sheets: Sequence[Nook]) -> tuple[list[Nook], set[int], list[int]]:
        """Sheets after pieces went, which of them are copies, and the parts that lay there."""
        rng, tried, own, loose = self._rng, list(sheets), set[int](), list[int]()
        for _ in range(rng.choice(_SPOTS)):
            index = rng.randrange(len(tried))
            if index not in own:
                tried[index] = tried[index].copy()
                own.add(index)
            ways = [way for way, nook in _walk(tried[index]) if nook.shape != _FREE]
            if ways:
                way = rng.choice(ways)
                up = rng.randrange(_HIGHEST + 1)
                tried[index], gone = _cleared(tried[index], way[: max(0, len(way) - up)])
                loose += gone
        return tried, own, loose

    def _fill(self, sheets: list[Nook], parts: Sequence[int], own: set[int]) -> list[int]:
        """Put parts in, one after the other, each where it fits best; what is left over.

        Sheets that are not `own` are copied before they are changed.
        """
        free = [_places(sheet) for sheet in sheets]
        left: list[int] = []
        for shape in self._ordered(parts):
            best = self._best(free, shape)
            if best is None:
                left.append(shape)
                continue
            index, place, size = best
            if index not in own:
                sheets[index] = sheets[index].copy()
                own.add(index)
            turns = self._rng.randrange(_OTHER) == 0
            sheets[index] = _put(sheets[index], place.way, shape, size, turns=turns)
            free[index] = _places(sheets[index])
        return left

    def _ordered(self, parts: Sequence[int]) -> list[int]:
        """The parts by their size, in one way or another, or by chance."""
        shapes, by = self._task.shapes, self._rng.randrange(_ORDERS)
        mixed = list(parts)
        self._rng.shuffle(mixed)
        if by == 0:
            return sorted(mixed, key=lambda n: -max(shapes[n].du, shapes[n].dv))
        if by == 1:
            return sorted(mixed, key=lambda n: -min(shapes[n].du, shapes[n].dv))
        return mixed if by == _BY_CHANCE else sorted(mixed, key=lambda n: -self._areas[n])

    def _best(
        self, free: Sequence[Sequence[_Place]], shape: int
    ) -> tuple[int, _Place, tuple[int, int]] | None:
        """The place that leaves the least beside a part: sheet, place, the part's sides."""
        best: tuple[int, int] | None = None
        found: tuple[int, _Place, tuple[int, int]] | None = None
        random_below = self._rng.randrange
        for index, places in enumerate(free):
            self.nodes += 1 + len(places) // _AT_ONCE
            for place in places:
                for du, dv in self._task.shapes[shape].sides:
                    if du > place.du or dv > place.dv:
                        continue
                    beside, above = place.du - du, place.dv - dv
                    rank = (min(beside, above), max(beside, above))
                    if (best is None or rank < best) and random_below(_SKIP):
                        best, found = rank, (index, place, (du, dv))
        return found


def _walk(root: Nook) -> Iterator[tuple[tuple[int, ...], Nook]]:
    """All pieces of a sheet that are not divided, with the way to each."""
    waiting: list[tuple[tuple[int, ...], Nook]] = [((), root)]
    while waiting:
        way, nook = waiting.pop()
        if nook.inner:
            waiting += [((*way, n), one) for n, one in enumerate(nook.inner)]
        else:
            yield way, nook


def _places(root: Nook) -> list[_Place]:
    return [_Place(way, nook.du, nook.dv) for way, nook in _walk(root) if nook.is_free]


def _put(
    root: Nook, way: tuple[int, ...], shape: int, size: tuple[int, int], *, turns: bool
) -> Nook:
    """Put a part into the free piece at the end of a way; the whole sheet afterwards.

    The first cut runs so that the larger piece that is left stays whole, or the other way.
    """
    chain = _chain(root, way)
    spot = chain[-1]
    whole = spot.du, spot.dv
    beside = (whole[0] - size[0]) * whole[1], (whole[1] - size[1]) * whole[0]
    first = int((beside[0] < beside[1]) != turns)
    block = _divided(Nook(*size, shape), 1 - first, whole[1 - first])
    return _replaced(chain, way, _divided(block, first, whole[first]))


def _divided(nook: Nook, axis: int, size: int) -> Nook:
    """A piece with what is free beside it along an axis, up to a size."""
    own = (nook.du, nook.dv)[axis]
    if own == size:
        return nook
    rest = Nook(size - own, nook.dv) if axis == 0 else Nook(nook.du, size - own)
    sides = (size, nook.dv) if axis == 0 else (nook.du, size)
    return Nook(*sides, _FREE, axis, [nook, rest])


def _cleared(root: Nook, way: tuple[int, ...]) -> tuple[Nook, list[int]]:
    """A sheet without all that lies at the end of a way, and the parts that lay there."""
    chain = _chain(root, way)
    gone = [nook.shape for _, nook in _walk(chain[-1]) if nook.shape != _FREE]
    return _replaced(chain, way, Nook(chain[-1].du, chain[-1].dv)), gone


def _chain(root: Nook, way: tuple[int, ...]) -> list[Nook]:
    chain = [root]
    for step in way:
        chain.append(chain[-1].inner[step])
    return chain


def _replaced(chain: list[Nook], way: tuple[int, ...], nook: Nook) -> Nook:
    """The whole sheet with another piece at the end of a way; like divisions become one."""
    for parent, step in zip(reversed(chain[:-1]), reversed(way), strict=True):
        others = [one for n, one in enumerate(parent.inner) if n != step]
        is_like = bool(nook.inner) and nook.axis == parent.axis
        parent.inner = _joined([*others, *(nook.inner if is_like else [nook])], parent.axis)
        nook = parent.inner[0] if len(parent.inner) == 1 else parent
    return nook


def _joined(pieces: list[Nook], axis: int) -> list[Nook]:
    """Pieces along an axis with all that is free as one."""
    free = [one for one in pieces if one.is_free]
    if len(free) < 2:
        return pieces
    du = sum(one.du for one in free) if axis == 0 else free[0].du
    dv = sum(one.dv for one in free) if axis == 1 else free[0].dv
    return [*(one for one in pieces if not one.is_free), Nook(du, dv)]
