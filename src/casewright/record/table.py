"""The record as a table of comma-separated values (RFC 4180), out and in again without a change.

Lengths stand as `1168.4 mm` or as an exact ratio, `3302/5 mm`; a cell that a spreadsheet would run
as a formula gets an apostrophe in front, and so does one that begins with an apostrophe.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from casewright.dims import Unit
from casewright.errors import Location, Problem
from casewright.record.entry import Entry
from casewright.record.entry_reader import read_entry
from casewright.record.errors import RecordError

__all__ = ["COLUMNS", "entries_of_table", "table_of"]

COLUMNS = (
    "id", "at", "device", "seq", "kind", "path", "value", "length", "width", "thickness",
    "other sizes", "tool", "u", "minutes", "stock", "note", "corrects", "text", "against",
)  # fmt: skip
_NAMED = ("length", "width", "thickness")
_PLAIN = ("id", "at", "device", "kind", "path", "tool", "stock", "note", "corrects", "text")
_ACTIVE = ("=", "+", "-", "@", "\t", "\r", "\n", "|", "%", "'")
_BETWEEN = "; "
_LONGEST_CELL = 20_000


def table_of(entries: Iterable[Entry]) -> bytes:
    """Entries as a table, a line each, in UTF-8 with CRLF line ends."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for entry in entries:
        writer.writerow([_guarded(cell) for cell in _cells(entry)])
    return text.getvalue().encode()


def entries_of_table(content: bytes, unit: Unit, file: str) -> tuple[Entry, ...]:
    """Entries from a table.

    Parameters
    ----------
    unit
        Of lengths written without one.
    file
        What messages call it.

    Raises
    ------
    RecordError
        With everything that is wrong in it.
    """
    rows = _rows(content, file)
    problems: list[Problem] = []
    found: list[Entry] = []
    for line, row in rows:
        try:
            found.append(read_entry(_fields(row), unit, file, line))
        except RecordError as error:
            problems.extend(error.problems)
    if problems:
        raise RecordError(tuple(problems))
    return tuple(found)


def _cells(entry: Entry) -> list[str]:
    sizes = dict(entry.sizes)
    other = ((name, size) for name, size in sizes.items() if name not in ("", *_NAMED))
    cells = {name: str(getattr(entry, name)) for name in _PLAIN} | {
        "at": entry.at.isoformat(),
        "seq": str(entry.seq),
        "value": _length(sizes.get("")),
        **{name: _length(sizes.get(name)) for name in _NAMED},
        "other sizes": _pairs(other),
        "against": _pairs(entry.against),
        "u": _length(entry.u),
        "minutes": "" if entry.minutes is None else str(entry.minutes),
    }
    return [cells[column] for column in COLUMNS]


def _pairs(sizes: Iterable[tuple[str, Fraction]]) -> str:
    """'blank_width=592 mm; rabbet.depth=9.525 mm'; of the number itself 'value=592 mm'."""
    return _BETWEEN.join(f"{name or 'value'}={_length(size)}" for name, size in sizes)


def _length(size: Fraction | None) -> str:
    return "" if size is None else f"{_decimal(size)} mm"


def _decimal(size: Fraction) -> str:
    """Exactly, in decimals where there are at most three; else as a ratio."""
    thousandths = size * 1000
    if thousandths.denominator != 1:
        return str(size)
    whole, rest = divmod(abs(thousandths.numerator), 1000)
    text = f"{whole}.{rest:03d}".rstrip("0").rstrip(".")
    return f"-{text}" if size < 0 else text


def _guarded(cell: str) -> str:
    return f"'{cell}" if cell.startswith(_ACTIVE) else cell


def _bare(cell: str) -> str:
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(_ACTIVE) else cell


def _rows(content: bytes, file: str) -> list[tuple[int, dict[str, str]]]:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        what = "this is no text in UTF-8"
        raise RecordError.of(what, "save it as CSV in UTF-8", file=file) from None
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    try:
        heading = next(reader, [])
        lines = [(reader.line_num, row) for row in reader]
    except csv.Error as error:
        place = Location(file, reader.line_num)
        want = "write comma-separated values, with quotes round a cell that has a comma"
        raise RecordError((Problem(place, str(error), want),)) from None
    _check_heading(heading, file)
    found = [(line, row) for line, row in lines if any(cell.strip() for cell in row)]
    for line, row in found:
        if len(row) > len(heading) and any(row[len(heading) :]):
            what = f"{len(row)} cells under {len(heading)} headings"
            want = "put quotes round a cell that has a comma"
            raise RecordError((Problem(Location(file, line), what, want),))
    return [
        (line, {name: _bare(cell) for name, cell in zip(heading, row, strict=False)})
        for line, row in found
    ]


def _check_heading(heading: list[str], file: str) -> None:
    wrong = [name for name in heading if name not in COLUMNS]
    missing = [name for name in ("id", "at", "device", "kind") if name not in heading]
    if wrong or missing or len(set(heading)) < len(heading):
        what = "the first line does not name the columns"
        word = wrong[0][:40] if wrong else ", ".join(missing)
        want = f"they are {', '.join(COLUMNS)}; id, at, device and kind are needed"
        raise RecordError((Problem(Location(file, 1, word=ascii(word)[1:-1]), what, want),))


def _fields(row: dict[str, str]) -> dict[str, Any]:
    """A line of the table as the reader of entries wants it."""
    fields: dict[str, Any] = {name: row[name] for name in _PLAIN if row.get(name)}
    fields |= {name: row[name] for name in ("u", "minutes") if row.get(name)}
    fields["seq"] = row.get("seq") or 0
    named: dict[str, Any] = {name: row[name] for name in _NAMED if row.get(name)}
    named |= _of_pairs(row.get("other sizes", ""))
    against = _of_pairs(row.get("against", ""))
    fields["against"] = _all_exact(against["value"] if [*against] == ["value"] else against)
    value = row.get("value")
    if value and named:
        named["value"] = value
    fields["sizes"] = value if value and not named else named
    if "u" in fields:
        fields["u"] = _exact(fields["u"])
    fields["sizes"] = _all_exact(fields["sizes"])
    return fields


def _of_pairs(cell: str) -> dict[str, Any]:
    pairs = (pair.partition("=") for pair in cell.split(_BETWEEN) if pair)
    return {name: size for name, _, size in pairs}


def _all_exact(sizes: Any) -> Any:
    if isinstance(sizes, dict):
        return {name: _exact(size) for name, size in sizes.items()}
    return _exact(sizes)


def _exact(text: str) -> Any:
    """A ratio of millimetres as the reader wants it; anything else as it is written."""
    number = text.removesuffix(" mm")
    is_ratio = number != text and "/" in number and " " not in number
    return {"mm": number} if is_ratio else text
