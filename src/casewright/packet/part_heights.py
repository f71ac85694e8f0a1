"""About how much of a page words and tables need, so that drawings get the rest."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from casewright.drawing import Measure
from casewright.drawing.inscription import Inscription
from casewright.outputs.blocks import Column, Row
from casewright.outputs.inlines import Link, Rich, SignMark, Small, Strong, rich_text

__all__ = ["paragraph_height", "table_height"]

_BODY = (2.45, 5.4, 5.9)  # height of capitals; from line to line, bare and with fractions [mm]
_CELL = (2.15, 4.0, 5.2)
_APART = 1.0  # between paragraphs [mm]
_LETTERS = 9.0  # width of the column of letters [mm]
_INSETS = (3.4, 2.7)  # of a cell, left and right together, above and below together [mm]
_HEADING, _GROUP = 7.5, 7.5  # of a table, of rows that belong together [mm]
_RAGGED = 0.97  # lines lose something at their right end, and regular letters are narrower
_SMALLER = 0.82  # small words against the others
_SIGN = 6.0  # width of a sign [mm]


def paragraph_height(text: Rich, width_mm: float) -> float:
    """Height of a paragraph with the room under it [mm]."""
    return _lines(text, width_mm, _BODY) + _APART


def table_height(columns: Sequence[Column], rows: Iterable[Row], width_mm: float) -> float:
    """Height of a small table whose columns without a share are narrow [mm]."""
    narrow = sum(not column.share for column in columns) * _LETTERS
    shares = [column.share for column in columns]
    widths = [(width_mm - narrow) * share / sum(shares) - _INSETS[0] for share in shares]
    return _HEADING + sum(_row_height(row, widths) for row in rows)


def _row_height(row: Row, widths: Sequence[float]) -> float:
    if len(row.cells) == 1:
        return _GROUP
    wide = ((cell, width) for cell, width in zip(row.cells, widths, strict=True) if width > 0)
    return max(_lines(cell, width, _CELL) for cell, width in wide) + _INSETS[1]


def _lines(text: Rich, width_mm: float, lettering: tuple[float, float, float]) -> float:
    capitals, bare, stacked = lettering
    count = max(1, math.ceil(_width(text, capitals) * _RAGGED / width_mm))
    return count * bare + min(count, rich_text(text).count("/")) * (stacked - bare)


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
