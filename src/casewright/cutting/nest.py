"""Guillotine cuts of any depth: a search over sheets as pieces within pieces (`nook`)."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Callable, Sequence
from typing import NamedTuple

from casewright.cutting.nook import (
    FreePiece,
    Nook,
    cleared,
    ground_of_bin,
    part_ways,
    places_in,
    put,
)
from casewright.cutting.shapes import Task

__all__ = ["Nest", "Nested"]

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


class Nested(NamedTuple):
    """Sheets, each with its bin and how it is divided, and their price."""

    sheets: tuple[tuple[int, Nook], ...]
    price: int


class Nest:
    """Looks for sheets that hold all parts of a task.

    Parameters
    ----------
    task
        What to cut.
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
        self._sides = sorted({side for shape in task.shapes for side in shape.sides[0]})
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
        sheets = [self._ground(n) for n in bins]
        left = self._fill(sheets, self._all, set(range(len(sheets))))
        least = self._left_area(left)
        while least and self.nodes < start + most and not self._is_over():
            tried, own, loose = self._emptied(sheets, bins)
            over = self._fill(tried, [*left, *loose], own)
            area = self._left_area(over)
            warmth = _WARM * self._mean * (start + most - self.nodes) // most
            if area <= least + self._rng.randrange(max(1, warmth)) // 2:
                sheets, left, least = tried, over, area
        if least:
            return None
        used = [(n, sheet) for n, sheet in zip(bins, sheets, strict=True) if not sheet.is_empty]
        return Nested(tuple(used), sum(self._task.bins[n].price for n, _ in used))

    def _area_of(self, index: int) -> int:
        return self._task.bins[index].area

    def _left_area(self, left: Sequence[int]) -> int:
        return sum(self._areas[n] for n in left)

    def _ground(self, index: int) -> Nook:
        return ground_of_bin(self._task.bins[index], self._sides, self._task.kerf, self._rng)

    def _emptied(
        self, sheets: Sequence[Nook], bins: Sequence[int]
    ) -> tuple[list[Nook], set[int], list[int]]:
        """Sheets after pieces went, which of them are copies, and the parts that lay there.

        A sheet that is emptied as a whole is cut around its defects in another way.
        """
        rng, tried, own, loose = self._rng, list(sheets), set[int](), list[int]()
        for _ in range(rng.choice(_SPOTS)):
            index = rng.randrange(len(tried))
            if index not in own:
                tried[index] = tried[index].copy()
                own.add(index)
            ways = part_ways(tried[index])
            way = rng.choice(ways) if ways else ()
            way = way[: max(0, len(way) - rng.randrange(_HIGHEST + 1))] if ways else ()
            tried[index], gone = cleared(tried[index], way)
            loose += gone
            if not way and tried[index].stays:
                tried[index] = self._ground(bins[index])
        return tried, own, loose

    def _fill(self, sheets: list[Nook], parts: Sequence[int], own: set[int]) -> list[int]:
        """Put parts in, one after the other, each where it fits best; what is left over.

        Sheets that are not `own` are copied before they are changed.
        """
        free = [places_in(sheet) for sheet in sheets]
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
            sheets[index] = put(sheets[index], place.way, shape, size, turns=turns)
            free[index] = places_in(sheets[index])
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
        self, free: Sequence[Sequence[FreePiece]], shape: int
    ) -> tuple[int, FreePiece, tuple[int, int]] | None:
        """The place that leaves the least beside a part: sheet, place, the part's sides."""
        best: tuple[int, int] | None = None
        found: tuple[int, FreePiece, tuple[int, int]] | None = None
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
