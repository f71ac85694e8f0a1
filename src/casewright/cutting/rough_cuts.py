"""First cuts run a little wide of the line, so that one setting gives the final sizes of all."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import product
from typing import NamedTuple

from casewright.cutting.pattern import TIGHT, Oversize, Panel, Pattern, Strip
from casewright.cutting.sheet_work import WorkCounter
from casewright.cutting.work_count import WorkCount

__all__ = ["WAYS", "OversizeWay", "cut_wide", "settle"]

_KERFS = 2
"""How wide of the line a first cut runs, in kerfs: the blade is buried in the second cut."""

_Row = Sequence[Panel | Strip]


class OversizeWay(NamedTuple):
    """What of a sheet is cut wide of its size at first, where there is waste for it.

    `panels` and `strips` tell whether they are; with `each` the parts of a strip get their width
    one by one. `spared` pieces at the end of each row are not: beside waste, the fence gives them
    their size as it is.
    """

    panels: bool = False
    strips: bool = False
    each: bool = False
    spared: int = 0


WAYS = (
    OversizeWay(),
    *(OversizeWay(True, True, *how) for how in product((False, True), (0, 1))),
    *(OversizeWay(panels=True, spared=spared) for spared in (0, 1)),
    *(OversizeWay(strips=True, each=each, spared=1) for each in (False, True)),
)


def cut_wide(pattern: Pattern, way: OversizeWay, kerf: int) -> Pattern:
    """A sheet with first cuts wide of the line.

    A cut along the straightedge gives its size once. What it cuts wide of the line gets its
    size from a fence or a stop, in one setting with all its like. Only waste is used for it, and
    as much as is used once is left at the edge of the sheet.

    Returns
    -------
    A copy, or the pattern itself where there is no waste for it.
    """
    by = _KERFS * kerf
    if not by:
        return pattern
    across = _room(pattern.panels, pattern.u - pattern.du, by) - way.spared
    along = [_room(p.strips, pattern.v - p.dv, by) - way.spared for p in pattern.panels]
    if not way.panels or across <= 0:
        across = 0
    if not way.strips or max(along, default=0) <= 0:
        along = [0] * len(along)
    if not across and not any(along):
        return pattern
    wide = Oversize(by, way.each)
    panels = []
    for n, (panel, most) in enumerate(zip(pattern.panels, along, strict=True)):
        strips = [
            Strip(strip.slots, strip.du, strip.dv, wide if m < most else TIGHT)
            for m, strip in enumerate(panel.strips)
        ]
        over = Oversize(by) if n < across else TIGHT
        panels.append(Panel(strips, panel.du, panel.dv, over))
    return Pattern(
        pattern.stock, pattern.swapped, pattern.u, pattern.v, panels, pattern.du, pattern.free
    )


def _room(row: _Row, spare: int, by: int) -> int:
    """How many pieces of a row there is waste for."""
    return min(len(row), spare // by - 1)


def settle(
    counter: WorkCounter,
    patterns: Sequence[Pattern],
    count: WorkCount,
    is_over: Callable[[], bool],
) -> list[Pattern]:
    """Cut each piece to the line, or wide of it, as is less work.

    Parameters
    ----------
    counter
        Knows what work is reckoned by.
    patterns, count
        Sheets that may be cut so, and the work of those that stay as they are; counts the sheets
        in the end.
    is_over
        Whether to leave the others as they are; asked for every piece and way.

    Returns
    -------
    Copies of the patterns.
    """
    patterns = [pattern.copy() for pattern in patterns]
    works = [counter.pattern_work(pattern) for pattern in patterns]
    for work in works:
        count.add(work)
    least = count.value + 1
    while count.value < least:
        least = count.value
        for index, pattern in enumerate(patterns):
            for piece, over in _choices(pattern, counter.problem.kerf):
                if is_over():
                    return patterns
                was, piece.over = piece.over, over
                before, work = count.value, counter.pattern_work(pattern)
                count.take(works[index])
                count.add(work)
                if count.value < before:
                    works[index] = work
                    continue
                count.take(work)
                count.add(works[index])
                piece.over = was
    return patterns


def _choices(pattern: Pattern, kerf: int) -> Iterator[tuple[Panel | Strip, Oversize]]:
    """Every piece with other ways of cutting it that there is waste for, one after the other."""
    by = _KERFS * kerf
    rows: list[tuple[_Row, int, tuple[Oversize, ...]]] = [
        (pattern.panels, pattern.u - pattern.du, (TIGHT, Oversize(by)))
    ]
    both = TIGHT, Oversize(by), Oversize(by, each=True)
    rows += [(panel.strips, pattern.v - panel.dv, both) for panel in pattern.panels]
    for row, spare, ways in rows if by else ():
        for piece in row:
            for over in ways:
                wide = sum(bool(other.over.by) for other in row if other is not piece)
                if over != piece.over and (not over.by or wide < spare // by - 1):
                    yield piece, over
