"""How strips are shared out: what comes off each, from the datum end on."""

from __future__ import annotations

from casewright.breakdown import Piece, StockPlan
from casewright.cutting.solution import SheetTree
from casewright.dims import measure_of
from casewright.dims.units import Unit
from casewright.outputs.blocks import Column, Row, Table
from casewright.outputs.inlines import Inline, Link, Strong
from casewright.packet.cut_places import sheet_anchor
from casewright.packet.hold_marks import HoldMarks

__all__ = ["strip_table"]

_COLUMNS = (
    Column("Strip", "centre"), Column("Long", share=1.0),
    Column("Gives, from the datum end", share=9.0),
)  # fmt: skip


def strip_table(plan: StockPlan, unit: Unit, holds: HoldMarks) -> Table:
    """A row for each strip: a drawing of something so long and thin could not be lettered."""
    return Table(
        _COLUMNS, tuple(_row(plan, tree, unit, holds) for tree in plan.solution.tree), small=True
    )


def _row(plan: StockPlan, tree: SheetTree, unit: Unit, holds: HoldMarks) -> Row:
    length, _ = plan.numbers.sizes[f"{tree.sheet + 1}"]
    pieces = sorted(plan.on_sheet(tree), key=lambda placed: placed[1].rect.x)
    words: list[Inline] = []
    for piece, _ in pieces:
        words += [";  "] if words else []
        words += [_name(piece), " (", measure_of(piece.long, unit), ")"]
        if waits := holds.sign(piece.id):
            words += ["\u00a0", *waits]
    return Row(
        (Strong(str(tree.sheet + 1)), measure_of(length, unit), tuple(words)),
        sheet_anchor(plan, tree),
    )


def _name(piece: Piece) -> Inline:
    """The mark of a part, which leads to its card; else what it is."""
    return Link(piece.mark, piece.id) if piece.kind == "part" else piece.kind
