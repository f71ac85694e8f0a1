"""Plans that just fit: they must wait for the measured sheet and the measured kerf.

A sheet as bought may be smaller than its label, and the blade may take more than planned.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.cutting.problem import Problem, StockItem
from casewright.cutting.solution import Direction, Node, SheetTree, Solution, Split

__all__ = ["TightRow", "tight_rows"]


@dataclass(frozen=True, slots=True)
class TightRow:
    """A row of pieces that has little to spare at the far edge of a sheet.

    Parameters
    ----------
    sheet
        Number of the sheet, from 0.
    direction
        Of the cuts in the row: rips across the sheet's width, crosscuts along its length.
    spare
        What is left between the last piece and the far trim [unit].
    cuts
        How many blade's widths the row holds.
    """

    sheet: int
    direction: Direction
    spare: int
    cuts: int


def tight_rows(
    problem: Problem, solution: Solution, *, shorter: int, wider: int = 0
) -> tuple[TightRow, ...]:
    """The tightest row of each sheet and direction that may fail on the real sheet.

    Parameters
    ----------
    problem, solution
        The plan.
    shorter
        By how much a sheet may be smaller than the problem says [unit].
    wider
        By how much a cut may be wider than the problem's kerf [unit].

    Returns
    -------
    Rows whose last piece no longer fits on a sheet so much smaller, cut with so much wider a
    blade. Empty when every sheet has room enough.
    """
    stock = {item.id: item for item in problem.stock}
    found: dict[tuple[int, Direction], TightRow] = {}
    for tree in solution.tree:
        for row in _rows(tree, stock[tree.stock]):
            key = row.sheet, row.direction
            if key not in found or _margin(row, wider) < _margin(found[key], wider):
                found[key] = row
    return tuple(row for row in found.values() if _margin(row, wider) < shorter)


def _margin(row: TightRow, wider: int) -> int:
    return row.spare - row.cuts * wider


def _rows(tree: SheetTree, item: StockItem) -> Iterator[TightRow]:
    """For every part the room beyond it, and the cuts before it, along both axes."""
    waiting: list[tuple[Node, int, int]] = [(tree.root, 0, 0)]
    while waiting:
        node, rips, crosscuts = waiting.pop()
        rect = node.rect
        if isinstance(node, Split):
            is_rip = node.direction == "rip"
            for piece in node.pieces:
                start = piece.rect.y if is_rip else piece.rect.x
                before = sum(1 for cut in node.cuts if cut < start)
                waiting.append((piece, rips + before * is_rip, crosscuts + before * (not is_rip)))
        elif node.use == "part":
            top, right = item.width - item.trim.top, item.length - item.trim.right
            yield TightRow(tree.sheet, "rip", top - rect.y1, rips)
            yield TightRow(tree.sheet, "crosscut", right - rect.x1, crosscuts)
