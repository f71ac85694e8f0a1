"""A written length that cannot be read."""

from __future__ import annotations

from casewright.errors.base import CasewrightError

__all__ = ["LengthError"]


class LengthError(CasewrightError, ValueError):
    """A text that is no length, or could be read as two different ones.

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
        shown = repr(self.text[self.position : self.position + 1] or self.text)
        return f"{self.text!r}, character {self.position + 1} ({shown}): {self.what}; {self.want}"
