"""Entries of a record from a file and into one."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path

from casewright.dims import Unit
from casewright.record import (
    Entry,
    RecordError,
    entries_of_lines,
    entries_of_table,
    lines_of,
    table_of,
)

__all__ = ["STANDARD", "check_export", "content_of", "entries_in"]

STANDARD = Path("-")
"""Stands for standard input and output."""

_SIGN = 12
_LARGEST = 500_000_000


def entries_in(file: Path, unit: Unit) -> tuple[Entry, ...]:
    """Entries in a file: a table when its name ends in .csv, else lines of JSON.

    Raises
    ------
    RecordError
        When it cannot be read, or with everything that is wrong in it.
    """
    name = "standard input" if file == STANDARD else file.name
    content = _content(file, name)
    if len(content) > _LARGEST:
        what = "the file is over 500 MB, no job has that many entries"
        raise RecordError.of(what, "name the file of entries itself", file=name)
    if file.suffix.lower() == ".csv":
        return entries_of_table(content, unit, name)
    return entries_of_lines(content, unit, name)


def content_of(entries: Iterable[Entry], file: Path, unit: Unit) -> bytes:
    """Entries as a file of that name has them."""
    is_table = file.suffix.lower() == ".csv"
    return table_of(entries) if is_table else lines_of(entries, unit)


def check_export(file: Path) -> None:
    """Whether entries may be written there: over an earlier export, never over anything else.

    Raises
    ------
    RecordError
        When something else has that name.
    """
    try:
        with file.open("rb") as stream:
            start = stream.read(_SIGN)
    except FileNotFoundError:
        return
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise RecordError.of(reason, "choose another name", file=str(file)) from None
    if start and not start.startswith((b"id,at,device", b'{"id"')):
        what = "it holds something else and is left as it is"
        raise RecordError.of(what, "choose another name", file=str(file))


def _content(file: Path, name: str) -> bytes:
    try:
        if file == STANDARD:
            return sys.stdin.buffer.read(_LARGEST + 1)
        with file.open("rb") as stream:
            return stream.read(_LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        want = "name a file of entries that may be read"
        raise RecordError.of(reason, want, file=name) from None
