"""Plots as SVG: true size, paths kept, nothing fetched from outside."""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from casewright.drawing import ArcMark, Group, Ink, Mark, Pen, Plot, Stroke, Word
from casewright.drawing.lettering import FAMILIES, STRETCH, font_size

__all__ = ["svg_text"]

_FORBIDDEN = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_FAMILY = ", ".join(f"'{name}'" for name in FAMILIES) + ", sans-serif"


def svg_text(plot: Plot, *, with_ids: bool = True) -> str:
    """A plot as one SVG element, as wide and high in millimetres as on paper.

    Each element of the drawing is a group with its path as `data-path`, the anchor it leads to as
    `data-target`, and its title.

    Parameters
    ----------
    with_ids
        Give groups the keys of their tags as ids; leave off when several drawings share a page.
    """
    return "".join(_Writer(plot, with_ids).lines())


class _Writer:
    """Writes one plot; y turns over, from upward to downward."""

    def __init__(self, plot: Plot, with_ids: bool) -> None:
        self.plot = plot
        self.with_ids = with_ids
        self.left = plot.area.x0
        self.top = plot.area.y1

    def lines(self) -> Iterator[str]:
        """The document line by line."""
        width, height = _mm(self.plot.area.width), _mm(self.plot.area.height)
        yield (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
            f'viewBox="0 0 {width} {height}" role="img" font-family="{_FAMILY}" '
            f'font-stretch="{STRETCH}" fill="none" stroke-linejoin="round">\n'
        )
        if self.plot.title:
            yield f"<title>{_clean(self.plot.title)}</title>\n"
        for group in self.plot.groups:
            yield f"<g{self._attributes(group)}>"
            if group.tag.title:
                yield f"<title>{_clean(group.tag.title)}</title>"
            yield from (self._mark(mark) for mark in group.marks)
            yield "</g>\n"
        yield "</svg>\n"

    def _attributes(self, group: Group) -> str:
        tag = group.tag
        named = {
            "id": tag.key if self.with_ids else "",
            "class": group.kind.replace(" ", "-"),
            "data-path": tag.path,
            "data-target": tag.target,
        }
        return "".join(f" {name}={_quoted(value)}" for name, value in named.items() if value)

    def _mark(self, mark: Mark) -> str:
        if isinstance(mark, Word):
            return self._word(mark)
        if isinstance(mark, ArcMark):
            return self._arc(mark)
        return self._stroke(mark)

    def _at(self, point: tuple[float, float]) -> str:
        return f"{_mm(point[0] - self.left)} {_mm(self.top - point[1])}"

    def _stroke(self, stroke: Stroke) -> str:
        first, *rest = (self._at(point) for point in stroke.points)
        path = f"M{first}L{' '.join(rest)}{'Z' if stroke.closed else ''}"
        return f'<path d="{path}"{_paint(stroke.pen, stroke.ink, stroke.fill)}/>'

    def _arc(self, arc: ArcMark) -> str:
        paint = _paint(arc.pen, arc.ink, arc.fill)
        if arc.is_circle:
            cx, cy = self._at(arc.centre).split(" ")
            return f'<circle cx="{cx}" cy="{cy}" r="{_mm(arc.radius)}"{paint}/>'
        start = self._at(arc.point(arc.start_deg))
        end = self._at(arc.point(arc.start_deg + arc.sweep_deg))
        radius = _mm(arc.radius)
        wide = 1 if arc.sweep_deg > 180 else 0
        return f'<path d="M{start}A{radius} {radius} 0 {wide} 0 {end}"{paint}/>'

    def _word(self, word: Word) -> str:
        x, y = self._at(word.at).split(" ")
        turn = (
            f' transform="rotate({_mm(-word.rotation_deg)} {x} {y})"' if word.rotation_deg else ""
        )
        anchor = f' text-anchor="{word.anchor}"' if word.anchor != "start" else ""
        weight = f' font-weight="{word.weight}"' if word.weight != 400 else ""
        return (
            f'<text x="{x}" y="{y}" font-size="{_mm(font_size(word.height))}"{anchor}{weight}'
            f'{turn} fill="{word.ink.value}" xml:space="preserve">{_clean(word.text)}</text>'
        )


def _paint(pen: Pen | None, ink: Ink, fill: Ink | None) -> str:
    paint = f' fill="{fill.value}"' if fill is not None else ""
    if pen is None:
        return paint
    paint += f' stroke="{ink.value}" stroke-width="{_mm(pen.width_mm)}"'
    if pen.dash_mm:
        paint += f' stroke-dasharray="{" ".join(map(_mm, pen.dash_mm))}"'
    return paint


def _mm(value: float) -> str:
    """A number to a thousandth, without trailing zeros and without minus zero."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _clean(text: str) -> str:
    """Text for XML; what XML cannot hold becomes the replacement character."""
    return escape(_FORBIDDEN.sub("\ufffd", text))


def _quoted(text: str) -> str:
    return quoteattr(_FORBIDDEN.sub("\ufffd", text))
