"""One written number: whole, decimal, a fraction, or a whole number with a fraction behind it."""

from __future__ import annotations

from fractions import Fraction
from typing import NoReturn

from casewright.dims.length_tokens import TRUE_MINUS, Token, tokens
from casewright.errors import LengthError

__all__ = ["Words", "numeral"]

_NUMBERS = ("whole", "decimal", "vulgar")
_ZERO = Fraction(0)


class Words:
    """The words of a text, read from left to right.

    Parameters
    ----------
    text
        As typed.

    Raises
    ------
    LengthError
        When a character can stand in no length.
    """

    __slots__ = ("index", "text", "words")

    def __init__(self, text: str) -> None:
        self.text = text
        self.words = tokens(text)
        self.index = 0

    def peek(self, ahead: int = 0) -> Token | None:
        """The word that many places on, or None behind the end."""
        place = self.index + ahead
        return self.words[place] if place < len(self.words) else None

    def kind(self, ahead: int = 0) -> str:
        """Kind of the word that many places on, empty behind the end."""
        place = self.index + ahead
        return self.words[place].kind if place < len(self.words) else ""

    def number(self, ahead: int = 0) -> bool:
        """Whether a number starts that many places on."""
        return self.kind(ahead) in _NUMBERS

    def take(self) -> Token:
        """The next word, passed over. Only where one is known to be there."""
        self.index += 1
        return self.words[self.index - 1]

    def take_number(self) -> Token:
        """The next word, which has to be a number.

        Raises
        ------
        LengthError
            When it is none, or nothing is left.
        """
        here = self.peek()
        if here is None:
            self.fail(
                self.words[-1], "a number is missing behind this", "write it, or take this away"
            )
        if here.kind not in _NUMBERS:
            self.fail(here, "a number is missing before this", "write it, or take this away")
        return self.take()

    def gaps(self) -> tuple[bool, bool]:
        """Whether there is space before and behind the next word."""
        word = self.words[self.index]
        before = self.index == 0 or self.words[self.index - 1].end < word.start
        behind = self.index + 1 == len(self.words) or word.end < self.words[self.index + 1].start
        return before, behind

    def fail(self, word: Token, what: str, want: str) -> NoReturn:
        """Refuse the text at a word."""
        raise LengthError(self.text, word.start, what, want)


def numeral(words: Words, first: Token) -> Fraction:
    """The number that starts with a word just taken, without its unit [-].

    Raises
    ------
    LengthError
        When it is not written as one number.
    """
    if words.kind() == "/":
        size = _over(words, first)
    elif first.kind == "whole":
        whole = int(first.text)
        size = whole + _part_behind(words, whole)
    else:
        size = Fraction(first.text)
    following = words.peek()
    if following is not None and following.kind in _NUMBERS:
        if following.text.startswith(".") and following.start == first.end:
            want = f"write {first.text.rstrip('.')}"
            words.fail(following, "a number has one decimal point", want)
        words.fail(
            following,
            "two numbers side by side",
            "write a fraction as in 11 7/8, or + between them",
        )
    if following is not None and following.kind == "/":
        words.fail(following, "a fraction has one slash", "write it as 7/8")
    return size


def _over(words: Words, over: Token) -> Fraction:
    """The fraction whose upper number is already taken; the slash comes next."""
    slash = words.take()
    under = words.peek()
    if over.kind != "whole" or under is None or under.kind != "whole":
        words.fail(slash, "a fraction has a whole number on each side", "write it as 7/8")
    if int(under.text) == 0:
        words.fail(under, "a fraction cannot have 0 below the line", "write it as 7/8")
    words.take()
    return Fraction(int(over.text), int(under.text))


def _part_behind(words: Words, whole: int) -> Fraction:
    """The fraction behind a whole number, 0 when there is none."""
    hyphen = words.peek() if words.kind() == "-" else None
    if not _is_fraction(words, 0 if hyphen is None else 1):
        return _ZERO
    if hyphen is not None:
        gaps = words.gaps()
        if gaps == (True, True):
            return _ZERO
        if gaps != (False, False) or hyphen.text == TRUE_MINUS:
            words.fail(
                hyphen,
                "this could join a fraction or take it away",
                "write 11-7/8 to join, 11 - 7/8 to take away",
            )
        words.take()
    first = words.take()
    part = Fraction(first.text) if first.kind == "vulgar" else _over(words, first)
    if part >= 1:
        more, rest = divmod(whole + part, 1)
        words.fail(
            first,
            "a fraction behind a whole number is under 1",
            f"write {more} {rest}" if rest else f"write {more}",
        )
    if hyphen is not None and words.kind() == "-" and words.gaps() == (False, False):
        words.fail(
            words.take(),
            "not clear which of these signs take away",
            "put a space on each side of those",
        )
    return part


def _is_fraction(words: Words, ahead: int) -> bool:
    kind = words.kind(ahead)
    return kind == "vulgar" or (kind == "whole" and words.kind(ahead + 1) == "/")
