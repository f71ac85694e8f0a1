"""How much of a sheet with defects parts can take up at the most, however they lie."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from casewright.cutting.shapes import Bin, Shape

__all__ = ["clear_area"]

_LONGEST = 1 << 16
"""Sides of stock up to which sums of sides are looked at; beyond, any length counts as filled."""

_Block = tuple[int, int, int, int]


def clear_area(b: Bin, shapes: Sequence[Shape], kerf: int) -> int:
    """The most area that parts, grown by a kerf, can take up of a sheet beside its defects.

    A line along the sheet, at whatever height, meets parts one after the other; a defect on it
    leaves a stretch on either side, and no stretch is filled by more than some sum of the parts'
    sides. Added up over all lines, along the sheet and across it, this is the most that any
    layout holds. Of a defect the first kerf counts as clear, as the blade may run there.
    """
    blocks = [
        (max(0, u0 + kerf), max(0, v0 + kerf), min(b.du, u1), min(b.dv, v1))
        for u0, v0, u1, v1 in b.defects
    ]
    blocks = [block for block in blocks if block[0] < block[2] and block[1] < block[3]]
    turned = [(v0, u0, v1, u1) for u0, v0, u1, v1 in blocks]
    sides = {size for shape in shapes for size in shape.sides}
    along = _by_lines(b.du, b.dv, blocks, {side for side, _ in sides})
    across = _by_lines(b.dv, b.du, turned, {side for _, side in sides})
    return min(along, across)


def _by_lines(du: int, dv: int, blocks: Sequence[_Block], sides: Iterable[int]) -> int:
    """The most that lines along u meet of parts, added up over all of them."""
    sums = _sums(sides, du) if du <= _LONGEST else None
    ends = sorted({0, dv, *(v for _, v0, _, v1 in blocks for v in (v0, v1))})
    total = 0
    for low, high in pairwise(ends):
        on = [(u0, u1) for u0, v0, u1, v1 in blocks if v0 <= low and high <= v1]
        filled = sum(_filled(length, sums) for length in _stretches(du, on))
        total += filled * (high - low)
    return total


def _stretches(du: int, blocked: Sequence[tuple[int, int]]) -> Iterator[int]:
    """Lengths of a line between what is blocked."""
    at = 0
    for u0, u1 in sorted(blocked):
        if u0 > at:
            yield u0 - at
        at = max(at, u1)
    if du > at:
        yield du - at


def _filled(length: int, sums: Sequence[int] | None) -> int:
    return length if sums is None else sums[bisect_right(sums, length) - 1]


def _sums(sides: Iterable[int], most: int) -> list[int]:
    """All sums of sides, each as often as wanted, up to a limit, ascending from 0."""
    found, mask = 1, (1 << most + 1) - 1
    for side in sorted(sides):
        shift = side
        while shift <= most:
            found |= found << shift & mask
            shift *= 2
    return [n for n, bit in enumerate(reversed(f"{found:b}")) if bit == "1"]
