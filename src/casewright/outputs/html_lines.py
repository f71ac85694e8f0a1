"""Lines of a page as HTML: every length keeps its path, its fraction stacked."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import escape

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

__all__ = ["Leads", "anchor_id", "clean", "line_html", "sign_html"]

Leads = Callable[[str], str]
"""The address that an anchor is found at; empty when there is none."""

_FORBIDDEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_NOT_PLAIN = re.compile(r"[^A-Za-z0-9.:_-]")
_SIGN_MM = 4.4
_PAGE_WORDS = re.compile(r",? *\b(p\.|page) *$")


def anchor_id(anchor: str) -> str:
    """An anchor as part of an address (RFC 3986): what may not stand there in per cent signs."""
    return _NOT_PLAIN.sub(lambda found: "".join(f"%{b:02X}" for b in found[0].encode()), anchor)


def clean(text: str) -> str:
    """Text for HTML, in elements and in attributes."""
    return escape(_FORBIDDEN.sub("\ufffd", text), quote=True)


def line_html(rich: Rich, leads: Leads) -> str:
    """A line of a page.

    Parameters
    ----------
    leads
        Where anchors are found.
    """
    return "".join(_inline(item, leads) for item in _without_pages(inlines_of(rich)))


def _without_pages(items: tuple[Inline, ...]) -> list[Inline]:
    """On a screen no page has a number: words for it go, and where a link leads there, it too."""
    kept: list[Inline] = []
    for item in items:
        words = kept[-1] if kept and isinstance(item, PageNumber) else None
        if not isinstance(words, str) or not isinstance(item, PageNumber):
            kept.append(item)
            continue
        bare = _PAGE_WORDS.sub(" ", words)
        kept.pop()
        link = kept[-1] if kept else None
        is_led = isinstance(link, Link) and link.target == item.target and not bare.strip()
        kept += [] if is_led else [bare, item]
    return kept


def sign_html(sign: SignKind) -> str:
    """A sign of the drawings, small, with its name for those who cannot see it."""
    drawn = plot(Scene((Sign(sign, (0, 0), size_mm=_SIGN_MM),), sign))
    return f'<span class="sign">{svg_text(drawn, with_ids=False)}</span>'


def _inline(item: Inline, leads: Leads) -> str:
    made: str
    match item:
        case str() | Measure():
            made = _content(item)
        case Strong():
            made = f"<strong>{_content(item.content)}</strong>"
        case Small():
            made = f"<small>{_content(item.content)}</small>"
        case Link():
            made = _link(_content(item.content), item.target, leads, item.anchor)
        case PageNumber() | PageNumbers():
            made = _pages(item, leads)
        case Blank():
            width = f'data-mm="{item.width_mm:g}"'
            made = f'<span class="blank" {width} role="img" aria-label="to be filled in"></span>'
        case Tick():
            made = '<span class="tick" aria-hidden="true"></span>'
        case SignMark():
            made = sign_html(item.sign)
    return made


def _pages(item: PageNumber | PageNumbers, leads: Leads) -> str:
    """On a screen there are no page numbers: a mark that leads there."""
    targets = item.targets if isinstance(item, PageNumbers) else (item.target,)
    there = '<span aria-label="there">→</span>'
    return " ".join(_link(there, target, leads) for target in targets if leads(target))


def _link(words: str, target: str, leads: Leads, anchor: str = "") -> str:
    own = f' id="{anchor_id(anchor)}"' if anchor else ""
    where = leads(target)
    if not where:
        return f"<span{own}>{words}</span>" if own else words
    return f'<a{own} href="{clean(where)}">{words}</a>'


def _content(content: Content) -> str:
    return "".join(_words(part) for part in parts_of(content))


def _words(part: str | Measure) -> str:
    if isinstance(part, str):
        return clean(part)
    shown = "".join(
        f'<span class="stack"><sup>{piece.numerator}</sup>/<sub>{piece.denominator}</sub></span>'
        if isinstance(piece, Stack)
        else clean(piece)
        for piece in pieces(part)
    )
    path = f' data-path="{clean(part.path)}"' if part.path else ""
    return f'<data class="measure" value="{clean(part.text)}"{path}>{shown}</data>'
