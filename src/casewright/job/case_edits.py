"""Putting a case into a job file, and taking one out.

Blocks of text are spliced in and out; all other characters stay as they are.
"""

from __future__ import annotations

import re
from typing import Any

from casewright.job.edits import set_value
from casewright.job.positions import KeyPath, Positions, Span, scan
from casewright.job.splicing import (
    blocks,
    cases_in,
    checked,
    found_at,
    line_end,
    line_start,
    newline_of,
    parsed,
    refuse,
    runs_in,
)
from casewright.job.syntax import Plain, dotted

__all__ = ["delete_case", "insert_case", "own_width"]

_PLAIN_KEY = re.compile(r"[A-Za-z0-9_-]+")


def insert_case(text: str, key: str, lines: tuple[str, ...], *, after: str | None = None) -> str:
    """Put a new case behind another, or behind all others.

    Parameters
    ----------
    key
        Name of the new case.
    lines
        What stands under its header, `kind = "wall"` and so on.
    after
        Name of the case it comes behind; None: the last one.

    Raises
    ------
    EditError
        When the name is taken or unfit, there is no such case, or the lines do more than describe
        the case.
    """
    positions = scan(text)
    data = parsed(positions)
    cases = cases_in(data)
    if not _PLAIN_KEY.fullmatch(key):
        refuse(f"{key!r} is no name for a case", "use letters, digits, - and _")
    if key in cases:
        refuse(f"there is a case {key} already", "choose another name")
    if after is not None and after not in cases:
        refuse(f"there is no case {after}", "name one that is there")
    newline = newline_of(text)
    block = newline.join([f"[case.{key}]", *lines]) + newline
    place = _end_of_case(positions, after)
    before, behind = text[:place], text[place:]
    if before and not before.endswith("\n"):
        before += newline
    lead = newline if before.strip() and not before.endswith(newline * 2) else ""
    tail = newline if behind.strip() and not behind.startswith(("\n", "\r\n")) else ""
    added = parsed(scan(block))

    def change(wanted: dict[str, Any]) -> None:
        wanted.setdefault("case", {})[key] = found_at(added, ("case", key))
        if added.keys() != {"case"} or cases_in(added).keys() != {key}:
            refuse("these lines hold more than one case", "insert one at a time")

    return checked(f"{before}{lead}{block}{tail}{behind}", data, change)


def delete_case(text: str, key: str) -> str:
    """Take a case out, its doors and style with it, its name and its solved width out of its run.

    Notes directly above its header go with it. A solved layout that gave no other width goes as
    a whole. A run that holds nothing else must be changed by hand first.

    Raises
    ------
    EditError
        When there is no such case, or it is not written as a section of its own.
    """
    positions = scan(text)
    data = parsed(positions)
    if key not in cases_in(data):
        refuse(f"there is no case {key}", "name one that is there")
    widths = positions.solved_widths(key)
    spans = [
        *blocks(positions, ("case", key)),
        *_members(positions, data, key),
        *(span for path in widths for span in _solved_width(positions, data, path)),
    ]
    edited = text
    for span in sorted(spans, key=lambda each: -each.start):
        edited = edited[: span.start] + edited[span.end :]

    def change(wanted: dict[str, Any]) -> None:
        del wanted["case"][key]
        for run in runs_in(wanted).values():
            run["cases"] = [each for each in run["cases"] if each != key]
        for path in widths:
            _forget_width(wanted, path)

    return checked(edited, data, change)


def _end_of_case(positions: Positions, after: str | None) -> int:
    """Where the blocks of a case end: of one, or of the last one in the file."""
    path: KeyPath = ("case",) if after is None else ("case", after)
    headers = [header for header, _ in positions.headers if header[: len(path)] == path]
    if not headers:
        return len(positions.text)
    spans = [
        span
        for header in dict.fromkeys(header[:2] for header in headers)
        for span in blocks(positions, header)
    ]
    end = max(span.end for span in spans)
    kept = positions.text[:end].rstrip("\r\n \t")
    return line_end(positions.text, len(kept))


def _members(positions: Positions, data: Plain, key: str) -> list[Span]:
    """The entries of a case in the lists of its runs, each with one comma."""
    found = []
    for run_key, run in runs_in(data).items():
        base: KeyPath = ("run", run_key, "cases")
        names: list[Plain] = run["cases"]
        for number, name in enumerate(names):
            if name == key:
                found.append(_entry(positions, base, number, len(names)))
    return found


def _entry(positions: Positions, base: KeyPath, number: int, count: int) -> Span:
    spans = [positions.values.get((*base, each)) for each in range(count)]
    own = spans[number]
    if own is None or count == 1:
        refuse(f"{dotted(base)} would be empty", "take the run out by hand first")
    after = spans[number + 1] if number + 1 < count else None
    before = spans[number - 1] if number else None
    if after is not None:
        return Span(own.start, after.start)
    return Span(before.end, own.end) if before is not None else own


def own_width(text: str, key: str, width: str) -> str:
    """Give a case a width of its own; one that an accepted layout gave it goes.

    Raises
    ------
    EditError
        When there is no such case, or it is not written as a section of its own.
    """
    positions = scan(text)
    data = parsed(positions)
    widths = positions.solved_widths(key)
    spans = [span for path in widths for span in _solved_width(positions, data, path)]
    edited = text
    for span in sorted(spans, key=lambda each: -each.start):
        edited = edited[: span.start] + edited[span.end :]

    def change(wanted: dict[str, Any]) -> None:
        for path in widths:
            _forget_width(wanted, path)

    return set_value(checked(edited, data, change), ("case", key, "width"), width)


def _solved_width(positions: Positions, data: Plain, path: KeyPath) -> list[Span]:
    """The entry of a solved width with one comma, or its line.

    The last one of a run takes the whole section along: there is no layout without a width.
    """
    base = path[:-1]
    widths = found_at(data, base)
    names = list(widths) if isinstance(widths, dict) else []
    if path[0] == "run" and len(names) == 1:
        return blocks(positions, base[:-1])
    own = Span(positions.keys[path].start, positions.values[path].end)
    if base not in positions.values:
        return [Span(line_start(positions.text, own.start), line_end(positions.text, own.end))]
    entries = sorted(
        ((*base, each) for each in names), key=lambda each: positions.keys[each].start
    )
    at = entries.index(path)
    if at + 1 < len(entries):
        return [Span(own.start, positions.keys[entries[at + 1]].start)]
    return [Span(positions.values[entries[at - 1]].end, own.end) if at else own]


def _forget_width(wanted: dict[str, Any], path: KeyPath) -> None:
    outer = found_at(wanted, path[:2])
    widths = found_at(wanted, path[:-1])
    if isinstance(outer, dict) and isinstance(widths, dict):
        del widths[str(path[-1])]
        if path[0] == "run" and not widths:
            del outer["solved"]
