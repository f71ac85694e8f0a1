"""The trims of a run as its elevation shows them."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.drawing.case_solids import seen_from_above
from casewright.drawing.marks import Tag
from casewright.drawing.pens import THIN, VISIBLE, Ink
from casewright.drawing.shapes import Element, Polyline, rectangle
from casewright.room.model import Run
from casewright.room.trims.model import Trim

__all__ = ["top_of_trims", "trim_elements"]


def top_of_trims(run: Run) -> Fraction:
    """Upper edge of what stands on the cases [mm]; 0 where nothing does."""
    crowns = [trim for trim in run.trims if trim.kind == "crown"]
    return max((_head(run, part) for trim in crowns for part in trim.parts), default=Fraction(0))


def trim_elements(run: Run) -> Iterator[Element]:
    """Frieze and crown with its returns, light rail, toe skin and scribe mouldings.

    What runs across a diagonal corner is seen at a slant, so shorter than it is. What stands
    farther out comes last, over the rest.
    """
    for trim in sorted(run.trims, key=_stands_out):
        for part in trim.parts:
            if part.turned:
                if trim.kind != "backing":
                    yield _across(run, part)
                continue
            axis = part.placed.orientation.length.axis
            tag = Tag(path=part.path, title=part.title, target=part.path)
            if trim.kind == "crown" and axis == 0:
                yield Polyline(_face(run, trim, part), VISIBLE, closed=True, fill=Ink.PAPER,
                               tag=tag)  # fmt: skip
            elif trim.kind != "backing" and axis != 2:
                (x0, x1), (y0, y1) = ((e.value for e in extent(part, a)) for a in (0, 1))
                fill = Ink.SHADE if trim.kind == "scribe moulding" else Ink.PAPER
                yield rectangle((x0, max(y0, Fraction(0))), (x1, y1), THIN, fill=fill, tag=tag)


def _stands_out(trim: Trim) -> Fraction:
    """How far out a crown stands: round a hood it covers the ends of those beside it."""
    out = (piece.part.placed.z.value for piece in trim.along if trim.kind == "crown")
    return max(out, default=Fraction(0))


def _across(run: Run, part: Part) -> Element:
    """A piece across a diagonal corner at an end of the run; of a crown from foot to head."""
    at = 0 if part.path.endswith(".left_across") else -1
    case, start = run.cases[at], run.starts[at].value
    low, high = (end.value for end in extent(part, 1))
    places = [] if case.mouth is None else seen_from_above(case.mouth, case.width.value, part)
    xs = [start + x for x, _ in places] or [start]
    pen = VISIBLE if part.role == "crown" else THIN
    if part.role == "crown":
        high = _head(run, part)
    return rectangle((min(xs), max(low, Fraction(0))), (max(xs), high), pen, fill=Ink.PAPER,
                     tag=Tag(path=part.path, title=part.title, target=part.path))  # fmt: skip


def _head(run: Run, part: Part) -> Fraction:
    crown = run.spec.trims.crown
    drop = crown.drop.value if crown is not None else Fraction(0)
    return extent(part, 1)[0].value + drop


def _face(run: Run, crown: Trim, part: Part) -> tuple[tuple[Fraction, Fraction], ...]:
    """A piece of a crown from its foot to its head, which reaches past the corners of returns."""
    low, high = (end.value for end in extent(part, 0))
    foot, head = extent(part, 1)[0].value, _head(run, part)
    start = crown.start.value if crown.start is not None else low
    end = start + crown.open_lengths[0].value
    return ((max(low, start), foot), (min(high, end), foot), (high, head), (low, head))
