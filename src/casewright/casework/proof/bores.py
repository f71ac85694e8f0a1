"""Holes lie in wood: inside their face, clear of cuts and of one another, not through."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise

from casewright.casework.features import Bores
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.holes import Hole, Row, circle_meets, pocket_box
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import Units
from casewright.geometry import Box, subtract

__all__ = ["check_bores"]

# The spur of a bit runs about this far ahead of its rim (common practice), so that a hole with
# less wood under it shows on the far face.
_SPUR = Fraction(1)


def check_bores(case: Assembled) -> Iterator[Failure]:
    """Every hole that does not lie in wood, or runs into another."""
    for path, rows in case.rows.items():
        solid = case.solids[path]
        for row in rows:
            yield from _check_row(case, solid, row)
        for one, other in combinations(rows, 2):
            if one.box.meets(other.box) and _collide(one, other, solid):
                kinds = f"{one.bores.kind} and {other.bores.kind}"
                yield Failure("bores", (one.bores.path, other.bores.path, path),
                              f"holes for {kinds} run into each other")  # fmt: skip


def _check_row(case: Assembled, solid: Solid, row: Row) -> Iterator[Failure]:
    bores, units = row.bores, case.units
    paths = (bores.path, solid.part.path)
    if not row.holes or row.holes[0].radius <= 0:
        yield Failure("bores", paths, f"the hole for the {bores.kind} has no size")
        return
    yield from _check_face(solid, row, units)
    if bores.depth is not None:
        yield from _check_depth(case, solid, row)
    if _in_a_cut(solid, row):
        yield Failure("bores", paths, f"a hole for the {bores.kind} runs into a cut of the part")
    if _crowded(row.holes):
        yield Failure("bores", paths, f"two holes for the {bores.kind} run into each other")


def _check_face(solid: Solid, row: Row, units: Units) -> Iterator[Failure]:
    length, width, _ = solid.size
    box = row.box
    out = max(-box.x0, box.x1 - length, -box.y0, box.y1 - width)
    if row.bores.kind == "pocket":
        boxes = [pocket_box(row, hole, solid.size) for hole in row.holes]
        out = max(
            max(-box.x0, box.x1 - length, -box.y0, box.y1 - width) for box in boxes
        )  # fmt: skip
    if out > 0:
        says = f"a hole for the {row.bores.kind} breaks the edge of the part"
        yield Failure("bores", (row.bores.path, solid.part.path), says, units.length(out))


def _check_depth(case: Assembled, solid: Solid, row: Row) -> Iterator[Failure]:
    """A blind hole keeps wood under it; in a door, what is glued on counts."""
    bores, units = row.bores, case.units
    thickness = solid.size[2]
    depth = row.holes[0].high - row.holes[0].low
    paths = (bores.path, solid.part.path)
    if depth <= 0:
        yield Failure("bores", paths, f"the hole for the {bores.kind} has no depth")
        return
    short = depth + units.up(_SPUR) - thickness
    if short > 0 and not all(_backed(case, solid, hole, short) for hole in row.holes):
        says = f"a hole for the {bores.kind} comes through the far face"
        yield Failure("bores", paths, says, units.length(short))


def _backed(case: Assembled, solid: Solid, hole: Hole, short: int) -> bool:
    """Whether other parts of the same door lie behind a hole that is too deep for its own."""
    if not solid.part.front:
        return False
    low, high = (
        (-short, 0) if hole.low > 0 else (solid.size[2], solid.size[2] + short)
    )  # fmt: skip
    radius = hole.radius
    behind = solid.box(
        Box(hole.length - radius, hole.length + radius, hole.width - radius, hole.width + radius,
            low, high)
    )  # fmt: skip
    others = (s for s in case.solids.values() if s.part.front == solid.part.front)
    return not subtract(behind, (piece for other in others for piece in other.pieces))


def _in_a_cut(solid: Solid, row: Row) -> bool:
    met = [hollow for hollow in solid.cuts.values() if hollow.meets(row.box)]
    if not met:
        return False
    if row.bores.kind == "pocket":
        boxes = [pocket_box(row, hole, solid.size) for hole in row.holes]
        return any(box.meets(hollow) for box in boxes for hollow in met)
    return any(circle_meets(hole, hollow) for hole in row.holes for hollow in met)


def _crowded(holes: tuple[Hole, ...]) -> bool:
    """Whether neighbours in a row run into each other."""
    order = sorted(holes)
    return any(_touch(a, b) for a, b in pairwise(order))


def _touch(one: Hole, other: Hole) -> bool:
    if one.high <= other.low or other.high <= one.low:
        return False
    along, across = one.length - other.length, one.width - other.width
    reach = one.radius + other.radius
    return along * along + across * across < reach * reach


def _collide(one: Row, other: Row, solid: Solid) -> bool:
    """Whether any hole of one row runs into any of another."""
    if _is_pocket(one.bores):
        return any(_meets_pocket(pocket_box(one, hole, solid.size), other, solid)
                   for hole in one.holes)  # fmt: skip
    if _is_pocket(other.bores):
        return _collide(other, one, solid)
    return any(_touch(a, b) for a in one.holes for b in other.holes)


def _meets_pocket(box: Box, other: Row, solid: Solid) -> bool:
    if _is_pocket(other.bores):
        return any(box.meets(pocket_box(other, hole, solid.size)) for hole in other.holes)
    return any(circle_meets(hole, box) for hole in other.holes)


def _is_pocket(bores: Bores) -> bool:
    return bores.kind == "pocket"
