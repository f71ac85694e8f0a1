"""First cuts run a little wide of the line, so that one setting gives the final sizes of all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from casewright.cutting.pattern import TIGHT, Oversize, Panel, Pattern, Strip
from casewright.cutting.sheet_work import SheetWork, WorkCounter

__all__ = ["cut_roughly"]

_KERFS = 2
"""How wide of the line a first cut runs, in kerfs: the blade is buried in the second cut."""


def cut_roughly(
    counter: WorkCounter, patterns: Sequence[Pattern], others: Sequence[SheetWork]
) -> Iterator[list[Pattern]]:
    """Ways of cutting some panels and strips wide of their size at first.

    A cut along the straightedge gives its size once. What it cuts wide of the line gets its
    size from a fence or a stop, in one setting with all its like. Only waste is used for it, and
    as much as is used once is left at the edge of the sheet.

    Parameters
    ----------
    counter
        Knows what work is reckoned by.
    patterns, others
        Sheets that may be cut so, and the work of those that stay as they are.

    Yields
    ------
    Copies of the patterns: all that can be cut wide of the line is, in one way or another, but
    for pieces that are less work without.
    """
    for each, spared in product((False, True), (0, 1)):
        rough = [pattern.copy() for pattern in patterns]
        for pattern in rough:
            _widen(pattern, Oversize(_KERFS * counter.problem.kerf, each), spared)
        _settle(counter, rough, others)
        yield rough


def _settle(counter: WorkCounter, rough: Sequence[Pattern], others: Sequence[SheetWork]) -> None:
    """Cut to the line what is less work so, piece by piece."""
    works = [counter.pattern_work(pattern) for pattern in rough]
    least = counter.total([*works, *others])
    for index, pattern in enumerate(rough):
        for piece in list(_cut_wide(pattern)):
            over, work = piece.over, works[index]
            piece.over = TIGHT
            works[index] = counter.pattern_work(pattern)
            total = counter.total([*works, *others])
            if total <= least:
                least = total
            else:
                piece.over, works[index] = over, work


def _widen(pattern: Pattern, wide: Oversize, spared: int) -> None:
    """Cut every panel and strip wide that there is waste for.

    Some at the end of each row are spared: beside waste, the fence gives them their size as it
    is.
    """
    _widen_row(pattern.panels, pattern.u - pattern.du, Oversize(wide.by), spared)
    for panel in pattern.panels:
        _widen_row(panel.strips, pattern.v - panel.dv, wide, spared)


def _widen_row(pieces: Sequence[Panel | Strip], spare: int, wide: Oversize, spared: int) -> None:
    room = spare // wide.by - 1 if wide.by else 0
    for piece in pieces[: max(0, min(room, len(pieces) - spared))]:
        piece.over = wide


def _cut_wide(pattern: Pattern) -> Iterator[Panel | Strip]:
    for panel in pattern.panels:
        if panel.over.by:
            yield panel
        yield from (strip for strip in panel.strips if strip.over.by)
