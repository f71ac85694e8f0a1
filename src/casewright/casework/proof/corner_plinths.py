"""The toe board of a diagonal corner on a plinth: before both parts of it, from leg to leg."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.plans import Plans
from casewright.casework.proof.solids import Solid
from casewright.casework.proof.surds import Surd

__all__ = ["check_before_plinth"]


def check_before_plinth(
    case: Assembled, plans: Plans, board: Solid, grid: Fraction
) -> Iterator[Failure]:
    """Its rear corners touch ladder and arm, and its front ones end with the outside.

    Parameters
    ----------
    grid
        How far rounding may keep it off either [mm].
    """
    rails = [s for s in case.solids.values() if s.part.role == "plinth rail"]
    if not rails:
        yield Failure("parts", (board.part.path,), "nothing stands behind the toe board")
        return
    plan, step = plans.turned(board.outer), Surd(2 * case.units.up(grid))
    spans = [plans.plain(rail.outer) for rail in rails]
    main = next(rail for rail in rails if rail.part.path.endswith(".front"))
    arm = next(rail for rail in rails if rail.part.path.endswith(".arm_room"))
    at = dict(zip((rail.part.path for rail in rails), spans, strict=True))
    for rail, own, edge in (
        (main, plan.v, at[main.part.path].v.high), (arm, plan.u, at[arm.part.path].u.high),
    ):  # fmt: skip
        gap = own.low.minus(edge)
        if gap.sign < 0 or gap.minus(step).sign > 0:
            says = f"the {rail.part.title} does not end at the {board.part.title}"
            yield Failure("joints", (rail.part.path, board.part.path), says)
    legs = (plan.u, case.model.width), (plan.v, case.model.depth)
    for span, leg in legs:
        most = Surd(2 * case.units.of(leg))
        if span.high.minus(most).sign > 0 or most.minus(step).minus(span.high).sign > 0:
            says = f"the {board.part.title} does not reach from leg to leg"
            yield Failure("size", (board.part.path,), says)
