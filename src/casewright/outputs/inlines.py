"""What stands inside a line of a page."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.dims import Content, Measure, Told, plain_text
from casewright.drawing import SignKind

__all__ = [
    "Blank", "Inline", "Link", "PageNumber", "PageNumbers", "Rich", "SignMark", "Small", "Strong",
    "Tick", "inlines_of", "rich_text",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Strong:
    """Words that carry weight: the number to cut to."""

    content: Content


@dataclass(frozen=True, slots=True)
class Small:
    """Words that step back: a path, a source."""

    content: Content


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead to an anchor.

    Parameters
    ----------
    anchor
        Where others lead to, when these words are what they look for.
    """

    content: Content
    target: str
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class PageNumber:
    """The number of the page an anchor is on; leads there."""

    target: str


@dataclass(frozen=True, slots=True)
class PageNumbers:
    """The pages that several anchors are on, in order, each once: '42, 44'; each leads there."""

    targets: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """A ruled line to write a reading on.

    Parameters
    ----------
    width_mm
        [mm].
    """

    width_mm: float = 18.0


@dataclass(frozen=True, slots=True)
class Tick:
    """A small box to tick."""


@dataclass(frozen=True, slots=True)
class SignMark:
    """A sign of the drawings, small."""

    sign: SignKind


Inline = str | Measure | Strong | Small | Link | PageNumber | PageNumbers | Blank | SignMark | Tick

Rich = Inline | tuple[Inline, ...]
"""A line of a page: one thing or several in order."""


def inlines_of(rich: Rich) -> tuple[Inline, ...]:
    """What stands in a line, in order; the lengths that a sentence knows by themselves."""
    found: list[Inline] = []
    for item in rich if isinstance(rich, tuple) else (rich,):
        found.extend(item.parts if isinstance(item, Told) else (item,))
    return tuple(found)


def rich_text(rich: Rich) -> str:
    """A line without its typography: for titles, alternatives and search."""
    if isinstance(rich, tuple):
        return "".join(rich_text(item) for item in rich)
    if isinstance(rich, str | Measure):
        return plain_text(rich)
    if isinstance(rich, Strong | Small | Link):
        return plain_text(rich.content)
    return ""
