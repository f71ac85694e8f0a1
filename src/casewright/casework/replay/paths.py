"""Every part comes in along a straight path with nothing in the way."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.corners import mates
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.replay.bench import Move
from casewright.geometry import Box, Direction

__all__ = ["check_paths", "swept"]


def check_paths(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Parts that would have to pass through others to their place."""
    whole = case.extent(list(case.solids.values()))
    mitred = mates(case)
    started: set[str] = set()
    for move in steps:
        way = move.step.enters
        if move.coming and way is None and move.work in started:
            says = f"{move.step.part} has no way given to its place"
            yield Failure("path", (move.step.part,), says)
        if move.coming:
            started.add(move.work)
        if way is None:
            continue
        for solid in move.coming:
            for other in move.there.values():
                pair = frozenset((solid.part.path, other.part.path))
                if pair not in mitred and _blocked(solid, other, way, whole):
                    says = f"{other.part.title} is in the way of {solid.part.title}"
                    yield Failure("path", (solid.part.path, other.part.path), says)


def _blocked(solid: Solid, other: Solid, way: Direction, whole: Box) -> bool:
    if not swept(solid.outer, way, whole).meets(other.outer):
        return False
    return any(
        swept(piece, way, whole).meets(second) for piece in solid.pieces for second in other.pieces
    )


def swept(box: Box, way: Direction, whole: Box) -> Box:
    """What a box passes through on its way from outside to its place."""
    limits = list(box)
    side = 2 * way.axis + (0 if way.sign > 0 else 1)
    limits[side] = whole[side] - way.sign
    return Box(*limits)
