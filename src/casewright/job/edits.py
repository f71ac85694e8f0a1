"""Changing a value of a job file: only what changes is touched.

Each edit takes a text and gives a text. Characters outside the value or the block that is edited
stay as they are: comments, order, spacing, line ends. Every result is parsed again and compared
with what was meant, so that an edit either does just that or refuses.
"""

from __future__ import annotations

import re

from casewright.job.positions import KeyPath, Positions, Span, scan
from casewright.job.splicing import (
    checked,
    found_at,
    line_end,
    literal,
    newline_of,
    parsed,
    put_at,
    refuse,
)
from casewright.job.syntax import dotted

__all__ = ["set_value"]

_PLAIN_KEY = re.compile(r"[A-Za-z0-9_-]+")


def set_value(text: str, path: KeyPath, value: str | int | bool) -> str:
    """Change one value, or add a key at the end of its section.

    A text is written in the quotes the old one had, where it can be.

    Parameters
    ----------
    path
        From the top of the file: ("case", "sink", "width").

    Raises
    ------
    EditError
        When the section is not there, the value is a table, or the text is no TOML.
    """
    positions = scan(text)
    data = parsed(positions)
    old = found_at(data, path)
    if isinstance(old, dict):
        refuse(f"{dotted(path)} is a table", "edit the file by hand")
    span = positions.values.get(path)
    if span is not None:
        new = literal(value, text[span.start : span.start + 1])
        edited = text[: span.start] + new + text[span.end :]
    else:
        edited = _with_new_key(positions, path, value)

    return checked(edited, data, put_at(path, value))


def _with_new_key(positions: Positions, path: KeyPath, value: str | int | bool) -> str:
    text, table, key = positions.text, path[:-1], path[-1]
    if not isinstance(key, str) or not _PLAIN_KEY.fullmatch(key):
        refuse(f"{dotted(path)} is not in the file", "edit the file by hand")
    line = f"{key} = {literal(value)}"
    if not table:
        return f"{line}{newline_of(text)}{text}"
    headers = [span for header, span in positions.headers if header == table]
    if not headers:
        refuse(f"there is no section [{dotted(table)}]", "edit the file by hand")
    place = _end_of_keys(positions, table, headers[0])
    newline = newline_of(text)
    if place and not text[:place].endswith("\n"):
        line = f"{newline}{line}"
    return f"{text[:place]}{line}{newline}{text[place:]}"


def _end_of_keys(positions: Positions, table: KeyPath, header: Span) -> int:
    """Behind the last line of a table's own keys."""
    ends = [
        span.end
        for path, span in positions.values.items()
        if len(path) == len(table) + 1 and path[:-1] == table
    ]
    return line_end(positions.text, max([header.end, *ends]))
