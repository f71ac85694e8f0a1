"""Running dimensions: every distance from one datum, as read off a tape hooked at it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar

from casewright.dims import Content, Measure
from casewright.drawing.dimension import Span
from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import ArcMark, Group, Mark, Tag
from casewright.drawing.pens import TICK, Ink
from casewright.drawing.shapes import NO_TAG, Length, on_paper
from casewright.drawing.spread import spread
from casewright.drawing.strip import TEXT_HEIGHT, Side, Strip

__all__ = ["Running", "Stop"]

_JOG = 3.0  # room in which the extension lines bend toward their numbers
_TEXT = 0.6
_BETWEEN, _BESIDE = 1.0, 2.2  # turned numbers beside each other, upright ones
_LEVEL = 1.5
_FAR = 9.0  # how far an upright number may stand from its line before all are turned


@dataclass(frozen=True, slots=True)
class Stop:
    """One reading of the tape.

    Parameters
    ----------
    at
        Where it is along the axis [mm of model].
    measure
        Its distance from the datum.
    root
        Where its extension line begins, across the axis [mm of model]; None: at the base.
    note
        Words behind the number: 'Ø5', 'seam'.
    """

    at: Length
    measure: Measure
    root: Length | None = field(default=None, kw_only=True)
    note: Content = field(default="", kw_only=True)
    emphasis: bool = field(default=False, kw_only=True)
    ink: Ink = field(default=Ink.INK, kw_only=True)
    tag: Tag = field(default=NO_TAG, kw_only=True)


@dataclass(frozen=True, slots=True)
class Running:
    """All distances from one datum on one side of a view.

    Numbers stand at the ends of their extension lines, moved apart as little as needed: upright
    where there is room, else along the lines.

    Parameters
    ----------
    side
        below, above, left or right of the view.
    base
        The outline they stand off from, across the axis [mm of model].
    origin
        The datum, where the tape is hooked [mm of model].
    stops
        In any order.
    offset_mm
        Clear distance from the outline to the tape's line [mm on paper].
    starts
        Where the tape's line begins, where the datum is out of the view [mm of model]; None: at
        the datum, which is told as 0.

    Raises
    ------
    ValueError
        When a stop is not as far from the datum as its number says.
    """

    kind: ClassVar[str] = "dimension"
    side: Side
    base: Length
    origin: Length
    stops: tuple[Stop, ...]
    offset_mm: float = field(default=4.0, kw_only=True)
    height: float = field(default=TEXT_HEIGHT, kw_only=True)
    starts: Length | None = field(default=None, kw_only=True)

    def __post_init__(self) -> None:
        for stop in self.stops:
            Span(self.origin, stop.at, stop.measure)

    def groups(self, scale: Fraction) -> Iterable[Group]:
        """The tape's line, then one group a stop."""
        strip = Strip(self.side, on_paper((self.base, self.base), scale)[0])
        us = [on_paper((stop.at, 0), scale)[0] for stop in self.stops]
        texts = [self._text(stop) for stop in self.stops]
        if self.starts is None:
            zero, nought = on_paper((self.origin, 0), scale)[0], Inscription("0", self.height, 500)
            upright, places = _places([zero, *us], [nought, *texts], lies=strip.lies)
            shown = self._number(strip, (zero, 0.0), nought, places[0], upright=upright)
            yield Group(NO_TAG, (*shown, *self._tape(strip, zero, us)), self.kind)
        else:
            upright, places = _places(us, texts, lies=strip.lies)
            places = [0.0, *places]
            start = on_paper((self.starts, 0), scale)[0]
            yield Group(NO_TAG, (self._line(strip, [start, *us]),), self.kind)
        for stop, u, text, place in zip(self.stops, us, texts, places[1:], strict=True):
            root = strip.depth(on_paper((0, self._root(stop)), scale)[1])
            marks = [
                *self._number(strip, (u, root), text, place, upright=upright),
                strip.tick(u, self.offset_mm, ink=text.ink),
            ]
            path = stop.tag.path or stop.measure.path
            tag = Tag(path, stop.tag.title or stop.measure.text, stop.tag.target, stop.tag.key)
            yield Group(tag, tuple(marks), self.kind)

    def _root(self, stop: Stop) -> Length:
        return self.base if stop.root is None else stop.root

    def _text(self, stop: Stop) -> Inscription:
        content: Content = (stop.measure, "  ", *_items(stop.note)) if stop.note else stop.measure
        return Inscription(content, self.height, 600 if stop.emphasis else 500, stop.ink)

    def _tape(self, strip: Strip, zero: float, us: list[float]) -> Iterator[Mark]:
        yield self._line(strip, [zero, *us])
        yield ArcMark(strip.point(zero, self.offset_mm), 0.9, TICK, fill=Ink.PAPER)

    def _line(self, strip: Strip, us: list[float]) -> Mark:
        return strip.stroke((min(us), self.offset_mm), (max(us), self.offset_mm))

    def _number(
        self, strip: Strip, end: tuple[float, float], text: Inscription, place: float,
        *, upright: bool,
    ) -> Iterator[Mark]:  # fmt: skip
        """The line from the view to a number, and the number."""
        u, root = end
        v = self.offset_mm + _LEVEL
        yield strip.stroke((u, root + 0.8), (u, v), (place, v + _JOG), ink=text.ink)
        near = v + _JOG + _TEXT
        if upright:
            yield from strip.upright(text, place, near, near + strip.across(text))
        else:
            yield from strip.outward(text, place, near)


def _places(
    wished: list[float], texts: list[Inscription], *, lies: bool
) -> tuple[bool, list[float]]:
    """Whether the numbers stand upright, and where each stands along the strip."""
    if lies:
        beside = spread(wished, [text.width / 2 for text in texts], _BESIDE)
        if max(abs(a - b) for a, b in zip(beside, wished, strict=True)) <= _FAR:
            return True, beside
    return not lies, spread(wished, [text.extent / 2 for text in texts], _BETWEEN)


def _items(content: Content) -> tuple[str | Measure, ...]:
    return content if isinstance(content, tuple) else (content,)
