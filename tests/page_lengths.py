"""Lengths on the pages of the desk: those that can be asked why, and those that cannot."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from html.parser import HTMLParser

__all__ = ["PageReader", "bare_lengths"]

_FRACTION = r"(?<![\w./])~?(?:\d+ )?\d+/\d+\b"
_WITH_UNIT = r'(?<![\w./:])\d+(?:\.\d+)?(?:"| mm\b| in\b(?! \d)| ft\b| lb\b| kg\b)'
_SAID = r"(?<![\w./:])\d+ (?:wide|deep|long|high|thick|apart)\b"
_LENGTH = re.compile("|".join((_FRACTION, _WITH_UNIT, _SAID)))
_SCALE = re.compile(r"\d+:\d+ \([^)]*\)|this bar measures [^,.]* on a true print")
_LINES = frozenset(
    ("aside", "div", "figcaption", "g", "h1", "h2", "h3", "h4", "h5", "li", "ol", "p", "section",
     "svg", "table", "td", "text", "th", "tr", "ul")
)  # fmt: skip
_SILENT = frozenset(("desc", "style", "title"))
_VOID = frozenset(
    ("br", "circle", "hr", "img", "input", "line", "path", "polygon", "polyline", "rect", "use")
)


class PageReader(HTMLParser):
    """Reads a page: its numbers that can be asked, and all its other words, line by line.

    Parameters
    ----------
    lines
        Words of each line; '□' in the place of a number that can be asked.
    paths
        Of the numbers that can be asked.
    """

    def __init__(self, page: str) -> None:
        super().__init__()
        self.lines: list[str] = [""]
        self.paths: set[str] = set()
        self._open: list[tuple[str, bool]] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Begin an element."""
        if tag in _VOID:
            return
        given = dict(attrs)
        path, kind = given.get("data-path") or "", given.get("class") or ""
        is_number = path != "" and (tag == "data" or (tag == "g" and "data-target" not in given))
        if is_number and (tag == "data" or "dimension" in kind):
            self.paths.add(path)
        self._open.append((tag, is_number or tag in _SILENT))
        self._end_line(tag)
        if is_number and tag == "data":
            self.lines[-1] += "□"

    def handle_endtag(self, tag: str) -> None:
        """End an element, and what was left open within it."""
        if tag in _VOID:
            return
        while self._open and self._open.pop()[0] != tag:
            pass
        self._end_line(tag)

    def handle_data(self, data: str) -> None:
        """Words; those of a number that can be asked are left out."""
        if not any(is_left_out for _, is_left_out in self._open):
            self.lines[-1] += data

    def _end_line(self, tag: str) -> None:
        if tag in _LINES and self.lines[-1]:
            self.lines.append("")


def bare_lengths(lines: Iterable[str], names: Iterable[str] = ()) -> Iterator[str]:
    """Lengths among words, each with what stands round it.

    Parameters
    ----------
    names
        Names of goods, which are names also where a size stands in them. Scales of drawings are
        no lengths of the job.
    """
    known = sorted(names, key=len, reverse=True)
    for line in lines:
        words = _SCALE.sub("", line)
        for name in known:
            words = words.replace(name, "")
        for found in _LENGTH.finditer(words):
            yield words[max(0, found.start() - 40) : found.end() + 30].strip()
