"""About how much of a page words and tables need, so that drawings get the rest."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from casewright.dims import Measure
from casewright.drawing.inscription import Inscription
from casewright.outputs.blocks import Column, Row, Table
from casewright.outputs.inlines import Link, Rich, SignMark, Small, Strong, rich_text

__all__ = ["line_count", "list_height", "paragraph_height", "table_height"]

_BODY = (2.45, 5.4, 5.9)  # height of capitals; from line to line, bare and with fractions [mm]
_CELL = (2.15, 3.85, 4.6)
_APART = 1.0  # between paragraphs [mm]
_LETTERS = 9.0  # width of the column of letters [mm]
_INSETS = (3.4, 2.7)  # of a cell, left and right together, above and below together [mm]
_HEADING = 7.5  # of a table [mm]
_LIST_HEADING, _GROUP, _LINE, _NEXT = 6.5, 7.0, 6.8, 2.4  # of a list, its rows, more lines [mm]
_RAGGED = 0.97  # lines lose something at their right end, and regular letters are narrower
_SMALLER = 0.82  # small words against the others
_SIGN = 6.0  # width of a sign [mm]


def paragraph_height(text: Rich, width_mm: float) -> float:
    """Height of a paragraph with the room under it [mm]."""
    return _lines(text, width_mm, _BODY) + _APART


def line_count(text: Rich, width_mm: float) -> int:
    """Lines of a paragraph, at the most [-]."""
    return _count(text, width_mm, _BODY[0])


def table_height(columns: Sequence[Column], rows: Iterable[Row], width_mm: float) -> float:
    """Height of a small table whose columns without a share are narrow, at the most [mm]."""
    widths = _widths(columns, width_mm)
    return _HEADING + sum(
        max(
            _lines(cell, wide, _CELL) for cell, wide in zip(row.cells, widths, strict=True) if wide
        )
        + _INSETS[1]
        for row in rows
    )


def list_height(table: Table, width_mm: float) -> float:
    """Height of a small table of sizes in groups, of a line or two each [mm]."""
    widths = _widths(table.columns, width_mm)
    height = _LIST_HEADING
    for row in table.rows:
        if len(row.cells) == 1:
            height += _GROUP
            continue
        cells = zip(row.cells, widths, strict=True)
        lines = max(_count(cell, wide, _CELL[0]) for cell, wide in cells if wide)
        height += _LINE + (lines - 1) * _NEXT
    return height


def _widths(columns: Sequence[Column], width_mm: float) -> list[float]:
    """Room for words in each column; 0 in narrow ones [mm]."""
    narrow = sum(not column.share for column in columns) * _LETTERS
    shares = [column.share for column in columns]
    return [(width_mm - narrow) * s / sum(shares) - _INSETS[0] if s else 0.0 for s in shares]


def _lines(text: Rich, width_mm: float, lettering: tuple[float, float, float]) -> float:
    capitals, bare, stacked = lettering
    count = _count(text, width_mm, capitals)
    return count * bare + min(count, rich_text(text).count("/")) * (stacked - bare)


def _count(text: Rich, width_mm: float, capitals: float) -> int:
    return max(1, math.ceil(_width(text, capitals) * _RAGGED / width_mm))


def _width(text: Rich, capitals: float) -> float:
    """Length of a line that is never broken [mm]."""
    match text:
        case tuple():
            return sum(_width(item, capitals) for item in text)
        case str() | Measure():
            return Inscription(text, capitals).width
        case Small(content):
            return _SMALLER * Inscription(content, capitals).width
        case Strong(content) | Link(content):
            return Inscription(content, capitals).width
        case SignMark():
            return _SIGN
        case _:
            return 0.0
