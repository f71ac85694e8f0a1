"""A story stick on paper: full-size strips to cut out and tape to a lath, with every mark."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.dims import Chain, Measure, Origin, format_length
from casewright.dims.units import Unit
from casewright.drawing.inscription import Inscription
from casewright.drawing.marks import Area, Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import DIMENSION, NEIGHBOUR, THIN, TICK, VISIBLE, Ink
from casewright.drawing.scales import check_bar, check_bar_width
from casewright.drawing.scene import Plot, Scene, plot
from casewright.drawing.shapes import Element, line, rectangle
from casewright.drawing.spread import spread

__all__ = [
    "STICK", "Stick", "StickMark", "foot_numbers", "foot_path", "stick_plots", "strip_length",
]  # fmt: skip

STICK = "stick"
"""Under which the feet of strips stand on the chain."""

_HOLDS = Origin("chosen", "whole inches or centimetres that a page holds")
_MOST_STRIPS = 100

_WIDE, _BETWEEN = 42.0, 3.5  # of a strip, between two [mm]
_HEAD, _BAR = 7.0, 9.0  # for the number of a strip, for the check bar [mm]
_STEP: dict[Unit, Fraction] = {"in": Fraction(254, 10), "mm": Fraction(10)}
_NUMBER, _WORDS = 3.0, 2.0  # heights of lettering [mm]
_LINE = 1.45  # from line to line, in heights of lettering
_LETTERS = 22  # of a line of words
_OFF = 0.8  # from a line to what is written at it [mm]
_WORDS_AT = 9.0  # from the edge of a strip [mm]
_SHORT, _LONG = 2.0, 3.5  # ticks of the rule along the edge [mm]
_RULE = 1.4  # height of its figures [mm]


@dataclass(frozen=True, slots=True)
class StickMark:
    """A mark of a story stick.

    Parameters
    ----------
    measure
        From the stick's end [mm].
    says
        What is there.
    bold
        What decides where cases go: a seam, not a stud.
    """

    measure: Measure
    says: str
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Stick:
    """A story stick.

    Parameters
    ----------
    marks
        All of them; what lies at one place is written at one line.
    length
        From its end to its head [mm].
    name
        Before the number of each strip, where strips of several lie on a page: 'along'.
    """

    marks: Sequence[StickMark]
    length: Fraction
    name: str = ""


@dataclass(frozen=True, slots=True)
class _Strip:
    """One strip: which of how many of its stick, where its foot lies [mm], its marks."""

    stick: Stick
    number: int
    count: int
    foot: Fraction
    marks: Sequence[StickMark]


def strip_length(room_mm: float, unit: Unit) -> Fraction:
    """Length of a strip in a room of so many millimetres: whole inches or centimetres [mm].

    Examples
    --------
    >>> strip_length(245.4, "in") / Fraction(254, 10), strip_length(263, "mm")
    (Fraction(9, 1), Fraction(240, 1))
    """
    step = _STEP[unit]
    return Fraction(room_mm - _HEAD - _BAR) // step * step


def foot_path(long: Fraction, foot: Fraction, unit: Unit) -> str:
    """Path of the number that tells where the foot of a strip lies: 'stick.of_9.foot_3'.

    Parameters
    ----------
    long, foot
        Length of the strips, and where its foot lies on the stick [mm].
    """
    return f"{STICK}.of_{long / _STEP[unit]}.foot_{foot // long}"


def foot_numbers(chain: Chain, high_mm: float, unit: Unit) -> None:
    """Enter where the feet of strips lie, of whatever length a page so high holds.

    Parameters
    ----------
    high_mm
        Of the page [mm].
    """
    step = _STEP[unit]
    for whole in range(1, int(Fraction(high_mm) // step) + 1):
        place = chain.place(f"{STICK}.of_{whole}")
        long = place.enter("strip", whole * step, _HOLDS)
        for count in range(_MOST_STRIPS):
            place.let(f"foot_{count}", long * count)


def stick_plots(
    sticks: Sequence[Stick], unit: Unit, area_mm: tuple[float, float]
) -> Iterator[Plot]:
    """Sticks page by page, strip beside strip, each page with a check bar.

    Strips are whole lengths from the stick's end; one without a mark is left out. Each says where
    on the stick its foot lies, and the rule along its edge counts from the stick's end. No page
    has much fewer strips than the others.

    Parameters
    ----------
    area_mm
        Room for the drawing on a page, wide and high [mm].
    """
    wide, high = area_mm
    long = strip_length(high, unit)
    strips = [strip for stick in sticks for strip in _strips(stick, long)]
    across = max(1, int((wide + _BETWEEN) // (_WIDE + _BETWEEN)))
    for page in _pages(strips, across):
        elements: list[Element] = []
        for n, strip in enumerate(page):
            x = n * (_WIDE + _BETWEEN)
            elements.extend(_outline(x, strip, long, unit))
            elements.extend(_marks(strip.marks, x, strip.foot, float(long)))
        drawn = plot(Scene(tuple(elements), _title(page)), 1)
        yield _with_bar(drawn, unit)


def _pages(strips: Sequence[_Strip], across: int) -> Iterator[Sequence[_Strip]]:
    """As few pages as hold them, alike in number but for one."""
    count = -(-len(strips) // across)
    first = 0
    for n in range(count):
        last = first + len(strips) // count + (n < len(strips) % count)
        yield strips[first:last]
        first = last


def _title(page: Sequence[_Strip]) -> str:
    """Which strips of which sticks."""
    told = []
    for stick in dict.fromkeys(id(strip.stick) for strip in page):
        own = [strip for strip in page if id(strip.stick) == stick]
        low, high = own[0], own[-1]
        which = f"strip {low.number}" if low is high else f"strips {low.number} to {high.number}"
        told.append(f"{low.stick.name} {which} of {low.count}".strip())
    return "; ".join(told)


def _strips(stick: Stick, long: Fraction) -> list[_Strip]:
    """Strips that bear a mark, with their marks; the last has that at its head too."""
    count = -(-stick.length // long)
    found: dict[int, list[StickMark]] = {}
    for mark in _joined(stick.marks):
        found.setdefault(min(mark.measure.value // long, count - 1), []).append(mark)
    return [
        _Strip(stick, number, len(found), n * long, here)
        for number, (n, here) in enumerate(found.items(), start=1)
    ]


def _joined(marks: Sequence[StickMark]) -> list[StickMark]:
    """From the stick's end on, marks at one place as one."""
    found: dict[Fraction, StickMark] = {}
    for mark in sorted(marks, key=lambda each: each.measure.value):
        known = found.get(mark.measure.value)
        if known is not None:
            says = "; ".join(dict.fromkeys((known.says, mark.says)))
            first = known if known.bold or not mark.bold else mark
            mark = replace(first, says=says, bold=known.bold or mark.bold)
        found[mark.measure.value] = mark
    return list(found.values())


def _with_bar(drawn: Plot, unit: Unit) -> Plot:
    area = drawn.area
    bar = check_bar(unit, (area.x0, area.y0 - _BAR + 1.0))
    right = max(area.x1, area.x0 + check_bar_width(unit) + 2.0)
    whole = Area(area.x0, area.y0 - _BAR, right, area.y1)
    return replace(drawn, groups=(*drawn.groups, bar), area=whole)


def _outline(x: float, strip: _Strip, long: Fraction, unit: Unit) -> Iterator[Element]:
    """Outline to cut along, its number, and the rule along its left edge."""
    low = strip.foot
    yield rectangle((x, 0.0), (x + _WIDE, float(long)), NEIGHBOUR)
    foot = format_length(low, unit, with_unit=True)
    words = f"{strip.stick.name or 'strip'} {strip.number} of {strip.count}, foot at {foot}"
    tag = Tag(path=foot_path(long, low, unit), title=words)
    yield Text((x + _WIDE / 2, float(long)), words, _WORDS, shift_mm=(0.0, 3.6), tag=tag)
    step = _STEP[unit]
    for k in range(1, int(long // step)):
        y, whole = float(k * step), (low + k * step) / step
        tall = _LONG if whole % (12 if unit == "in" else 10) == 0 else _SHORT
        yield line((x, y), (x + tall, y), DIMENSION)
        if all(abs(float(mark.measure.value - low) - y) > _RULE for mark in strip.marks):
            yield Text((x + tall + 0.6, y), f"{int(whole)}", _RULE, anchor="start", ink=Ink.SOFT)


def _marks(marks: Sequence[StickMark], x: float, low: Fraction, long: float) -> Iterator[Element]:
    """A line across the strip for each mark; its words over it, or moved off the next."""
    ordered = sorted(marks, key=lambda each: each.measure.value)
    ys = [float(mark.measure.value - low) for mark in ordered]
    for mark, y in zip(ordered, ys, strict=True):
        ink = Ink.INK if mark.bold else Ink.SOFT
        yield line((x, y), (x + _WIDE, y), VISIBLE if mark.bold else THIN, ink=ink)
    labels = [_Label.of(mark) for mark in ordered]
    wished = [y + _OFF + label.tall / 2 for y, label in zip(ys, labels, strict=True)]
    middles = spread(wished, [label.tall / 2 for label in labels], _OFF)
    middles = _on_strip(middles, [label.tall for label in labels], long - _OFF)
    for label, y, middle in zip(labels, ys, middles, strict=True):
        foot = middle - label.tall / 2
        if abs(foot - y - _OFF) > _OFF:
            yield line((x + 4.0, y), (x + _WORDS_AT - 1.0, middle), TICK, ink=Ink.SOFT)
        yield from label.elements(x + _WORDS_AT, foot)


def _on_strip(middles: Sequence[float], tall: Sequence[float], long: float) -> list[float]:
    """Labels pushed up from the strip's foot, then down from its head as far as they have room."""
    found: list[float] = []
    foot = 0.0
    for middle, high in zip(middles, tall, strict=True):
        found.append(max(middle, foot + high / 2))
        foot = found[-1] + high / 2
    head = max(long, sum(tall))
    for n in range(len(found) - 1, -1, -1):
        found[n] = min(found[n], head - tall[n] / 2)
        head = found[n] - tall[n] / 2
    return found


@dataclass(frozen=True, slots=True)
class _Label:
    """What is written at a mark.

    Parameters
    ----------
    number
        Height of the number with its fraction [mm].
    """

    mark: StickMark
    lines: tuple[str, ...]
    number: float

    @classmethod
    def of(cls, mark: StickMark) -> _Label:
        """Its lines and their height."""
        number = Inscription(mark.measure, _NUMBER).extent
        return cls(mark, tuple(_wrapped(mark.says)), number)

    @property
    def tall(self) -> float:
        """Of all of it [mm]."""
        return self.number + _OFF + _LINE * _WORDS * len(self.lines)

    def elements(self, x: float, foot: float) -> Iterator[Element]:
        """The number, and the words over it."""
        mark = self.mark
        tag = Tag(path=mark.measure.path, title=mark.measure.text)
        yield Text((x, foot + self.number / 2), mark.measure, _NUMBER, anchor="start",
                   weight=600 if mark.bold else 500, ground=Ink.PAPER, tag=tag)  # fmt: skip
        for k, words in enumerate(reversed(self.lines)):
            up = foot + self.number + _OFF + _LINE * _WORDS * (k + 0.5)
            ink = Ink.INK if mark.bold else Ink.SOFT
            yield Text((x, up), words, _WORDS, anchor="start", ink=ink, ground=Ink.PAPER)


def _wrapped(words: str) -> list[str]:
    """Words in lines that a strip holds."""
    lines = [""]
    for word in words.split():
        if lines[-1] and len(lines[-1]) + 1 + len(word) > _LETTERS:
            lines.append("")
        lines[-1] = f"{lines[-1]} {word}".strip()
    return lines
