"""Lines of a page as data for the typesetter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import TypeAlias

from casewright.dims import Content, Measure, parts_of
from casewright.drawing import Scene, Sign, SignKind, Stack, pieces, plot
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
    inlines_of,
)
from casewright.outputs.svg import svg_text

__all__ = ["Json", "content_data", "line_data", "sign_picture"]

Json: TypeAlias = str | int | float | bool | Sequence["Json"] | Mapping[str, "Json"] | None
"""What JSON can hold."""

_SIGN_MM = 4.4


def content_data(content: Content) -> list[Json]:
    """Words and stacked fractions as data."""
    return [
        {"k": "stack", "n": piece.numerator, "d": piece.denominator}
        if isinstance(piece, Stack)
        else piece
        for piece in pieces(content)
    ]


@cache
def sign_picture(sign: SignKind) -> Json:
    """A sign as a small picture with its size [mm]."""
    drawn = plot(Scene((Sign(sign, (0, 0), size_mm=_SIGN_MM),)))
    size = {"width": round(drawn.area.width, 3), "height": round(drawn.area.height, 3)}
    return {"svg": svg_text(drawn, with_ids=False), **size}


def _inline(item: Inline) -> Json:
    data: Json
    match item:
        case str():
            data = item
        case Measure():
            data = {"k": "measure", "c": content_data(item)}
        case Strong() | Small():
            kind = "strong" if isinstance(item, Strong) else "small"
            data = {"k": kind, "c": _line(item.content)}
        case Link():
            data = {"k": "link", "to": item.target, "c": _line(item.content), "at": item.anchor}
        case PageNumber():
            data = {"k": "page", "to": item.target}
        case PageNumbers():
            data = {"k": "pages", "to": list(item.targets)}
        case Blank():
            data = {"k": "blank", "width": item.width_mm}
        case Tick():
            data = {"k": "tick"}
        case SignMark():
            data = {"k": "sign", "picture": sign_picture(item.sign)}
    return data


def _line(content: Content) -> list[Json]:
    return [_inline(each) for each in parts_of(content)]


def line_data(rich: Rich) -> list[Json]:
    """A line of a page as data."""
    return [_inline(item) for item in inlines_of(rich)]
