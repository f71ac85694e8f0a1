"""Lines of the packet as the page in the shop shows them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casewright.dims import Content, Measure, joined, parts_of, plain_text
from casewright.drawing import SignKind
from casewright.outputs.inlines import (
    Blank,
    Inline,
    Link,
    PageNumber,
    PageNumbers,
    Rich,
    SignMark,
    Small,
    Strong,
    Tick,
)
from casewright.web.shop_schema import Bit, Line

__all__ = ["caution_line", "line_of", "sentence", "size_text", "split_at_signs"]

_PAGE = "\f"
_PAGES = re.compile(r"[, ]*\b(?:pages?|p\.)\s*$")
_GAPS = re.compile(r"[ \u00a0]+(?=[ .,;:])")

_SIGN_WORDS: dict[str, str] = {
    "caution": "Caution",
    "measure first": "Measure first",
    "ask": "Open question",
    "look": "Look",
}


def line_of(*items: Rich) -> Line:
    """A line of a printed page without what paper alone needs: page numbers, boxes to tick."""
    found: list[str | Bit] = []
    for item in items:
        for bit in _bits(item):
            if bit == _PAGE:
                found[-1:] = [_unpaged(last) for last in found[-1:]]
            elif isinstance(bit, str) and found and isinstance(found[-1], str):
                found[-1] += bit
            elif bit != "":
                found.append(bit)
    spaced = (_spaced(bit) if isinstance(bit, str) else bit for bit in found)
    return tuple(bit for bit in spaced if bit != "")


def _unpaged(bit: str | Bit) -> str | Bit:
    """What came before the number of a page, without the word for it."""
    return _PAGES.sub("", bit) if isinstance(bit, str) else bit


def _spaced(words: str) -> str:
    """Words without the spaces that were round something left out."""
    return _GAPS.sub("", words)


def split_at_signs(line: Line) -> Iterator[Line]:
    """A line as several: each sign begins one of its own."""
    found: list[str | Bit] = []
    for bit in line:
        if isinstance(bit, Bit) and bit.kind == "sign" and size_text(tuple(found)).strip():
            yield tuple(found)
            found = []
        found.append(bit)
    if size_text(tuple(found)).strip():
        yield tuple(found)


def _bits(item: Rich) -> list[str | Bit]:
    if isinstance(item, tuple):
        return [bit for each in item for bit in _bits(each)]
    return _inline(item)


def _inline(item: Inline) -> list[str | Bit]:
    found: list[str | Bit]
    match item:
        case str() | Measure():
            found = _content(item)
        case Strong() | Small():
            found = _content(item.content, strong=isinstance(item, Strong))
        case Link():
            found = [Bit(kind="part", text=plain_text(item.content), to=item.target)]
        case SignMark():
            found = [Bit(kind="sign", text=_sign_word(item.sign))]
        case Blank():
            found = [Bit(kind="blank", text="")]
        case PageNumber() | PageNumbers():
            return [_PAGE]
        case Tick():
            return []
    return found


def _sign_word(sign: SignKind) -> str:
    """A sign in words, for those who do not see it."""
    return _SIGN_WORDS.get(sign, sign)


def _content(content: Content, *, strong: bool = False) -> list[str | Bit]:
    return [_bit(part, strong=strong) for part in parts_of(content)]


def _bit(part: str | Measure, *, strong: bool) -> str | Bit:
    if isinstance(part, Measure):
        return Bit(kind="size", text=part.text)
    return Bit(kind="strong", text=part) if strong else part


def caution_line(words: str) -> Line:
    """A caution with its sign."""
    return (Bit(kind="sign", text="Caution"), *_content(joined("", (" ", words))))


def sentence(words: str) -> str:
    """Words with a capital."""
    return f"{words[:1].upper()}{words[1:]}"


def size_text(line: Line) -> str:
    """A line as plain text."""
    return "".join(bit if isinstance(bit, str) else bit.text for bit in line)
