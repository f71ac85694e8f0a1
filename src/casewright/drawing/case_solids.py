"""Parts of a case as boxes to draw: what each part takes up in case axes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.geometry import Box, Placement

__all__ = ["Solid", "case_solids", "part_box"]


@dataclass(frozen=True, slots=True)
class Solid:
    """A part and its outer box in case axes [mm]."""

    part: Part
    box: Box


def part_box(part: Part) -> Box:
    """Outer box of a part in case axes [mm], cuts not taken off."""
    size, placed = part.finished, part.placed
    zero = Fraction(0)
    placement = Placement((placed.x.value, placed.y.value, placed.z.value), placed.orientation)
    return placement.box(
        Box(zero, size.length.value, zero, size.width.value, zero, size.thickness.value)
    )


def case_solids(case: Case, *, fronts: bool) -> tuple[Solid, ...]:
    """All parts as boxes, with or without those of the doors."""
    return tuple(Solid(part, part_box(part)) for part in case.parts if fronts or not part.front)
