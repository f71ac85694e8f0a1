"""Tables as data for the typesetter: whole numbers of lengths stand under each other."""

from __future__ import annotations

from typing import NamedTuple

from casewright.dims import Measure
from casewright.drawing import Stack, pieces
from casewright.drawing.stacking import Piece
from casewright.outputs.blocks import Column, Row, Table
from casewright.outputs.inlines import Rich, Strong
from casewright.outputs.typst_lines import Json, line_data

__all__ = ["table_data"]

_ALIGN = {"left": "left", "centre": "center", "right": "right", "size": "right"}

# In ems: a figure is 0.54 wide, a fraction is set at 0.72 with 0.07 on both sides, 0.13 before it.
_FIGURE, _POINT = 0.54, 0.28
_SMALL, _AROUND = 0.72, 0.27


class _Parts(NamedTuple):
    """A length before and behind the line that whole numbers end on."""

    whole: tuple[Piece, ...]
    rest: tuple[Piece, ...]

    @property
    def slot(self) -> float:
        """Room its second part needs [em]."""
        if not self.rest:
            return 0.0
        first = self.rest[0]
        if isinstance(first, Stack):
            digits = max(len(first.numerator), len(first.denominator))
            return digits * _FIGURE * _SMALL + _AROUND
        return _POINT + (len(first) - 1) * _FIGURE


def table_data(table: Table) -> Json:
    """A table as data.

    Raises
    ------
    ValueError
        When a row has neither one cell nor as many as there are columns: a defect of the program.
    """
    width = len(table.columns)
    for row in table.rows:
        if len(row.cells) not in (1, width):
            msg = f"a row has {len(row.cells)} cells in a table of {width} columns"
            raise ValueError(msg)
    slots = [_slot(table, i) for i in range(width)]
    return {
        "k": "table",
        "small": table.small,
        "columns": [_column(column) for column in table.columns],
        "rows": [_row(row, slots) for row in table.rows],
    }


def _column(column: Column) -> Json:
    return {"title": column.title, "align": _ALIGN[column.align], "share": column.share}


def _row(row: Row, slots: list[float]) -> Json:
    if len(row.cells) != len(slots):
        return {"anchor": row.anchor, "cells": [line_data(cell) for cell in row.cells]}
    cells = [_cell(cell, slot) for cell, slot in zip(row.cells, slots, strict=True)]
    return {"anchor": row.anchor, "cells": cells}


def _cell(cell: Rich, slot: float) -> list[Json]:
    parts = _parts(cell)
    if not slot or parts is None:
        return line_data(cell)
    data: Json = {
        "k": "slot",
        "whole": _pieces(parts.whole),
        "rest": _pieces(parts.rest),
        "slot": slot,
    }
    return [{"k": "strong", "c": [data]}] if isinstance(cell, Strong) else [data]


def _pieces(found: tuple[Piece, ...]) -> list[Json]:
    return [
        {"k": "stack", "n": p.numerator, "d": p.denominator} if isinstance(p, Stack) else p
        for p in found
    ]


def _slot(table: Table, index: int) -> float:
    """Widest room behind a whole number in a column of sizes [em]; 0 in other columns."""
    if table.columns[index].align != "size":
        return 0.0
    cells = (row.cells[index] for row in table.rows if len(row.cells) == len(table.columns))
    found = (_parts(cell) for cell in cells)
    return round(max((parts.slot for parts in found if parts is not None), default=0.0), 3)


def _parts(cell: Rich) -> _Parts | None:
    """A cell that is one length, in two parts; None for any other."""
    content = cell.content if isinstance(cell, Strong) else cell
    if not isinstance(content, Measure):
        return None
    found = pieces(content)
    for i, piece in enumerate(found):
        if isinstance(piece, Stack):
            return _Parts(found[:i], found[i:])
    whole, point, decimals = content.text.partition(".")
    return _Parts((whole,), (f".{decimals}",) if point else ())
