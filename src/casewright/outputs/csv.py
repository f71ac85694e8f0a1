"""Tables as comma-separated values (RFC 4180), safe to open in a spreadsheet."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from typing import TypeAlias

from casewright.dims import Measure

__all__ = ["Cell", "csv_bytes"]

Cell: TypeAlias = str | int | Measure

_ACTIVE = ("=", "+", "-", "@", "\t", "\r", "\n", "|", "%")
_PLAIN_NUMBER = re.compile(r"[-+]?\d+(?:\.\d+)?")


def csv_bytes(headings: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A table as UTF-8 with CRLF line ends: the same table always gives the same bytes.

    A length is written as the shop writes it; under one inch as `0 7/8`, since a spreadsheet
    takes `7/8` for a date. Words that a spreadsheet would run as a formula get an apostrophe in
    front.

    Raises
    ------
    ValueError
        When a row is not as long as the headings: a defect of the program.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n", quoting=csv.QUOTE_MINIMAL)
    writer.writerow([_safe(heading) for heading in headings])
    for row in rows:
        if len(row) != len(headings):
            msg = f"a row of {len(row)} cells under {len(headings)} headings"
            raise ValueError(msg)
        writer.writerow([_written(cell) for cell in row])
    return text.getvalue().encode("utf-8")


def _written(cell: Cell) -> str:
    if isinstance(cell, int):
        return str(cell)
    if isinstance(cell, Measure):
        number = cell.text
        return f"0 {number}" if re.fullmatch(r"\d+/\d+", number) else _safe(number)
    return _safe(cell)


def _safe(text: str) -> str:
    """Words that no spreadsheet takes for a formula; NUL, which no reader takes, left out."""
    words = text.replace("\0", "")
    inner = words.lstrip(" \u00a0\ufeff")
    if inner.startswith(_ACTIVE) and not _PLAIN_NUMBER.fullmatch(words):
        return f"'{words}"
    return words
