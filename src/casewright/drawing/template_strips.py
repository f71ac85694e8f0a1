"""Templates longer than a page: full-size pieces of them, to be joined at lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Chain, Dim, Measure, Origin, measure_of
from casewright.dims.units import Unit
from casewright.drawing.hatching import SECTION
from casewright.drawing.jig_views import STOP, full_size, hole_marks
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CUT, DIMENSION, HIDDEN, VISIBLE, Ink
from casewright.drawing.scene import Plot, Scene
from casewright.drawing.shapes import Element, line, rectangle
from casewright.jigs import Template

__all__ = ["Piece", "piece_numbers", "pieces_of", "template_plots"]

_STEP: dict[Unit, Fraction] = {"in": Fraction(254, 10), "mm": Fraction(10)}
_BAR, _WORDS_OVER = 9.0, 7.0  # for the check bar; for words over and under a piece [mm]
_FOOT = Origin(
    "chosen", "a whole inch or centimetre before a hole that the piece before does not hold"
)
_ROUND = Fraction(12)  # of the template, about a hole [mm]
_LABEL = 26.0  # beside a piece, for its numbers [mm]
_BETWEEN = 6.0


@dataclass(frozen=True, slots=True)
class Piece:
    """What is drawn of a template at a time, from its end stop [mm]."""

    low: Fraction
    high: Fraction


def _foot_path(template: Template, low: Fraction, unit: Unit) -> str:
    return f"{template.path}.foot_{low // _STEP[unit]}"


def piece_numbers(template: Template, chain: Chain, unit: Unit) -> None:
    """Enter where feet of its pieces may lie: at each whole inch or centimetre.

    Parameters
    ----------
    unit
        Unit of the job.
    """
    step = _STEP[unit]
    for count in range(1, int(template.length.value // step) + 1):
        chain.place(template.path).enter(f"foot_{count}", count * step, _FOOT)


def pieces_of(template: Template, room: float, unit: Unit) -> tuple[Piece, ...]:
    """Pieces that bear its holes, each whole in one of them.

    They begin at whole inches or centimetres from the end stop and end soon after their last hole.
    What has no hole is left out.

    Parameters
    ----------
    room
        Height of a piece at the most [mm].
    """
    step, whole = _STEP[unit], template.length.value
    most = Fraction(room) // step * step
    found: list[Piece] = []
    for at in sorted(hole.along.value for hole in template.holes):
        low = found[-1].low if found else Fraction(0)
        if at + _ROUND > low + most:
            low = (at - _ROUND) // step * step
        elif found:
            found.pop()
        high = -(-(at + _ROUND) // step) * step
        found.append(Piece(low, min(high, low + most, whole)))
    return tuple(found)


def template_plots(template: Template, unit: Unit, area_mm: tuple[float, float]) -> Iterator[Plot]:
    """A template page by page, piece beside piece, each page with a check bar.

    Parameters
    ----------
    area_mm
        Room for the drawing on a page, wide and high [mm].
    """
    wide, high = area_mm
    pieces = pieces_of(template, high - _BAR - 2 * _WORDS_OVER - float(STOP), unit)
    one = float(STOP + template.width.value) + _LABEL
    across = max(1, int((wide + _BETWEEN) // (one + _BETWEEN)))
    for first in range(0, len(pieces), across):
        elements: list[Element] = []
        for n in range(first, min(first + across, len(pieces))):
            x = Fraction((n - first) * (one + _BETWEEN))
            following = pieces[n + 1].low if n + 1 < len(pieces) else None
            elements.extend(_piece(template, pieces[n], (x, following), unit))
        yield full_size(Scene(tuple(elements), template.title), unit)


def _piece(
    template: Template, piece: Piece, at: tuple[Fraction, Fraction | None], unit: Unit
) -> Iterator[Element]:
    """One piece, its foot at 0: stops, joining lines, holes and their numbers."""
    (x, following), wide, low = at, template.width.value, piece.low
    high = piece.high - low
    tag = Tag(path=template.path, title=template.title)
    yield rectangle((x - STOP, Fraction(0)), (x, high), CUT, hatch=SECTION, tag=tag)
    yield rectangle((x, Fraction(0)), (x + wide, high), VISIBLE, tag=tag)
    if not low:
        yield rectangle((x, -STOP), (x + wide, Fraction(0)), CUT, hatch=SECTION, tag=tag)
        yield _words(x + wide / 2, -STOP, "stop for the end", -3.0)
    else:
        foot = Measure(low, unit, _foot_path(template, low, unit))
        yield _words(x + wide / 2, Fraction(0), ("foot ", foot, " from the end stop"), -4.0)
    if piece.high == template.length.value:
        yield _words(x + wide / 2, high, ("ends at ", measure_of(template.length, unit)), 4.0)
    elif following is not None and following <= piece.high:
        y = following - low
        yield line((x - STOP, y), (x + wide, y), HIDDEN)
        where = "here" if following == piece.high else "on the dashed line"
        yield _words(x + wide / 2, high, f"join the next foot {where}", 4.0)
    else:
        yield _words(x + wide / 2, high, "goes on without holes", 4.0)
    yield from _holes(template, piece, x, unit)


def _holes(template: Template, piece: Piece, x: Fraction, unit: Unit) -> Iterator[Element]:
    wide, low = template.width.value, piece.low
    here = [h for h in template.holes if low <= h.along.value - h.diameter.value
            and h.along.value + h.diameter.value <= piece.high]  # fmt: skip
    for hole in here:
        yield from hole_marks((x + hole.across.value, hole.along.value - low), hole.diameter.value)
    told: Sequence[Dim] = template.middles or tuple(hole.along for hole in template.holes)
    for dim in told:
        if low < dim.value < piece.high:
            y = dim.value - low
            yield line((x + wide, y), (x + wide + 4, y), DIMENSION)
            yield Text((x + wide + 5, y), measure_of(dim, unit), 2.8, anchor="start")
    for dim in {hole.across.value: hole.across for hole in here}.values():
        top = piece.high - low
        yield line((x + dim.value, top), (x + dim.value, top - 4), DIMENSION)
        yield Text((x + dim.value, top - 6), measure_of(dim, unit), 2.2, ground=Ink.PAPER)


def _words(x: Fraction, y: Fraction, content: str | tuple[str | Measure, ...], up: float) -> Text:
    return Text((x, y), content, 2.2, shift_mm=(0.0, up))
