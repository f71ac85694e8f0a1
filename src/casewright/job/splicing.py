"""What edits of a job file share: taking the text apart, and checking what became of it."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any, NoReturn

from casewright.errors import CasewrightError, JobFileError
from casewright.job.positions import KeyPath, Positions, Span, scan
from casewright.job.syntax import Plain, copied, dotted, parse

__all__ = [
    "EditError", "basic_string", "blocks", "cases_in", "checked", "found_at", "line_end",
    "line_start", "literal", "newline_of", "parsed", "put_at", "refuse", "runs_in",
]  # fmt: skip


class EditError(CasewrightError, ValueError):
    """An edit that cannot be made without touching more than was meant.

    Parameters
    ----------
    what
        What is in the way.
    want
        What the person can do instead.
    """

    def __init__(self, what: str, want: str) -> None:
        super().__init__(what, want)
        self.what = what
        self.want = want

    def __str__(self) -> str:
        return f"{self.what}; {self.want}"


def refuse(what: str, want: str) -> NoReturn:
    """Refuse an edit.

    Raises
    ------
    EditError
        Always.
    """
    raise EditError(what, want)


def parsed(positions: Positions) -> dict[str, Plain]:
    """Data of a text.

    Raises
    ------
    EditError
        When it is no TOML.
    """
    try:
        return parse("the job file", positions)
    except JobFileError as error:
        refuse(f"the job file has no meaning: {error}", "put that right first")


def checked(
    edited: str, before: dict[str, Plain], change: Callable[[dict[str, Any]], None]
) -> str:
    """The edited text, when it means what was meant and nothing else.

    Parameters
    ----------
    before
        Data of the text before the edit.
    change
        What was meant, done to the data.

    Raises
    ------
    EditError
        When the edit would change anything else.
    """
    wanted = {key: copied(value) for key, value in before.items()}
    change(wanted)
    if parsed(scan(edited)) != _without_empty(wanted):
        refuse("this edit would change more than it should", "edit the file by hand")
    return edited


def _without_empty(wanted: dict[str, Any]) -> dict[str, Any]:
    """Without a section of cases that has become empty: its headers are gone."""
    if wanted.get("case") == {}:
        return {key: value for key, value in wanted.items() if key != "case"}
    return wanted


def put_at(path: KeyPath, value: Any) -> Callable[[dict[str, Any]], None]:
    """A change for `checked`: a value at a path; tables that are not there yet are made."""

    def change(wanted: dict[str, Any]) -> None:
        inner: Any = wanted
        for step in path[:-1]:
            inner = inner.setdefault(step, {}) if isinstance(inner, dict) else inner[step]
        inner[path[-1]] = value

    return change


def found_at(data: Plain, path: KeyPath) -> Plain:
    """What stands at a path; None when nothing does."""
    here: Any = data
    for step in path:
        if isinstance(here, list):
            known = isinstance(step, int) and step < len(here)
        else:
            known = isinstance(here, dict) and step in here
        if not known:
            return None
        here = here[step]
    return here


def cases_in(data: Plain) -> dict[str, Plain]:
    """The cases of a job's data by name."""
    cases = found_at(data, ("case",))
    return cases if isinstance(cases, dict) else {}


def runs_in(data: Any) -> dict[str, Any]:
    """The runs of a job's data that have a list of cases, by name."""
    runs = data.get("run", {})
    known = runs if isinstance(runs, dict) else {}
    return {
        key: run
        for key, run in known.items()
        if isinstance(run, dict) and isinstance(run.get("cases"), list)
    }


def literal(value: str | int | bool, quote: str = '"') -> str:
    """A value as TOML on one line.

    Parameters
    ----------
    quote
        Kind of quotes that is wished for.

    Raises
    ------
    EditError
        When a text has more than one line.
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if not value.isprintable():
        refuse("a value is one printable line", "write it without line breaks")
    if "'" not in value and (quote == "'" or '"' in value or "\\" in value):
        return f"'{value}'"
    escaped = value.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def basic_string(text: str) -> str:
    """Any text as TOML on one line: the escapes of JSON, and the one sign that TOML adds."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def newline_of(text: str) -> str:
    """The line end a text uses."""
    return "\r\n" if "\r\n" in text else "\n"


def line_end(text: str, place: int) -> int:
    """Start of the line after the one a place is in."""
    found = text.find("\n", place)
    return len(text) if found < 0 else found + 1


def line_start(text: str, place: int) -> int:
    """Start of the line that a place is in."""
    return text.rfind("\n", 0, place) + 1


def blocks(positions: Positions, path: KeyPath) -> list[Span]:
    """Every stretch of the text that belongs to a section and the sections inside it."""
    if not any(header == path for header, _ in positions.headers):
        refuse(f"{dotted(path)} is not a section of its own", "edit the file by hand")
    starts = [_block_start(positions.text, span.start) for _, span in positions.headers]
    ends = [*starts[1:], len(positions.text)]
    return [
        Span(start, end)
        for (header, _), start, end in zip(positions.headers, starts, ends, strict=True)
        if header[: len(path)] == path
    ]


def _block_start(text: str, header: int) -> int:
    """Start of the notes directly above a header, or of the header itself."""
    start = line_start(text, header)
    while start:
        above = line_start(text, start - 1)
        if not text[above:start].lstrip().startswith("#"):
            break
        start = above
    return start
