"""Plans from the mix of sheets that the bound was found with: most are fixed, the rest searched.

The linear programme mixes sheets in fractions. Those with the largest shares are taken whole, one
after the other, and what is left over is small enough for a beam search.
"""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from casewright.cutting.columns import Columns
from casewright.cutting.pricing import Column
from casewright.cutting.searches import search_for
from casewright.cutting.shapes import Action, Found, Task, task_part

__all__ = ["Layer", "SheetDive"]

Layer = tuple[int, Found]
"""Sheets laid out in the frame of one task: its place, and the parts laid."""

_LEFT = (6, 3, 4, 5, 8, 10)
"""Numbers of sheets left to the search; the first at the first try, then any."""

_LEFT_OF_FEW = (2, 1)
"""The same for plans of few sheets, which may lie in different frames all the same."""

_BLUR = 300
"""How far a share may be blurred after the first try, in thousandths."""

_AFRESH, _MOST_AFRESH = 2, 400_000
"""One dive in so many looks for sheets that suit what is left over, where that takes no more nodes
than these; the others are quicker."""

_LEAST = 50
"""Thousandths of a sheet below which a share is not looked at."""

_MIXED = 200
"""Nodes that one more mix counts for; it starts from the last one."""

_SINGLE = ((8, 0), (8, 2), (64, 0))
_REST = ((64, 0), (64, 2), (512, 1))
"""Widths and guides for one sheet, and for what is left."""


@dataclass(slots=True)
class _Dived:
    """Sheets fixed so far, the parts and the stock left, and money spent."""

    left: list[int]
    stock: list[int | None]
    spent: int = 0
    layers: list[Layer] = field(default_factory=list)


class SheetDive:
    """Dives into one mix, each with other sheets fixed.

    Parameters
    ----------
    tasks
        The problem in each frame; shapes and bins in the same order.
    columns
        With the sheets that may be fixed.
    is_over
        Whether to give up; `nodes` counts the places tried so far.
    seed
        Blurs the shares from the second dive on.
    """

    def __init__(
        self, tasks: Sequence[Task], columns: Columns, is_over: Callable[[], bool], seed: int
    ) -> None:
        self.nodes = 0
        self._tasks, self._columns, self._is_over = tasks, columns, is_over
        self._rng = random.Random(seed)  # noqa: S311 - to look about, not for secrets
        self._dearest = max(1, *(b.price for b in tasks[0].bins))
        self._known: dict[Column, Layer | None] = {}
        self._dives = 0
        self._is_afresh = False

    def can_fix(self, limit: int, *, few: bool) -> bool:
        """Whether a plan within a limit is long enough for some sheets of it to be fixed.

        Of a plan of `few` sheets one or two are left to the search; wider searches of the whole
        are better at it where the parts are many.
        """
        return bool(self._rests(limit, few=few))

    def _rests(self, limit: int, *, few: bool) -> list[int]:
        """Numbers of sheets that may be left to the search, so that some are fixed."""
        many = [count for count in _LEFT if count * self._dearest < limit]
        if many or not few:
            return many
        return [count for count in _LEFT_OF_FEW if count * self._dearest < limit]

    def run(self, limit: int) -> list[Layer] | None:
        """One dive; a full plan that costs no more than the limit, or None."""
        bins, wanted = self._tasks[0].bins, self._columns.wanted
        self.nodes += _MIXED
        self._dives += 1
        is_first = self._dives == 1
        sheets = limit // self._dearest
        is_cheap = sheets * self._columns.effort <= _MOST_AFRESH
        self._is_afresh = is_cheap and self._dives % _AFRESH == 1
        rests = self._rests(limit, few=True)
        if not rests:
            return None
        over = self._dearest * (rests[0] if is_first else self._rng.choice(rests))
        dived = _Dived(list(wanted), [b.count for b in bins])
        while dived.spent + over < limit and any(dived.left):
            if self._is_over() or not self._fix(dived, 0 if is_first else _BLUR, limit - over):
                break
        return self._finished(dived, limit)

    def _fix(self, dived: _Dived, blur: int, limit: int) -> bool:
        """Fix the sheet with the largest share, all whole copies of it at once."""
        shares = self._columns.shares(dived.left, dived.stock, afresh=self._is_afresh)
        self.nodes += _MIXED
        ranked = sorted(
            (-share - self._rng.randrange(blur + 1), n)
            for n, (share, _) in enumerate(shares)
            if share >= _LEAST
        )
        for _, n in ranked:
            share, column = shares[n]
            fitted = Column(column.bin, tuple(map(min, column.counts, dived.left)))
            layer = self._sheet(fitted) if any(fitted.counts) else None
            if layer is None:
                continue
            copies = self._copies(dived, fitted, max(1, share // 1000), limit)
            for _ in range(copies):
                self._take(dived, fitted, layer)
            if copies:
                return True
        return False

    def _copies(self, dived: _Dived, column: Column, most: int, limit: int) -> int:
        """How often a sheet can be taken: by its parts, by the stock, by the money."""
        stock, price = dived.stock[column.bin], self._tasks[0].bins[column.bin].price
        by_parts = [
            left // count for left, count in zip(dived.left, column.counts, strict=True) if count
        ]
        by_money = (limit - dived.spent) // price if price else most
        return max(0, min(most, *by_parts, by_money, most if stock is None else stock))

    def _take(self, dived: _Dived, column: Column, layer: Layer) -> None:
        dived.left = [left - count for left, count in zip(dived.left, column.counts, strict=True)]
        count = dived.stock[column.bin]
        dived.stock[column.bin] = None if count is None else count - 1
        dived.spent += self._tasks[0].bins[column.bin].price
        dived.layers.append(layer)

    def _sheet(self, column: Column) -> Layer | None:
        """How one sheet holds these parts, if a short search finds it."""
        if column not in self._known:
            stock = [0] * len(self._tasks[0].bins)
            stock[column.bin] = 1
            self._known[column] = self._search(column.counts, stock, _SINGLE, None)
        return self._known[column]

    def _finished(self, dived: _Dived, limit: int) -> list[Layer] | None:
        if not any(dived.left):
            return dived.layers
        bins = self._tasks[0].bins
        over = limit - dived.spent
        if over <= 0:
            return None
        area = sum(
            s.du * s.dv * left for s, left in zip(self._tasks[0].shapes, dived.left, strict=True)
        )
        if len(bins) == 1 and area > over // max(1, bins[0].price) * bins[0].area:
            return None
        found = self._search(dived.left, dived.stock, _REST, over)
        return None if found is None else [*dived.layers, found]

    def _search(
        self,
        counts: Sequence[int],
        stock: Sequence[int | None],
        widths: Sequence[tuple[int, int]],
        limit: int | None,
    ) -> Layer | None:
        """A plan for some of the parts from some of the stock; `limit` None: from one sheet."""
        for place, task in enumerate(self._tasks):
            some = task_part(task, counts, stock)
            if some is None:
                return None
            few = some.task
            if limit is None:
                few = replace(few, bins=tuple(replace(b, price=1) for b in few.bins))
            search = search_for(few, self._is_over)
            for width, guide in widths:
                before = search.nodes
                found = search.run(width, guide, limit=1 if limit is None else limit)
                self.nodes += search.nodes - before
                if found is not None and found.complete:
                    laid = tuple(some.laid(found))
                    price = sum(
                        task.bins[one.bin].price for one in laid if one.action == Action.NEW_SHEET
                    )
                    return place, Found(laid, price, complete=True)
        return None
