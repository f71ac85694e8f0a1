"""The words a written length is made of: numbers, signs and units, each in its place."""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple, NoReturn

from casewright.errors import LengthError

__all__ = ["TRUE_MINUS", "UNITS_READ", "Token", "tokens"]

UNITS_READ = "use in or \", ft or ', mm, cm or m"
"""The units, as a message names them."""

_UNIT_WORDS = {
    '"': "in", "''": "in", "in": "in", "inch": "in", "inches": "in",
    "'": "ft", "ft": "ft", "foot": "ft", "feet": "ft",
    "mm": "mm", "cm": "cm", "m": "m",
}  # fmt: skip

_ALIKE = str.maketrans({
    **dict.fromkeys("\u2032\u2019\u2018\u02b9\u00b4", "'"),
    **dict.fromkeys("\u2033\u201d\u201c\u02ba", '"'),
    **dict.fromkeys("\u2044\u2215", "/"),
    **dict.fromkeys("\u00a0\u2002\u2003\u2007\u2008\u2009\u200a\u202f\t", " "),
    **dict.fromkeys("\u2010\u2011\u2013", "-"),
})  # fmt: skip
"""One character for one: positions stay those of the text as typed."""

TRUE_MINUS = "\u2212"
"""The minus of typography: never the hyphen of `11-7/8`."""

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"

_TOKEN = re.compile(
    rf"""[ ]*(?:
      (?P<decimal>[0-9]+\.[0-9]*|\.[0-9]+)
    | (?P<whole>[0-9]+)
    | (?P<vulgar>[{_VULGAR}])
    | (?P<unit>''|["']|[A-Za-z]+\.?)
    | (?P<sign>[-+/{TRUE_MINUS}])
    | (?P<bad>[^ ])
    )""",
    re.VERBOSE | re.DOTALL,
)


class Token(NamedTuple):
    """One word of a length."""

    kind: str
    """whole, decimal, vulgar, unit, or the sign itself: + - /."""
    start: int
    """Place of its first character in the text."""
    end: int
    text: str
    """As typed; of a unit, its short name; of a vulgar fraction, as `1/2`."""


def tokens(text: str) -> list[Token]:
    """The words of a text from left to right.

    Raises
    ------
    LengthError
        At the first character that can stand in no length.
    """
    plain = text if text.isascii() and "\t" not in text else text.translate(_ALIKE)
    return [_token(text, match) for match in _TOKEN.finditer(plain)]


def _token(text: str, match: re.Match[str]) -> Token:
    kind = match.lastgroup or "bad"
    start, end = match.span(kind)
    word = match[kind]
    if kind == "bad":
        _refuse(text, start, word)
    if kind == "sign":
        kind = "-" if word == TRUE_MINUS else word
    elif kind == "unit":
        word = _unit(text, start, word)
    elif kind == "vulgar":
        word = unicodedata.normalize("NFKC", word).replace("\u2044", "/")
    return Token(kind, start, end, word)


def _unit(text: str, start: int, word: str) -> str:
    unit = _UNIT_WORDS.get(word.lower().rstrip("."))
    if unit is not None:
        return unit
    if word in ("x", "X"):
        _refuse(text, start, "\u00d7")
    raise LengthError(text, start, f"{word!r} is not a unit of length", UNITS_READ)


def _refuse(text: str, start: int, char: str) -> NoReturn:
    if char == ",":
        what, want = (
            "a comma in a number can be read in two ways",
            "write 30.2 or 1200, without a comma",
        )
    elif char == "~":
        what, want = "~ marks a rounded length", "write the exact length, without ~"
    elif char == "\u00d7":
        what, want = "one length at a time", "write each length for itself"
    else:
        what, want = (
            f"{char!r} has no place in a length",
            "write a length such as 11 7/8 or 302 mm",
        )
    raise LengthError(text, start, what, want)
