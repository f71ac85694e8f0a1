"""A crown cut upright: case, backing, frieze board, moulding and ceiling, the room to the left."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.hatching import BACK_SECTION, SECTION
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CUT, NEIGHBOUR, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Point, Polyline, line, rectangle
from casewright.room.model import Run
from casewright.room.trims.model import Trim

__all__ = ["crown_section_scene"]

_BELOW = Fraction(70)  # of the case below its top [mm]
_BEHIND = Fraction(60)  # of the case behind its front edges [mm]
_BEYOND = Fraction(40)  # of the ceiling in front of the crown [mm]


@dataclass(frozen=True, slots=True)
class _Sizes:
    """Numbers of the section, from the case's front edges and its top [mm]."""

    drop: Dim
    projection: Dim
    frieze: Dim
    board: Fraction

    @property
    def ceiling(self) -> Fraction:
        """Upper edge of the crown over the cases."""
        return self.frieze.value + self.drop.value


def crown_section_scene(run: Run, crown: Trim, numbers: tuple[Dim, Dim, Dim], unit: Unit) -> Scene:
    """The section.

    Parameters
    ----------
    numbers
        Drop and projection of the moulding, and the frieze that shows.
    """
    by_kind = {trim.kind: trim for trim in run.trims if trim.path.startswith(f"{crown.path}.")}
    front = by_kind["frieze"].parts[0]
    backing = next(p for p in by_kind["backing"].parts if p.placed.orientation.length.axis == 0)
    sizes = _Sizes(*numbers, front.finished.thickness.value)
    elements: list[Element] = [*_case(run, crown)]
    for part, near, hatch in ((backing, Fraction(0), SECTION), (front, -sizes.board,
                                                               BACK_SECTION)):  # fmt: skip
        thick = part.finished.thickness.value
        elements.append(
            rectangle((near, Fraction(0)), (near + thick, part.finished.width.value), CUT,
                      fill=Ink.PAPER, hatch=hatch, tag=Tag(path=part.path, title=part.title))
        )  # fmt: skip
    note = Text((backing.finished.thickness.value, backing.finished.width.value / 3),
                "frieze board, backing", 2.2, anchor="start", shift_mm=(1.5, 0.0))  # fmt: skip
    elements.append(note)
    moulding = crown.parts[0]
    elements.append(
        Polyline(_profile(sizes, moulding.finished.thickness.value), CUT, closed=True,
                 fill=Ink.PAPER, hatch=SECTION, tag=Tag(path=moulding.path, title=crown.title))
    )  # fmt: skip
    if run.spec.trims.crown is not None and run.spec.trims.crown.to_ceiling:
        far = -sizes.board - sizes.projection.value - _BEYOND
        elements.append(line((far, sizes.ceiling), (_BEHIND, sizes.ceiling), NEIGHBOUR))
        elements.append(Text((_BEHIND, sizes.ceiling), "ceiling at its lowest", 2.2,
                             anchor="start", shift_mm=(1.5, 0.0)))  # fmt: skip
    elements.extend(_dimensions(sizes, unit))
    return Scene(tuple(elements), f"{run.spec.title}: section of the crown")


def _case(run: Run, crown: Trim) -> Iterator[Element]:
    """The head of the case, and of the door before it."""
    left = crown.start.value if crown.start is not None else 0
    case = next((each for each, start in zip(run.cases, run.starts, strict=True)
                 if start.value + each.overall_width.value > left), run.cases[0])  # fmt: skip
    thick = next((p.finished.thickness.value for p in case.parts if p.role == "side"), _BELOW)
    yield rectangle((Fraction(0), -_BELOW), (_BEHIND, Fraction(0)), VISIBLE, fill=Ink.TINT)
    yield rectangle((Fraction(0), -thick), (_BEHIND, Fraction(0)), CUT, fill=Ink.PAPER,
                    hatch=BACK_SECTION)  # fmt: skip
    for front in case.fronts[:1]:
        top = case.height.value - front.y.value - front.height.value
        near = case.depth.value - front.z.value - front.thickness.value
        far = case.depth.value - front.z.value
        yield rectangle((near, -_BELOW), (far, -top), CUT, fill=Ink.PAPER, hatch=SECTION)


def _profile(sizes: _Sizes, thick: Fraction) -> tuple[Point, ...]:
    """A plain moulding of its thickness: the foot at the frieze board, the head at the ceiling."""
    foot, plane = float(sizes.frieze.value), -float(sizes.board)
    drop, out = float(sizes.drop.value), float(sizes.projection.value)
    slope = math.hypot(drop, out)
    flat = min(float(thick) * slope / out, drop)
    level = min(float(thick) * slope / drop, out)
    return (
        (plane, foot), (plane - out, foot + drop), (plane - out + level, foot + drop),
        (plane, foot + flat),
    )  # fmt: skip


def _dimensions(sizes: _Sizes, unit: Unit) -> Iterator[Element]:
    zero, plane = Fraction(0), -sizes.board
    head = plane - sizes.projection.value
    up = [Span(sizes.frieze.value, sizes.ceiling, measure_of(sizes.drop, unit), emphasis=True)]
    if sizes.frieze.value > 0:
        up.insert(0, Span(zero, sizes.frieze.value, measure_of(sizes.frieze, unit)))
    yield Dimensions("left", head, tuple(up))
    across = (Span(head, plane, measure_of(sizes.projection, unit), emphasis=True),)
    yield Dimensions("above", sizes.ceiling, across)
