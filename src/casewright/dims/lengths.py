"""Reading a length as a woodworker writes it.

A length is a sum of terms; a term is a number with or without a unit: `36`, `11 7/8`,
`11-7/8"`, `3' 6 1/2"`, `302 mm`, `.5`. Where the trade reads one text in two ways, it is refused
and both ways are spelled out: a guess would be a part cut wrong.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from casewright.dims.length_numbers import Words, numeral
from casewright.dims.length_tokens import UNITS_READ, Token
from casewright.dims.units import Unit
from casewright.errors import LengthError
from casewright.sources import FOOT, INCH

__all__ = ["LONGEST_TEXT", "parse_length"]

LONGEST_TEXT = 200
"""Longest text read as a length [characters]."""

_MILLIMETRES = {
    "in": INCH, "ft": FOOT, "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000),
}  # fmt: skip
_INCHES = ("in", "ft")


@lru_cache(maxsize=4096)
def parse_length(text: str, unit: Unit) -> Fraction:
    """A length as written, exactly.

    Parameters
    ----------
    text
        What was typed: a sum of numbers, each with or without a unit of its own.
    unit
        What a bare number means.

    Returns
    -------
    Length [mm]; negative when the text says so.

    Raises
    ------
    LengthError
        When the text is no length or could be read in two ways; it points at the character.

    Sources
    -------
    `inch-1959`.

    Examples
    --------
    >>> parse_length("11 7/8", "in")
    Fraction(2413, 8)
    >>> parse_length("36 - 3 mm", "in")
    Fraction(4557, 5)
    """
    if len(text) > LONGEST_TEXT:
        raise LengthError(text[:LONGEST_TEXT], 0, "too long for a length", "write one length")
    words = Words(text)
    if words.peek() is None:
        raise LengthError(
            text, 0, "nothing is written here", "write a length such as 11 7/8 or 302 mm"
        )
    return _sum(words, unit)


class _Term(NamedTuple):
    """One term of a sum, in the unit written behind it."""

    size: Fraction
    unit: str
    """Empty behind a bare number."""
    first: Token


def _sum(words: Words, unit: Unit) -> Fraction:
    lead = words.kind()
    if lead in ("+", "-"):
        words.take()
    term = _term(words)
    result = -_millimetres(term, unit) if lead == "-" else _millimetres(term, unit)
    foreign = _is_foreign(term, unit)
    while words.peek() is not None:
        sign = _sign(words)
        before, term = term, _term(words)
        if foreign and not term.unit:
            words.fail(term.first, "the sum has two units, this number none", UNITS_READ)
        if sign.kind == "-" and before.unit == "ft" and term.unit in ("", "in"):
            words.fail(
                sign,
                "this could join feet and inches, or take away",
                'write 3\'-6" for three feet six, 3\' 0" - 6" to take away',
            )
        foreign = foreign or _is_foreign(term, unit)
        size = _millimetres(term, unit)
        result = result - size if sign.kind == "-" else result + size
    return result


def _sign(words: Words) -> Token:
    sign = words.take()
    if sign.kind == "unit":
        words.fail(sign, "a number is missing before this", "put one unit behind each number")
    if sign.kind not in ("+", "-"):
        words.fail(sign, "a sign is missing before this", "put + or - there")
    return sign


def _millimetres(term: _Term, unit: Unit) -> Fraction:
    return term.size * _MILLIMETRES[term.unit or unit]


def _is_foreign(term: _Term, unit: Unit) -> bool:
    return term.unit != "" and (term.unit in _INCHES) != (unit == "in")


def _term(words: Words) -> _Term:
    first = words.take_number()
    size = numeral(words, first)
    if words.kind() != "unit":
        return _Term(size, "", first)
    mark = words.take()
    if mark.text == "ft":
        inches = _inches_behind(words)
        if inches is not None:
            if size.denominator != 1:
                words.fail(first, "feet with inches behind them are whole", "write 3' 6\"")
            return _Term(12 * size + inches, "in", first)
    return _Term(size, mark.text, first)


def _inches_behind(words: Words) -> Fraction | None:
    """The inches behind feet, with a hyphen or without; None when there are none."""
    if words.kind() == "-" and words.number(1) and words.gaps() == (False, False):
        words.take()
    if not words.number():
        return None
    first = words.take()
    size = numeral(words, first)
    if size >= 12:
        words.fail(first, "inches behind feet are under 12", "write 4' 2\" for 3' 14\"")
    if words.kind() == "unit":
        mark = words.take()
        if mark.text != "in":
            words.fail(mark, "only inches stand behind feet", 'use in or ", or put + between')
    return size
