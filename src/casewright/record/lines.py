"""The record as lines of JSON, one entry a line, as devices send them to one another."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any

from casewright.dims import Unit
from casewright.errors import Location, Problem
from casewright.record.codec import entry_json
from casewright.record.entry import Entry
from casewright.record.entry_reader import read_entry
from casewright.record.errors import RecordError

__all__ = ["entries_of_lines", "lines_of"]

_MOST_PROBLEMS = 20


def lines_of(entries: Iterable[Entry], unit: Unit) -> bytes:
    """Entries, a line of JSON each, in UTF-8."""
    rows = (json.dumps(entry_json(entry, unit), ensure_ascii=False) for entry in entries)
    return "".join(f"{row}\n" for row in rows).encode()


def entries_of_lines(content: bytes, unit: Unit, file: str) -> tuple[Entry, ...]:
    """Entries from lines of JSON; empty lines are passed over.

    Parameters
    ----------
    unit
        Of lengths written without one.
    file
        What messages call it.

    Raises
    ------
    RecordError
        With what is wrong in it, line by line.
    """
    problems: list[Problem] = []
    found: list[Entry] = []
    for number, line in enumerate(content.removeprefix(b"\xef\xbb\xbf").split(b"\n"), 1):
        if not line.strip():
            continue
        try:
            found.append(read_entry(_parsed(line, file, number), unit, file, number))
        except RecordError as error:
            problems.extend(error.problems)
            if len(problems) >= _MOST_PROBLEMS:
                break
    if problems:
        raise RecordError(tuple(problems))
    return tuple(found)


def _parsed(line: bytes, file: str, number: int) -> Any:
    want = "write one JSON object a line"
    try:
        return json.loads(
            line, parse_float=str, parse_int=str, parse_constant=str, object_pairs_hook=_object
        )
    except RecursionError:
        what = "lists stand inside one another too deep"
        raise RecordError((Problem(Location(file, number), what, want),)) from None
    except ValueError:
        word = ascii(line[:40].decode("utf-8", "replace"))[1:-1]
        what = "this is no JSON"
        raise RecordError((Problem(Location(file, number, word=word), what, want),)) from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        msg = "a key stands twice"
        raise ValueError(msg)
    return found
