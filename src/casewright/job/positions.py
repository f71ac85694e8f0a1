"""Where every key and value of a TOML text stands.

The parser proper decides what a text means; this scanner only finds places, so that a message
can name line, column and word, and an edit can replace just one value. It never fails: where it
cannot follow, it stops, and the parser says what is wrong there.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from contextlib import suppress
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TypeAlias

__all__ = ["DEEPEST", "KeyPath", "Positions", "Repeated", "Span", "scan"]

KeyPath: TypeAlias = tuple[str | int, ...]
"""Keys from the top of the file; numbers count entries of lists from 0."""

DEEPEST = 12
"""Lists and tables inside one another deeper than this are refused [-]."""

_SIZE_STEPS = len(("case", "NAME", "width"))
_WIDTH_STEPS = len(("run", "NAME", "solved", "widths", "CASE"))


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of the text, from `start` up to before `end` [characters]."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Repeated:
    """A key or table that is written a second time."""

    path: KeyPath
    first: Span
    again: Span


@dataclass(slots=True)
class Positions:
    """Places in one text.

    Parameters
    ----------
    text
        What was scanned.
    keys
        Where each key is written; for a table the name in its header.
    values
        Where each value is written; tables with a header of their own have none.
    headers
        Each `[table]`, brackets included, in the order of the file. An entry of a list of
        tables carries its number.
    repeated
        Keys and tables written twice.
    too_deep
        Where the nesting gets too deep, or None.
    unfinished
        The innermost value that could not be followed to its end, or None.
    """

    text: str
    keys: dict[KeyPath, Span] = field(default_factory=dict)
    values: dict[KeyPath, Span] = field(default_factory=dict)
    headers: list[tuple[KeyPath, Span]] = field(default_factory=list)
    repeated: list[Repeated] = field(default_factory=list)
    too_deep: Span | None = None
    unfinished: Span | None = None
    _starts: list[int] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        self._starts = [0, *(found.end() for found in re.finditer("\n", self.text))]

    def at(self, position: int) -> tuple[int, int]:
        """Line and column of a character, both from 1."""
        line = bisect_right(self._starts, position)
        return line, position - self._starts[line - 1] + 1

    def line(self, path: KeyPath) -> int:
        """Line of the nearest thing written on the way to a path; 0 when there is none."""
        span = self.nearest(path)
        return self.at(span.start)[0] if span else 0

    def nearest(self, path: KeyPath) -> Span | None:
        """Place of a value, else of its key, else of the nearest table around it.

        The width of a case stands where an accepted layout gave it, unless the case has its own.
        """
        if len(path) == _SIZE_STEPS and path[::2] == ("case", "width") and path not in self.values:
            path = next(iter(self.solved_widths(str(path[1]))), path)
        for length in range(len(path), 0, -1):
            span = self.values.get(path[:length]) or self.keys.get(path[:length])
            if span:
                return span
        return None

    def solved_widths(self, case: str) -> list[KeyPath]:
        """Where accepted layouts of runs or islands gave a case its width."""
        return [
            path
            for path in self.keys
            if len(path) == _WIDTH_STEPS
            and path[0] in ("run", "island")
            and path[2:] == ("solved", "widths", case)
        ]

    def has(self, path: KeyPath) -> bool:
        """Whether the text gives a value at this very path."""
        return path in self.values

    def word(self, span: Span) -> str:
        """What is written there, its first line only."""
        return self.text[span.start : span.end].partition("\n")[0].rstrip("\r")


_SPACE = re.compile(r"[ \t]*")
_BLANK = re.compile(r"(?:[ \t\r\n]+|#[^\n]*)*")
_BARE = re.compile(r"[A-Za-z0-9_-]+")
_STRING = re.compile(
    r'''
    """(?:[^\\]|\\.)*?"""(?:"{0,2})     # several lines, with escapes
    | \'{3}.*?\'{3}(?:\'{0,2})          # several lines, as they are
    | "(?:[^"\\\n]|\\[^\n])*"          # one line, with escapes
    | \'[^\'\n]*\'                      # one line, as it is
    ''',
    re.DOTALL | re.VERBOSE,
)
_PLAIN = re.compile(r"[^\s,\]}#][^,\]}#\n]*")
_ESCAPE = re.compile(r'\\(["\\bfnrt]|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8})')
_ESCAPED = {"b": "\b", "f": "\f", "n": "\n", "r": "\r", "t": "\t", '"': '"', "\\": "\\"}


class _LostError(Exception):
    """The scanner cannot follow; the parser will say why."""


@lru_cache(maxsize=4)  # an edit asks several times for those of the same text
def scan(text: str) -> Positions:
    """Places of all keys and values, as far as the text can be followed."""
    found = Positions(text)
    with suppress(_LostError):
        _Scanner(found).run()
    return found


class _Scanner:
    def __init__(self, found: Positions) -> None:
        self.found = found
        self.text = found.text
        self.place = 0
        self.table: KeyPath = ()
        self.lists: dict[KeyPath, int] = {}
        self.opened: dict[KeyPath, Span] = {}

    def run(self) -> None:
        """Go through the text, a header or a line of key and value at a time."""
        while True:
            self.place = self._after(_BLANK)
            if self.place >= len(self.text):
                return
            if self.text[self.place] == "[":
                self._header()
            else:
                self._pair(self.table, 0)

    def _after(self, pattern: re.Pattern[str]) -> int:
        match = pattern.match(self.text, self.place)
        if match is None:
            raise _LostError
        return match.end()

    def _peek(self) -> str:
        return self.text[self.place : self.place + 1]

    def _take(self, mark: str) -> None:
        if not self.text.startswith(mark, self.place):
            raise _LostError
        self.place += len(mark)

    def _header(self) -> None:
        start = self.place
        many = self.text.startswith("[[", start)
        self._take("[[" if many else "[")
        names = self._names()
        self._take("]]" if many else "]")
        path = (*self._resolved(tuple(name for name, _ in names[:-1])), names[-1][0])
        place = Span(start, self.place)
        if many:
            self.lists[path] = self.lists.get(path, -1) + 1
            path += (self.lists[path],)
        elif path in self.opened or path in self.found.values:
            first = self.opened.get(path) or self.found.keys[path]
            self.found.repeated.append(Repeated(path, first, names[-1][1]))
        self.opened.setdefault(path, names[-1][1])
        if many:
            self.found.keys.setdefault(path[:-1], names[-1][1])
        self.found.headers.append((path, place))
        self._name_keys(path, names)
        self.table = path

    def _name_keys(self, path: KeyPath, names: list[tuple[str, Span]]) -> None:
        for back, (_, span) in enumerate(reversed(names)):
            inner = path[: len(path) - back]
            self.found.keys.setdefault(inner, span)

    def _resolved(self, path: KeyPath) -> KeyPath:
        """The path with the number of the newest entry behind each list of tables."""
        full: KeyPath = ()
        for name in path:
            full += (name,)
            if full in self.lists:
                full += (self.lists[full],)
        return full

    def _names(self) -> list[tuple[str, Span]]:
        names = [self._name()]
        while True:
            self.place = self._after(_SPACE)
            if self._peek() != ".":
                return names
            self.place += 1
            names.append(self._name())

    def _name(self) -> tuple[str, Span]:
        self.place = start = self._after(_SPACE)
        quote = self._peek()
        self.place = self._after(_STRING if quote in ('"', "'") and quote else _BARE)
        written = self.text[start : self.place]
        return _unquoted(written), Span(start, self.place)

    def _pair(self, table: KeyPath, depth: int) -> None:
        names = self._names()
        path = table + tuple(name for name, _ in names)
        self._take("=")
        self.place = self._after(_SPACE)
        first = self.found.keys.get(path)
        if first and (path in self.found.values or path in self.opened):
            self.found.repeated.append(Repeated(path, first, names[-1][1]))
        self._name_keys(path, names)
        self._value(path, depth)

    def _value(self, path: KeyPath, depth: int) -> None:
        start = self.place
        if depth > DEEPEST:
            self.found.too_deep = Span(start, start + 1)
            raise _LostError
        try:
            self._whole_value(path, depth)
        except _LostError:
            self.found.unfinished = self.found.unfinished or Span(start, self.place)
            raise
        self.found.values.setdefault(path, Span(start, self.place))

    def _whole_value(self, path: KeyPath, depth: int) -> None:
        match self._peek():
            case "[":
                self._list(path, depth)
            case "{":
                self._inline_table(path, depth)
            case '"' | "'":
                self.place = self._after(_STRING)
            case _:
                self.place = self._after(_PLAIN)
                while self.text[self.place - 1] in " \t\r":
                    self.place -= 1

    def _list(self, path: KeyPath, depth: int) -> None:
        self._take("[")
        number = 0
        while True:
            self.place = self._after(_BLANK)
            if self._peek() == "]":
                break
            self._value((*path, number), depth + 1)
            number += 1
            self.place = self._after(_BLANK)
            if self._peek() != ",":
                break
            self.place += 1
        self._take("]")

    def _inline_table(self, path: KeyPath, depth: int) -> None:
        self._take("{")
        while True:
            self.place = self._after(_BLANK)
            if self._peek() == "}":
                break
            self._pair(path, depth + 1)
            self.place = self._after(_BLANK)
            if self._peek() != ",":
                break
            self.place += 1
        self._take("}")


def _unquoted(written: str) -> str:
    if written[0] == "'":
        return written[1:-1]
    if written[0] != '"':
        return written
    return _ESCAPE.sub(_escaped, written[1:-1])


def _escaped(match: re.Match[str]) -> str:
    code = match[1]
    if code[0] in "uU":
        number = int(code[1:], 16)
        return chr(number) if number <= 0x10FFFF else match[0]
    return _ESCAPED[code]
