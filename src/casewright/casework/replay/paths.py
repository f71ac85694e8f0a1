"""Every part comes in along a straight path with nothing in the way."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.corners import mates
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.plans import Plans, apart_in_plan, plans_of
from casewright.casework.proof.solids import Solid
from casewright.casework.replay.bench import Move
from casewright.geometry import Box, Direction

__all__ = ["check_paths", "swept"]


def check_paths(case: Assembled, steps: list[Move]) -> Iterator[Failure]:
    """Parts that would have to pass through others to their place."""
    whole = case.extent(list(case.solids.values()))
    plans = plans_of(case)
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
                if pair in mitred:
                    continue
                if _blocked(case, plans, (solid, other), way, whole):
                    says = f"{other.part.title} is in the way of {solid.part.title}"
                    yield Failure("path", (solid.part.path, other.part.path), says)


def _blocked(
    case: Assembled, plans: Plans | None, pair: tuple[Solid, Solid], way: Direction, whole: Box
) -> bool:
    solid, other = pair
    if plans is not None and solid.part.turned != other.part.turned:
        return _blocked_at_an_angle(case, plans, pair, way, whole)
    if not swept(solid.outer, way, whole).meets(other.outer):
        return False
    return any(
        swept(piece, way, whole).meets(second) for piece in solid.pieces for second in other.pieces
    )


def _blocked_at_an_angle(
    case: Assembled, plans: Plans, pair: tuple[Solid, Solid], way: Direction, whole: Box
) -> bool:
    """The same between what lies in a mouth and what lies along the walls.

    A clipped board that comes in from above sweeps what it covers in its place.
    """
    solid, other = pair
    most = None if solid.part.turned or way.axis != 1 else plans.clip_line(solid, case.units)
    for piece in solid.pieces:
        path = swept(piece, way, whole)
        plan = plans.turned(path) if solid.part.turned else plans.plain(path, most)
        for second, mate in zip(other.pieces, plans.of(other, case.units), strict=True):
            level = path.y0 < second.y1 and second.y0 < path.y1
            if level and not apart_in_plan(plan, mate):
                return True
    return False


def swept(box: Box, way: Direction, whole: Box) -> Box:
    """What a box passes through on its way from outside to its place."""
    limits = list(box)
    side = 2 * way.axis + (0 if way.sign > 0 else 1)
    limits[side] = whole[side] - way.sign
    return Box(*limits)
