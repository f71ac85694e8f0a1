"""How often each size, and each manner of cutting a part of a group, occurs on sheets.

Sizes and manners are numbers, told apart from each other fast.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from casewright.cutting.pattern import Kind, Pattern

__all__ = ["any_manner", "census_of", "count", "manner", "size"]

_KIND = 42
"""Bits of a manner without the part."""


def size(du: int, *, is_rip: bool) -> int:
    """Number of a size that is cut, ripped or not."""
    return du << 1 | is_rip


def manner(kind: int, du: int, *, swapped: bool, trimmed: bool) -> int:
    """Number of the way a part is cut: its size along u, in what pattern, trimmed along v."""
    return ~(kind << _KIND | du << 2 | swapped << 1 | trimmed)


def any_manner(kind: int) -> int:
    """Number of a part that is cut in whatever way."""
    return ~(kind << _KIND | 1 << (_KIND - 1))


def census_of(pattern: Pattern, kinds: Sequence[Kind]) -> list[int]:
    """Numbers of the sizes that a sheet is cut to, and of how the parts of groups are cut."""
    return list(_census(pattern, kinds))


def _census(pattern: Pattern, kinds: Sequence[Kind]) -> Iterator[int]:
    u, v = int(pattern.swapped), int(not pattern.swapped)
    is_parted = len(pattern.panels) > 1
    for panel in pattern.panels:
        if is_parted:
            yield panel.du << 1 | u
        for strip in panel.strips:
            dv = strip.dv
            yield dv << 1 | v
            for slot in strip.slots:
                yield slot.du << 1 | u
                if slot.dv < dv:
                    yield slot.dv << 1 | v
                if kinds[slot.kind].group is not None:
                    yield manner(slot.kind, slot.du, swapped=pattern.swapped, trimmed=slot.dv < dv)
                    yield any_manner(slot.kind)


def count(counts: dict[int, int], numbers: Iterable[int], step: int) -> None:
    """Count so many times more; what occurs no longer is left out."""
    for number in numbers:
        now = counts.get(number, 0) + step
        if now:
            counts[number] = now
        else:
            del counts[number]
