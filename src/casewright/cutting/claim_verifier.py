"""An independent check of what a plan says of itself: its bound, its words, its sums.

Bounds and cautions are worked out anew from the contract alone, without what made the plan.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from casewright.cutting.methods import Limits
from casewright.cutting.problem import PartDemand, Problem, StockItem
from casewright.cutting.solution import Solution
from casewright.cutting.steps import CutPlan, Step
from casewright.cutting.violations import Breach, Violation

__all__ = ["caution_violations", "claim_violations", "least_sheets", "told_violations"]

_SCOPES: Mapping[str, tuple[int | None, ...]] = {
    "any layout": (), "three-stage cutting": (2, 3), "two-stage cutting": (2,),
}  # fmt: skip
"""Numbers of stages of the problems that a bound of each scope says something of; none: all."""


def claim_violations(problem: Problem, solution: Solution) -> Iterator[Violation]:
    """What a bound cannot be: of no scope, or for other cutting than the problem allows."""
    scope = solution.bound.scope
    stages = _SCOPES.get(scope)
    if stages is None:
        says = f'"{scope}" is no scope: it is one of {", ".join(_SCOPES)}'
        yield Violation(Breach.CLAIM, says)
    elif stages and problem.stages not in stages:
        asked = "any number of" if problem.stages is None else problem.stages
        yield Violation(Breach.CLAIM, f"it holds for {scope}, the problem allows {asked} stages")


def least_sheets(problem: Problem, solution: Solution) -> int:
    """Sheets that the placed parts fill by their area, each grown by a kerf, the largest first.

    No layout in which parts keep a kerf apart takes fewer.
    """
    sizes = {part.id: part for part in problem.parts}
    placed = [sizes[each.part] for each in solution.placements if each.part in sizes]
    left = sum(_grown(part, problem.kerf) for part in placed)
    sheets = 0
    for item in sorted(problem.stock, key=lambda item: -_room(item, problem.kerf)):
        room = _room(item, problem.kerf)
        take = -(-left // room) if item.count is None else min(-(-left // room), item.count)
        sheets, left = sheets + take, left - take * room
        if left <= 0:
            break
    return sheets


def _grown(part: PartDemand, kerf: int) -> int:
    return (part.length + kerf) * (part.width + kerf)


def _room(item: StockItem, kerf: int) -> int:
    return (item.usable_length + kerf) * (item.usable_width + kerf)


def told_violations(
    problem: Problem, solution: Solution, told: Mapping[str, Any]
) -> Iterator[Violation]:
    """What a plan tells besides, where it does, and what does not follow from it.

    Parameters
    ----------
    told
        The file: `unit`, `kerf`, `stages`, `gap` and `verdict`.
    """
    facts = {
        "unit": problem.unit, "kerf": problem.kerf,
        "stages": "free" if problem.stages is None else problem.stages,
        "gap": solution.gap, "verdict": solution.verdict,
    }  # fmt: skip
    for key, fact in facts.items():
        if key in told and (told[key] != fact or type(told[key]) is not type(fact)):
            yield Violation(Breach.TOLD, f"{key} is {told[key]!r}, it must be {fact!r}")


def caution_violations(order: CutPlan, limits: Limits) -> Iterator[Violation]:
    """The cautions of each cut against what of it is beyond the shop's limits."""
    for step in order.steps:
        needed, reasons = _needed(step, limits), _reasons(step, limits)
        told = set(step.cautions)
        words = [f"lacks {caution}" for caution in sorted(needed - told)]
        words += [f"{caution} is not so" for caution in sorted(told - needed - reasons)]
        if words:
            says = f"step {step.number}: {', '.join(words)}"
            yield Violation(Breach.CAUTION, says, step.sheet)


def _sides(step: Step) -> tuple[int, int]:
    """Length of the cut, and the size of the piece at right angles to it."""
    rect = step.piece.rect
    sides = rect.length, rect.width
    return sides if step.direction == "rip" else (sides[1], sides[0])


def _needed(step: Step, limits: Limits) -> set[str]:
    """What can hurt, and must be told."""
    along, across = _sides(step)
    small = step.setting < limits.narrowest_rip
    guided = step.method == "straightedge"
    found = {
        "heavy": _over(along * across, limits.lift_area),
        "beyond straightedge": guided and _over(along, limits.straightedge),
        "narrow rip": step.method == "carrier" and small,
        "short piece": step.method == "sled" and small,
    }
    return {caution for caution, is_so in found.items() if is_so}


def _reasons(step: Step, limits: Limits) -> set[str]:
    """Why another saw may have been passed over."""
    along, across = _sides(step)
    found = {
        "beyond fence": _over(step.setting, limits.rip_capacity),
        "wide against fence": along < step.setting,
        "short along fence": along < limits.shortest_on_fence,
        "too wide for sled": _over(along, limits.crosscut_capacity),
        "long crosscut": _over(across, limits.longest_on_sled),
    }
    return {caution for caution, is_so in found.items() if is_so}


def _over(value: int, limit: int | None) -> bool:
    return limit is not None and value > limit
