"""Sentences that know which of their words are lengths, and of which numbers."""

from __future__ import annotations

from collections.abc import Iterable
from typing import SupportsIndex

from casewright.dims.measure import Measure

__all__ = ["Content", "Told", "joined", "parts_of", "plain_text", "tell"]


class Told(str):
    """A sentence that knows which of its words are lengths, and of which numbers.

    To all that reads text it is text. What cuts it up or puts it into another string gets plain
    letters; `tell`, `joined` and `+` keep what it knows.

    Parameters
    ----------
    parts
        Words and lengths in order; together they read as the text.

    Examples
    --------
    >>> from fractions import Fraction
    >>> rip = tell("rip it {} wide", Measure(Fraction(508, 5), "in", "board.rip"))
    >>> rip, [part.path for part in rip.parts if isinstance(part, Measure)]
    ('rip it 4 wide', ['board.rip'])
    """

    __slots__ = ("parts",)
    parts: tuple[str | Measure, ...]

    def __new__(cls, text: str = "", parts: tuple[str | Measure, ...] = ()) -> Told:
        """Words as they are; with `parts`, what they are made of."""
        made = super().__new__(cls, text)
        made.parts = parts or (str(text),)
        return made

    def __add__(self, other: str) -> Told:
        """Both in one sentence."""
        return joined("", (self, other))

    def __radd__(self, other: str) -> Told:
        """Both in one sentence."""
        return joined("", (other, self))

    def replace(self, old: str, new: str, count: SupportsIndex = -1, /) -> Told:
        """Other words for some; lengths stay, unless the words sought reach into one."""
        plain = super().replace(old, new, count)
        kept = (part.replace(old, new) if isinstance(part, str) else part for part in self.parts)
        made = joined("", kept)
        return made if made == plain else Told(plain)

    @property
    def capital(self) -> Told:
        """The sentence with a capital, where it begins with a word."""
        first, *rest = self.parts
        if not isinstance(first, str):
            return self
        return joined("", (first[:1].upper() + first[1:], *rest))


Content = str | Measure | tuple[str | Measure, ...]
"""What a line says: words, a length, or several of both."""


def tell(words: str, *told: str | Measure | int) -> Told:
    """A sentence with lengths, counts, names or other sentences in the places marked {}.

    Names that a person wrote come as `told`, never within `words`: they may have braces in them.

    Parameters
    ----------
    words
        The sentence; a pair of braces for each of `told`.

    Raises
    ------
    ValueError
        When there are more or fewer than places: a defect of the program.
    """
    between = words.split("{}")
    found: list[str | Measure] = [between[0]]
    for each, after in zip(told, between[1:], strict=True):
        found += [str(each) if isinstance(each, int) else each, after]
    return joined("", found)


def joined(separator: str, items: Iterable[str | Measure]) -> Told:
    """Several sentences and lengths as one, with a separator between them."""
    found: list[str | Measure] = []
    for number, item in enumerate(items):
        if number and separator:
            _add(found, separator)
        for part in parts_of(item):
            _add(found, part)
    return Told(plain_text(tuple(found)), tuple(found))


def _add(found: list[str | Measure], part: str | Measure) -> None:
    if isinstance(part, str) and found and isinstance(found[-1], str):
        found[-1] += part
    elif part != "":
        found.append(part)


def parts_of(content: Content) -> tuple[str | Measure, ...]:
    """Words and lengths of a line in order; those that a sentence knows are taken apart."""
    if isinstance(content, tuple):
        return tuple(part for each in content for part in parts_of(each))
    return content.parts if isinstance(content, Told) else (content,)


def plain_text(content: Content) -> str:
    """A line without the places of its lengths."""
    if isinstance(content, str):
        return str(content)
    if isinstance(content, Measure):
        return content.text
    return "".join(plain_text(item) for item in content)
