"""Strips glued under boards: flush in front, tight between the sides."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.units import apart

__all__ = ["check_strips"]

# A gap wider than this at a strip's end is seen through paint (common practice).
_SEEN = Fraction(1)


def check_strips(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """Nosings and skirts that leave a step in front or a gap at an end.

    Parameters
    ----------
    grid
        What rounding to the cutting grid may take off a strip's length [mm].
    """
    sides = [s.outer for s in case.solids.values() if s.part.role == "side"]
    strips = [s for s in case.solids.values() if s.part.role in ("nosing", "skirt")]
    if len(sides) != 2 or not strips:
        return
    left, right = min(box.x1 for box in sides), max(box.x0 for box in sides)
    front = max(box.z1 for box in sides)
    for solid in strips:
        box = solid.outer
        step = apart(box.z1, front)
        if step:
            says = f"{solid.part.title} is not flush with the front edges of the sides"
            yield Failure("joints", (solid.part.path,), says, case.units.length(step))
        gap = max(box.x0 - left, right - box.x1)
        if gap > case.units.down(max(_SEEN, grid)):
            says = f"{solid.part.title} does not reach from side to side"
            yield Failure("joints", (solid.part.path,), says, case.units.length(gap))
