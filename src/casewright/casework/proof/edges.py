"""A finished piece is its blank and what its edges add, on edges that are edges."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.parts import Part
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import PLANE_AXIS
from casewright.casework.proof.units import Units

__all__ = ["check_edges"]


def check_edges(case: Assembled) -> Iterator[Failure]:
    """Every part whose blank, edges and finished size do not add up."""
    for solid in case.solids.values():
        yield from _check_names(solid.part)
        yield from _check_sum(solid.part, solid.size, case.units)


def _check_names(part: Part) -> Iterator[Failure]:
    names = [edge.edge for edge in part.edges]
    for name in names:
        if name[0] == "t":
            yield Failure("edges", (part.path,), f"{name} of {part.title} is a face, not an edge")
    if len(set(names)) != len(names):
        yield Failure("edges", (part.path,), f"an edge of {part.title} is treated twice")


def _check_sum(part: Part, size: tuple[int, int, int], units: Units) -> Iterator[Failure]:
    blank = part.blank
    for axis, (word, dim) in enumerate(
        (("length", blank.length), ("width", blank.width), ("thickness", blank.thickness))
    ):
        added = sum(units.of(e.thickness) for e in part.edges if PLANE_AXIS[e.edge[0]] == axis)
        off = size[axis] - units.of(dim) - added
        if off:
            says = f"the {word} of {part.title} is not its blank and its edges together"
            yield Failure("edges", (part.path,), says, units.length(abs(off)))
