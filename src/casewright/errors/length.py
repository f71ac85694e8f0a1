"""A written length that cannot be read."""

from __future__ import annotations

import unicodedata

from casewright.errors.base import CasewrightError

__all__ = ["LengthError"]


class LengthError(CasewrightError, ValueError):
    """A text that is no length, or could be read as two different ones.

    Its sentence is followed by the text with a caret under the character that is wrong.

    Parameters
    ----------
    text
        As typed.
    position
        Place of the character that is wrong, from 0 [characters].
    what
        What is wrong there.
    want
        What would be right.
    """

    def __init__(self, text: str, position: int, what: str, want: str) -> None:
        super().__init__(text, position, what, want)
        self.text = text
        self.position = position
        self.what = what
        self.want = want

    def __str__(self) -> str:
        shown = "".join(_shown(character) for character in self.text)
        before = sum(_columns(character) for character in self.text[: self.position])
        return f"{self.what}; {self.want}\n  {shown}\n  {' ' * before}^"


def _shown(character: str) -> str:
    """The character, or a box where printing it would break or bend the line."""
    return character if character.isprintable() else "\N{WHITE SQUARE}"


def _columns(character: str) -> int:
    """How many columns of a terminal the shown character takes [-]."""
    if unicodedata.combining(character):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1
