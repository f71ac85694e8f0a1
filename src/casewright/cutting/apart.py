"""Plans in which stock with defects is filled first, by itself, and the rest goes on clear stock.

Defects make the search slow, as plans can then be looked at one by one only. Where there are few
sheets with them, most parts need not wait for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from casewright.cutting.searches import search_for
from casewright.cutting.shapes import Found, Task, task_part

__all__ = ["Apart"]

_WIDTHS = (4, 16, 64)
_REST = ((16, 0), (64, 0), (64, 2), (256, 1))
"""Widths and guides for the clear stock."""


class _Filled(NamedTuple):
    """Sheets with defects, filled, and how many parts of each shape are left."""

    found: Found
    left: tuple[int, ...]


class Apart:
    """Plans of one task, sheets with defects apart from the others.

    Parameters
    ----------
    task
        What to cut, and from what.
    is_over
        Whether to give up; `nodes` counts the places tried so far.
    """

    def __init__(self, task: Task, is_over: Callable[[], bool]) -> None:
        self.nodes = 0
        self._task, self._is_over = task, is_over

    @property
    def can_run(self) -> bool:
        """Whether there is clear stock beside so many sheets with defects."""
        bins = self._task.bins
        is_counted = all(b.count is not None for b in bins if b.defects)
        return is_counted and len({bool(b.defects) for b in bins}) > 1

    def run(self, limit: int, most: int) -> Iterator[tuple[Found, Found]]:
        """Full plans that cost less than a limit, each less than those before.

        Not wider and wider when so many nodes are passed.
        """
        for width in _WIDTHS:
            for seed in (None, width) if self.nodes < most else ():
                filled = self._fill(width, seed)
                if filled is None or self._is_over():
                    return
                rest = self._clear(filled.left, limit - 1 - filled.found.price)
                if rest is not None:
                    limit = filled.found.price + rest.price
                    yield filled.found, rest

    def _fill(self, width: int, seed: int | None) -> _Filled | None:
        """As much as can be laid on the sheets with defects."""
        task = self._task
        wanted = [shape.count for shape in task.shapes]
        stock = [b.count if b.defects else 0 for b in task.bins]
        found = self._search(wanted, stock, [(width, 0)], None, seed)
        if found is None:
            return None
        left = list(wanted)
        for one in found.laid:
            left[one.shape] -= 1
        return _Filled(found, tuple(left))

    def _clear(self, left: Sequence[int], limit: int) -> Found | None:
        """What is left over, on clear stock."""
        if not any(left):
            return Found((), 0, complete=True)
        stock = [0 if b.defects else b.count for b in self._task.bins]
        found = self._search(left, stock, _REST, limit, None)
        return found if found is not None and found.complete else None

    def _search(
        self,
        counts: Sequence[int],
        stock: Sequence[int | None],
        widths: Sequence[tuple[int, int]],
        limit: int | None,
        seed: int | None,
    ) -> Found | None:
        """The first plan within the limit; without one as much as the stock holds."""
        some = task_part(self._task, counts, stock)
        if some is None or (limit is not None and limit < 0):
            return None
        search = search_for(some.task, self._is_over)
        for width, guide in widths:
            before = search.nodes
            found = search.run(width, min(guide, search.guides - 1), limit=limit, seed=seed)
            self.nodes += search.nodes - before
            if found is not None:
                return Found(tuple(some.laid(found)), found.price, found.complete)
        return None
