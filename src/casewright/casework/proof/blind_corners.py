"""Blind corner bases: panel, filler and door lie edge to edge in front of the box."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.units import apart
from casewright.geometry import Number

__all__ = ["check_blind_corner"]


def check_blind_corner(case: Assembled) -> Iterator[Failure]:
    """A blind part that is not closed, or whose filler does not lie beside the door."""
    hand = case.model.spec.blind
    by_role: dict[str, list[Solid]] = {"blind panel": [], "blind filler": []}
    for solid in case.solids.values():
        by_role.get(solid.part.role, []).append(solid)
    counts = {role: len(found) for role, found in by_role.items()}
    if any(count != (hand is not None) for count in counts.values()):
        yield Failure("parts", (case.model.key,), "a blind corner has one panel and one filler")
        return
    if hand is None:
        return
    [panel], [filler] = by_role["blind panel"], by_role["blind filler"]
    yield from _check_edges(case, panel, filler, left=hand == "left")


def _check_edges(case: Assembled, panel: Solid, filler: Solid, *, left: bool) -> Iterator[Failure]:
    of = case.units.of
    side = 1 if left else 0
    off = max(apart(panel.outer[side], filler.outer[side]),
              apart(panel.outer.z1, of(case.model.depth)))  # fmt: skip
    if off:
        says = "the filler does not end with the mouth, or the panel with the front of the box"
        yield Failure("fronts", (filler.part.path, panel.part.path), says, case.units.length(off))
    for face in case.model.faces:
        leaves = [front for front in case.model.fronts if front.path in face.leaves]
        for front in leaves:
            off = max(apart(filler.outer.y0, of(front.y)),
                      apart(filler.outer.y1, of(front.y) + of(front.height)))  # fmt: skip
            if off:
                says = f"the filler is not as high as {front.title}"
                yield Failure("fronts", (filler.part.path,), says, case.units.length(off))
        edge = of(leaves[0].x) if left else of(leaves[-1].x) + of(leaves[-1].width)
        air: Number = edge - filler.outer.x1 if left else filler.outer.x0 - edge
        if air <= 0 or any(h.plate and front.hinge_side == case.model.spec.blind
                           for front in case.model.doors for h in front.hinges):  # fmt: skip
            says = "the door beside the blind part laps its filler, or is hinged on it"
            yield Failure("fronts", face.leaves, says, case.units.length(apart(air, 0)))
