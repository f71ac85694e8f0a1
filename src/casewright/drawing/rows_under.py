"""Rows of dimensions, and beyond them what a tape reads: both on one side of a view."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import ClassVar

from casewright.drawing.dimension import Dimensions
from casewright.drawing.marks import Area, Group
from casewright.drawing.running import Running
from casewright.drawing.shapes import on_paper
from casewright.drawing.strip import GAP, Strip

__all__ = ["RowsAndTape"]


@dataclass(frozen=True, slots=True)
class RowsAndTape:
    """Dimensions near the view; tapes beyond the last of their rows, whatever the scale.

    Parameters
    ----------
    rows
        Those near the view.
    tapes
        Running dimensions of the same side and base; their own distance counts from the rows.
    """

    kind: ClassVar[str] = "dimension"
    rows: Dimensions
    tapes: tuple[Running, ...]

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """The tapes first: numbers of the rows then stand on paper over their lines."""
        near = tuple(self.rows.groups(scale)) if self.rows.spans else ()
        taken = self._reach(near, scale)
        for tape in self.tapes:
            beyond = replace(tape, offset_mm=tape.offset_mm + taken)
            yield from beyond.groups(scale)
        yield from near

    def _reach(self, groups: tuple[Group, ...], scale: Fraction) -> float:
        """How far out the rows come from their base [mm on paper]."""
        if not groups:
            return 0.0
        side, base = self.rows.side, self.rows.base
        area = Area.around(group.area for group in groups)
        ends = (area.y0, area.y1) if side in ("below", "above") else (area.x0, area.x1)
        strip = Strip(side, on_paper((base, base), scale)[0])
        return max(0.0, *map(strip.depth, ends)) + GAP
