"""Lower bounds: what no plan, of any layout, can do without.

Parts and stock are grown by one kerf, which turns cutting with a kerf into packing without one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from math import ceil

import numpy as np

from casewright.cutting.clear_area import clear_area
from casewright.cutting.shapes import Bin, Shape

__all__ = ["lift", "price_bound", "sheet_bound"]

_Scale = Callable[[int], int]

_MOST_CUTOFFS = 24
_MOST_STEPS = 6
_MOST_MONEY = 1 << 24


def sheet_bound(bins: Sequence[Bin], shapes: Sequence[Shape], kerf: int) -> int:
    """Fewest sheets.

    By area clear of defects, taking the largest first, and by pairs of dual-feasible functions on
    the largest length and width of any sheet.

    Sources
    -------
    Fekete and Schepers 2004, conservative scales for two-dimensional packing.
    """
    return max(_sheets_by_area(bins, shapes, kerf), _sheets_by_scales(bins, shapes))


def price_bound(bins: Sequence[Bin], shapes: Sequence[Shape], kerf: int) -> int:
    """Least money.

    The parts' area bought by the piece of a sheet, cheapest clear area first; and the cheapest
    sheets, of any size, as many as are needed at least.
    """
    sheets = sheet_bound(bins, shapes, kerf)
    return max(_money_by_area(bins, shapes, kerf), _cheapest(bins, sheets))


def _cheapest(bins: Sequence[Bin], sheets: int) -> int:
    """Price of so many sheets, the cheapest first; of all, where there are fewer."""
    money = 0
    for b in sorted(bins, key=lambda b: b.price):
        take = sheets if b.count is None else min(sheets, b.count)
        money += take * b.price
        sheets -= take
    return money


def _money_by_area(bins: Sequence[Bin], shapes: Sequence[Shape], kerf: int) -> int:
    left = sum(s.du * s.dv * s.count for s in shapes)
    money = Fraction(0)
    for b, area in sorted(
        _areas(bins, shapes, kerf), key=lambda one: Fraction(one[0].price, one[1])
    ):
        take = left if b.count is None else min(left, b.count * area)
        money += Fraction(take * b.price, area)
        left -= take
    return ceil(money)


def _areas(bins: Sequence[Bin], shapes: Sequence[Shape], kerf: int) -> Iterator[tuple[Bin, int]]:
    """Each bin with the most that parts can take up of one of its sheets, if anything."""
    for b in bins:
        area = clear_area(b, shapes, kerf) if b.defects else b.area
        if area:
            yield b, area


def lift(bins: Sequence[Bin], money: int) -> int:
    """The least sum of money, from a lower bound on, that pieces of the stock can cost together.

    The lower bound itself where the sums are too many to look at, or none is that high.
    """
    if money <= 0 or money > _MOST_MONEY:
        return money
    limit = money + max(b.price for b in bins)
    sums, mask = 1, (1 << limit + 1) - 1
    for b in bins:
        left, take = limit if b.count is None else b.count, 1
        while b.price and left and take * b.price <= limit:
            some = min(take, left)
            sums |= sums << some * b.price & mask
            left, take = left - some, 2 * take
    reached = sums >> money
    return money + (reached & -reached).bit_length() - 1 if reached else money


def _sheets_by_area(bins: Sequence[Bin], shapes: Sequence[Shape], kerf: int) -> int:
    left = sum(s.du * s.dv * s.count for s in shapes)
    sheets = 0
    for b, area in sorted(_areas(bins, shapes, kerf), key=lambda one: -one[1]):
        need = -(-left // area)
        take = need if b.count is None else min(need, b.count)
        sheets += take
        left -= take * area
        if left <= 0:
            break
    return sheets


def _sheets_by_scales(bins: Sequence[Bin], shapes: Sequence[Shape]) -> int:
    du, dv = max(b.du for b in bins), max(b.dv for b in bins)
    fits = [(s.count, [(a, b) for a, b in s.sides if a <= du and b <= dv]) for s in shapes]
    ways = [(count, *sizes[0], *sizes[-1]) for count, sizes in fits if sizes]
    if not ways:
        return 0
    sides = sorted({side for s in shapes for size in s.sides for side in size})
    counts, *columns = zip(*ways, strict=True)
    # A scale gives a side as much as `_MOST_STEPS` times the whole at the most.
    most = sum(counts) * _MOST_STEPS**2 * du * dv
    whole = np.int64 if most < 1 << 62 else object
    count = np.array(counts, whole)
    a, b, turned_a, turned_b = (np.searchsorted(sides, column) for column in columns)
    across = [
        np.array([f(min(side, du)) for side in (*sides, du)], whole) for f in _scales(du, sides)
    ]
    along = [
        np.array([g(min(side, dv)) for side in (*sides, dv)], whole) for g in _scales(dv, sides)
    ]
    best = 0
    for f in across:
        for g in along:
            total = (count * np.minimum(f[a] * g[b], f[turned_a] * g[turned_b])).sum()
            best = max(best, -(-int(total) // (int(f[-1]) * int(g[-1]))))
    return best


def _scales(size: int, sides: Sequence[int]) -> Iterator[_Scale]:
    """Dual-feasible functions of a length, identity first."""
    yield lambda side: side
    cutoffs = [side for side in sides if 2 * side <= size]
    cutoffs += [size - side + 1 for side in sides if size < 2 * side <= 2 * size and side > 1]
    wanted = sorted({cut for cut in cutoffs if cut > 1 and 2 * cut <= size})
    stride = max(1, -(-len(wanted) // _MOST_CUTOFFS))
    for cutoff in wanted[::stride]:
        yield _drop_small(size, cutoff)
    for step in range(1, _MOST_STEPS + 1):
        yield _in_steps(size, step)


def _drop_small(size: int, cutoff: int) -> _Scale:
    """Nothing below the cutoff counts; what leaves less than the cutoff counts as the whole."""

    def scale(side: int) -> int:
        if side > size - cutoff:
            return size
        return 0 if side < cutoff else side

    return scale


def _in_steps(size: int, step: int) -> _Scale:
    """Whole steps of a (step + 1)th of the size; exact multiples keep their share."""

    def scale(side: int) -> int:
        steps = side * (step + 1)
        return side * step if steps % size == 0 else steps // size * size

    return scale
