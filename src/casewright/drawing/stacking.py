"""Fractions stacked: figures over and under a bar."""

from __future__ import annotations

import re
from typing import NamedTuple

from casewright.dims import Content, Measure, Told

__all__ = ["Piece", "Stack", "pieces"]


class Stack(NamedTuple):
    """A fraction to be stacked: figures over and under a bar."""

    numerator: str
    denominator: str


Piece = str | Stack
_FRACTION = re.compile(r"(?:(?<=\d) )?(\d+)/(\d+)")


def pieces(content: Content) -> tuple[Piece, ...]:
    """The words and fractions of a line in order. Words that merely look like one stay words."""
    if isinstance(content, Told):
        return pieces(content.parts)
    if isinstance(content, str):
        return (content,) if content else ()
    if isinstance(content, Measure):
        number = _apart(content.number)
        return tuple(each for each in (content.before, *number, content.after) if each)
    return tuple(piece for item in content for piece in pieces(item))


def _apart(number: str) -> list[Piece]:
    found: list[Piece] = []
    end = 0
    for match in _FRACTION.finditer(number):
        found.extend((number[end : match.start()], Stack(match[1], match[2])))
        end = match.end()
    return [*found, number[end:]]
