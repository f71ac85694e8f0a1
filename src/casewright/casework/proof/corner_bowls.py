"""What ties a diagonal corner under a bowl in place of a top: corner blocks and a rail on edge."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.fronts import is_inset
from casewright.casework.proof.plans import Plans, is_clipped
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.surds import Surd
from casewright.casework.proof.units import apart

__all__ = ["check_under_bowl"]


def check_under_bowl(
    case: Assembled, mouth: CaseMouth, plans: Plans, grid: Fraction
) -> Iterator[Failure]:
    """Blocks and rail that are not there, not flush above, or do not meet.

    Parameters
    ----------
    grid
        How far rounding may keep a block's slant off the rail [mm].
    """
    model, units = case.model, case.units
    blocks = [s for s in case.solids.values() if s.part.role == "corner block"]
    rails = [s for s in case.solids.values() if s.part.path == f"{model.key}.front_rail"]
    closed = [s for s in case.solids.values() if s.part.role in ("top", "back")]
    counts = (len(blocks), len(rails), len(closed))
    if counts != ((2, 1, 0) if model.spec.sink else (0, 0, 3)):
        says = "a corner is closed by a top and two backs, or tied by two blocks and a rail"
        yield Failure("parts", (model.key,), says)
        return
    if model.spec.sink:
        yield from _check_rear(case, mouth)
    for solid in (*blocks, *rails):
        yield from _check_flush(case, solid)
    inset = any(is_inset(case, face.opening) for face in model.faces)
    # Behind an inset false front its joint with that holds the rail on edge back.
    across = [s for s in case.solids.values() if s.part.role == "stretcher" and s.part.turned]
    for solid in across if inset else rails:
        off = apart(solid.outer.z1, units.of(mouth.front))
        if off:
            says = f"{solid.part.title} is not flush with the face"
            yield Failure("size", (solid.part.path,), says, units.length(off))
    for rail in rails:
        for block in blocks:
            yield from _check_block(case, mouth, plans, (block, rail), grid)


def _check_flush(case: Assembled, solid: Solid) -> Iterator[Failure]:
    off = apart(solid.outer.y1, case.units.of(case.model.height))
    if off:
        says = f"{solid.part.title} is not flush with the upper ends of the sides"
        yield Failure("size", (solid.part.path,), says, case.units.length(off))


def _check_rear(case: Assembled, mouth: CaseMouth) -> Iterator[Failure]:
    """Bottom, post and nailers reach their walls, where no back is, and end with the sides."""
    wall = 0 if mouth.corner == "left" else case.units.of(case.model.width)
    for solid in case.solids.values():
        role, box = solid.part.role, solid.outer
        if role not in ("bottom", "corner post", "nailer"):
            continue
        beside = apart(box.x0 if mouth.corner == "left" else box.x1, wall)
        along = str(solid.way("t1")) in ("+z", "-z")
        off = max(apart(box.z0, 0) if along or role == "bottom" else 0,
                  beside if not along or role == "corner post" else 0)  # fmt: skip
        if off:
            says = f"{solid.part.title} does not lie against its wall"
            yield Failure("size", (solid.part.path,), says, case.units.length(off))
        if role == "corner post" or solid.part.path.rpartition(".")[2].startswith("nailer_top"):
            yield from _check_flush(case, solid)


def _check_block(
    case: Assembled, mouth: CaseMouth, plans: Plans, pair: tuple[Solid, Solid], grid: Fraction
) -> Iterator[Failure]:
    """Its slant lies against the back of the rail, a hair behind, and it covers its strip."""
    block, rail = pair
    units, paths = case.units, tuple(solid.part.path for solid in pair)
    line = plans.clip_line(block, units)
    if line is None or not is_clipped(block, mouth):
        yield Failure("cuts", paths, f"{block.part.title} is not clipped at its front corner")
        return
    behind = plans.turned(rail.outer).both.low.minus(Surd(2 * line))
    if behind.minus(Surd(2 * units.up(2 * grid))).sign > 0:
        says = f"{block.part.title} stands off {rail.part.title}"
        yield Failure("size", paths, says)
    [plan] = plans.of(block, units)
    for strip in case.solids.values():
        hand = block.part.path.rpartition("_")[2]
        if strip.part.role != "hinge strip" or strip.part.hand != hand:
            continue
        under = plans.turned(strip.outer)
        if any(b.low.minus(a.low).sign > 0
               for a, b in ((under.u, plan.u), (under.v, plan.v))):  # fmt: skip
            says = f"{block.part.title} does not reach over the end of {strip.part.title}"
            yield Failure("joints", (block.part.path, strip.part.path), says)
