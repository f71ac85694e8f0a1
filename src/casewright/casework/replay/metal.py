"""No screw stands where a bit bores or another screw runs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.holes import Row
from casewright.casework.proof.pocket_screws import PocketScrew
from casewright.casework.proof.solids import Solid
from casewright.geometry import Box

__all__ = ["check_metal"]


def check_metal(case: Assembled, screws: Iterable[PocketScrew]) -> Iterator[Failure]:
    """Pocket screws that meet holes of their mate, or one another."""
    by_mate: dict[str, list[tuple[PocketScrew, Box]]] = {}
    for screw in screws:
        if screw.metal is not None:
            by_mate.setdefault(screw.mate, []).append((screw, screw.metal))
    for mate, held in by_mate.items():
        yield from _check_holes(case, mate, held)
        for (one, metal), (other, second) in combinations(held, 2):
            if metal.meets(second):
                paths = (one.row.bores.path, other.row.bores.path, mate)
                yield Failure("metal", paths, f"two screws run into each other in {mate}")


def _check_holes(
    case: Assembled, mate: str, held: list[tuple[PocketScrew, Box]]
) -> Iterator[Failure]:
    solid = case.solids[mate]
    for row in case.rows.get(mate, ()):
        around = solid.box(row.box)
        for screw, metal in held:
            if around.meets(metal) and _in_a_hole(solid, row, metal):
                says = f"a hole for the {row.bores.kind} would be bored into a pocket screw"
                yield Failure("metal", (row.bores.path, screw.row.bores.path, mate), says)


def _in_a_hole(solid: Solid, row: Row, metal: Box) -> bool:
    return any(
        metal.meets(
            solid.box(Box(h.length - h.radius, h.length + h.radius, h.width - h.radius,
                          h.width + h.radius, h.low, h.high))
        )
        for h in row.holes
    )  # fmt: skip
