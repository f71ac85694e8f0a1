"""Lids: over the whole box, flush with its back, as far from either side."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.units import apart
from casewright.geometry import Direction

__all__ = ["check_lid"]

_TO_THE_WALL = Direction.of("-z")


def check_lid(case: Assembled, grid: Fraction) -> Iterator[Failure]:
    """A lid that is missing, does not cover its box, or stands out beside it.

    Parameters
    ----------
    grid
        How far rounding to the cutting grid may leave it out of the middle [mm].
    """
    lids = [solid for solid in case.solids.values() if solid.part.role == "lid"]
    wanted = case.model.spec.lid is not None and not case.model.spec.shares_lid
    if len(lids) != wanted:
        says = "a seat has one lid, or its run has; other cases have none"
        yield Failure("parts", (case.model.key,), says)
    units = case.units
    first, last, frame = 0, units.of(case.model.width), case.model.frame
    if frame is not None and case.model.spec.framed:
        first = units.of(frame.x)
        last = first + units.of(frame.width)
    depth = units.of(case.model.face_plane)
    for solid in lids:
        box = solid.outer
        if box.y0 != units.of(case.model.height):
            says = "the lid does not lie on its box"
            off = apart(box.y0, units.of(case.model.height))
            yield Failure("fronts", (solid.part.path,), says, units.length(off))
        if box.z0 or box.z1 < depth:
            says = "the lid does not reach from the back of its box to its front"
            yield Failure("fronts", (solid.part.path,), says, units.length(apart(box.z0, 0)))
        if any(solid.way(treated.edge) == _TO_THE_WALL for treated in solid.part.edges):
            says = "the edge of the lid that is treated lies at the wall"
            yield Failure("fronts", (solid.part.path,), says)
        left, right = box.x0 - first, last - box.x1
        if min(left, right) < 0 or apart(left, right) > units.up(grid):
            says = "the lid is not in the middle of its box"
            yield Failure("fronts", (solid.part.path,), says, units.length(apart(left, right)))
