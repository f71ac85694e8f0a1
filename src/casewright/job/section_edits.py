"""Putting a section into a job file, and changing a list of names in it."""

from __future__ import annotations

from collections.abc import Sequence

from casewright.job.positions import KeyPath, Positions, Span, scan
from casewright.job.splicing import (
    blocks,
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

__all__ = ["put_section", "set_names", "set_table"]


def put_section(text: str, path: KeyPath, lines: tuple[str, ...]) -> str:
    """Put a section behind the one that it belongs to, or in the place of the one that is there.

    Parameters
    ----------
    path
        From the top of the file: ("run", "sink_wall", "solved").
    lines
        What stands under its header.

    Raises
    ------
    EditError
        When what it belongs to is no section of its own, or the lines do more than fill it.
    """
    positions = scan(text)
    data = parsed(positions)
    newline = newline_of(text)
    block = newline.join([f"[{dotted(path)}]", *lines]) + newline
    new = found_at(parsed(scan(block)), path)
    if found_at(data, path) is not None:
        spans = blocks(positions, path)
        if len(spans) != 1:
            refuse(f"{dotted(path)} is written in several places", "edit the file by hand")
        place = Span(spans[0].start, _end_of_text(text, spans[0]))
    else:
        end = _end_of_outer(positions, path)
        place = Span(end, end)
        before = "" if text[:end].endswith("\n") else newline
        after = "" if text[end:].startswith(("\n", "\r\n")) or not text[end:] else newline
        block = f"{before}{newline}{block}{after}"
    edited = text[: place.start] + block + text[place.end :]

    return checked(edited, data, put_at(path, new))


def set_table(text: str, path: KeyPath, lines: Sequence[str]) -> str:
    """Replace a table that is written in braces or as a section of its own.

    Parameters
    ----------
    lines
        Its keys and values.

    Raises
    ------
    EditError
        When it is not there, or the lines do more than fill it.
    """
    positions = scan(text)
    data = parsed(positions)
    span = positions.values.get(path)
    if span is None:
        return put_section(text, path, tuple(lines))
    inline = f"{{ {', '.join(lines)} }}"
    new = found_at(parsed(scan(f"table = {inline}")), ("table",))

    return checked(f"{text[: span.start]}{inline}{text[span.end :]}", data, put_at(path, new))


def set_names(text: str, path: KeyPath, names: Sequence[str]) -> str:
    """Put names into another order, each in the place of one that was there.

    Raises
    ------
    EditError
        When there is no list of as many names.
    """
    positions = scan(text)
    data = parsed(positions)
    spans = [positions.values.get((*path, number)) for number in range(len(names))]
    known = [span for span in spans if span is not None]
    if len(known) != len(names) or (*path, len(names)) in positions.values:
        refuse(f"{dotted(path)} is no list of {len(names)} names", "edit the file by hand")
    edited = text
    for span, name in sorted(zip(known, names, strict=True), key=lambda pair: -pair[0].start):
        new = literal(name, text[span.start : span.start + 1])
        edited = edited[: span.start] + new + edited[span.end :]

    return checked(edited, data, put_at(path, list(names)))


def _end_of_outer(positions: Positions, path: KeyPath) -> int:
    """Behind what a new section belongs to, else behind its kin."""
    known = [header for header, _ in positions.headers]
    outer = [path[:-1]] if path[:-1] in known else []
    outer = outer or [header for header in known if header[: len(path) - 1] == path[:-1]]
    if not outer:
        return _end_of_text(positions.text, Span(0, len(positions.text)))
    last = max((span for header in outer for span in blocks(positions, header)),
               key=lambda span: span.end)  # fmt: skip
    return _end_of_text(positions.text, last)


def _end_of_text(text: str, span: Span) -> int:
    """Behind the last line of a section that has anything on it."""
    kept = text[: span.end].rstrip("\r\n \t")
    return line_end(text, len(kept))
