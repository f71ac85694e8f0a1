"""No two parts take up the same space."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.corners import mates
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.geometry import Box
from casewright.geometry.box import Number

__all__ = ["check_overlaps", "shared"]


def check_overlaps(case: Assembled) -> Iterator[Failure]:
    """Every pair of parts whose solids share volume; mitres and mouths are checked apart."""
    mitred = mates(case)
    for one, other in combinations(case.solids.values(), 2):
        if frozenset((one.part.path, other.part.path)) in mitred:
            continue
        if one.part.turned != other.part.turned:
            continue
        if one.outer.meets(other.outer):
            depth = max((_least_side(box) for box in shared(one, other)), default=0)
            if depth:
                yield Failure(
                    "overlap",
                    (one.part.path, other.part.path),
                    f"{one.part.title} and {other.part.title} would be in the same place",
                    case.units.length(depth),
                )


def shared(one: Solid, other: Solid) -> Iterator[Box]:
    """The boxes that two solids have in common."""
    for piece in one.pieces:
        if piece.meets(other.outer):
            for second in other.pieces:
                if piece.meets(second):
                    yield piece.common(second)


def _least_side(box: Box) -> Number:
    return min(box.x1 - box.x0, box.y1 - box.y0, box.z1 - box.z0)
