"""Each sheet as pieces within pieces, put into the order a careful person likes.

Pieces follow each other along u on the sheet (panels), along v in these (strips), along u again
(columns), along v (parts of a column), and a part along u in its place there. What lies beside a
piece is left over, around defects too. Sizes are real ones, in the frame of the first cut (see
`casewright.cutting.shapes`), counted from the corner of the usable ground. To take a sheet apart
and repair it there is `casewright.cutting.pattern`, which knows no places.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from casewright.cutting.shapes import Action, Laid, Task

__all__ = ["LaidPiece", "UsedBin", "arrange"]


@dataclass(slots=True)
class LaidPiece:
    """A stretch of the piece around it, from `low` on, `size` long.

    `inner` are the pieces in it, along the other axis; in the innermost there is a part of the
    `shape`.
    """

    low: int
    size: int
    shape: int = -1
    inner: list[LaidPiece] = field(default_factory=list)

    @property
    def end(self) -> int:
        """Where it ends."""
        return self.low + self.size

    @property
    def reach(self) -> int:
        """Where what is in it ends, along the other axis."""
        return max(piece.end for piece in self.inner)


@dataclass(slots=True)
class UsedBin:
    """One sheet in use: which bin, and its panels."""

    bin: int
    panels: list[LaidPiece] = field(default_factory=list)


def arrange(laid: Iterable[Laid], task: Task) -> list[UsedBin]:
    """Sheets with their pieces.

    On a sheet without defects the widest panel, the widest strip and the longest part come first,
    so that saw settings descend and leftovers lie together at the far end.
    """
    sheets: list[UsedBin] = []
    for part in laid:
        if part.action == Action.NEW_SHEET:
            sheets.append(UsedBin(part.bin))
        _put(sheets[-1].panels, part, task.kerf)
    for sheet in sheets:
        if not task.bins[sheet.bin].defects:
            _sort(sheet.panels, 0, task.kerf)
    return sheets


def _put(panels: list[LaidPiece], part: Laid, kerf: int) -> None:
    """Add a part to the pieces it belongs to, or to new ones."""
    du, dv = part.du - kerf, part.dv - kerf
    if part.action >= Action.NEW_PANEL:
        panels.append(LaidPiece(panels[-1].end + kerf if panels else 0, 0))
    panel = panels[-1]
    if part.action >= Action.NEW_STRIP:
        panel.inner.append(LaidPiece(part.v, dv))
    strip = panel.inner[-1]
    if part.action >= Action.INTO_STRIP:
        strip.inner.append(LaidPiece(part.u, du))
    strip.inner[-1].inner.append(LaidPiece(part.v, dv, inner=[LaidPiece(part.u, du, part.shape)]))
    strip.size = max(strip.size, part.v + dv - strip.low)
    panel.size = max(panel.size, part.u + du - panel.low)


def _sort(pieces: list[LaidPiece], low: int, kerf: int, across: int = 0) -> None:
    """Put pieces side by side from `low` on, the largest first; those in them from `across`."""
    pieces.sort(key=_rank)
    for piece in pieces:
        piece.low = low
        _sort(piece.inner, across, kerf, low)
        low += piece.size + kerf


def _rank(piece: LaidPiece) -> tuple[int, int, int]:
    if not piece.inner:
        return -piece.size, 0, piece.shape
    depth = piece.reach - min(inner.low for inner in piece.inner)
    return -piece.size, -depth, _rank(piece.inner[0])[2]
