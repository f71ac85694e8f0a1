"""Where on a board pieces may lie: the stretches between its trims and its defects."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from casewright.cutting.problem import StockItem

__all__ = ["Stretch", "deal", "stretches"]


class Stretch(NamedTuple):
    """From where to where along a board [unit]."""

    low: int
    high: int

    @property
    def length(self) -> int:
        """From end to end."""
        return self.high - self.low


def stretches(item: StockItem, kerf: int, *, apart: bool = True) -> tuple[Stretch, ...]:
    """The sound stretches of a board; a defect spoils the whole width where it lies.

    Parameters
    ----------
    apart
        Keep neighbours a kerf apart, so that each can be filled by itself. Where a defect is
        narrower than the blade, the shorter neighbour gives way, so that the longest stretch
        stays whole; without it the stretches hold more than can really be cut.
    """
    at, end = item.trim.left, item.length - item.trim.right
    found: list[Stretch] = []
    for spot in sorted(item.defects, key=lambda spot: spot.x):
        if min(spot.x, end) > at:
            found.append(Stretch(at, min(spot.x, end)))
        at = max(at, spot.x + spot.length)
    if end > at:
        found.append(Stretch(at, end))
    return _apart(found, kerf) if apart else tuple(found)


def _apart(found: Sequence[Stretch], kerf: int) -> tuple[Stretch, ...]:
    lows, highs = [span.low for span in found], [span.high for span in found]
    for index, (left, right) in enumerate(pairwise(found)):
        lack = max(0, kerf - (right.low - left.high))
        if left.length < right.length:
            highs[index] -= lack
        else:
            lows[index + 1] += lack
    return tuple(Stretch(low, high) for low, high in zip(lows, highs, strict=True) if high > low)


def deal(lengths: Sequence[int], spans: Sequence[Stretch], kerf: int) -> list[list[int]]:
    """Which of the lengths, by index, go on which stretch.

    Parameters
    ----------
    lengths
        Longest first; they fit.

    Raises
    ------
    ValueError
        When they do not fit.
    """
    rooms = [span.length + kerf for span in spans]
    failed: set[tuple[int, ...]] = set()
    chosen: list[int] = []
    start = 0
    while len(chosen) < len(lengths):
        need = lengths[len(chosen)] + kerf
        at = next((at for at in range(start, len(rooms)) if rooms[at] >= need), None)
        if at is None:
            failed.add((len(chosen), *rooms))
            if not chosen:
                msg = f"the lengths {list(lengths)} do not fit on {list(spans)}"
                raise ValueError(msg)
            at = chosen.pop()
            rooms[at] += lengths[len(chosen)] + kerf
            start = at + 1
            continue
        rooms[at] -= need
        if (len(chosen) + 1, *rooms) in failed:
            rooms[at] += need
            start = at + 1
        else:
            chosen.append(at)
            start = 0
    return [[index for index, at in enumerate(chosen) if at == span] for span in range(len(spans))]
