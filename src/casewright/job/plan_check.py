"""The check of a plan against its problem: its places, its cut trees, its order of work."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator

from casewright.cutting.claim_verifier import caution_violations
from casewright.cutting.solution import Solution
from casewright.cutting.steps import CutPlan
from casewright.cutting.verifier import verify
from casewright.cutting.violations import Breach, Violation
from casewright.cutting.walker import walk
from casewright.job.cut_file import CutTask

__all__ = ["breaches_of"]


def breaches_of(
    task: CutTask, solution: Solution, order: CutPlan | None, done: Collection[int] = ()
) -> tuple[Violation, ...]:
    """Everything wrong with a plan.

    The order of work is made in thought, cut by cut, with nothing known but saws and pieces; only
    where the places are sound.

    Parameters
    ----------
    task, solution
        What is cut, and how.
    order
        The cuts in their order, when they are told.
    done
        Numbers of sheets that are cut already, from 0: they need no steps.
    """
    found = verify(task.problem, solution)
    if found or order is None:
        return found
    return (
        *_order_breaches(task, solution, order, done),
        *caution_violations(order, task.model.limits),
    )


def _order_breaches(
    task: CutTask, solution: Solution, order: CutPlan, done: Collection[int]
) -> Iterator[Violation]:
    walked = walk(task.problem, order, task.model.limits)
    sheets = {step.number: step.sheet for step in order.steps}
    for slip in walked.missteps:
        at = f"step {slip.step}: " if slip.step else ""
        says = f"{at}{slip.slip.value} ({slip.says})"
        yield Violation(Breach.TREE, says, sheets.get(slip.step))
    wanted = Counter(place.part for place in solution.placements if place.sheet not in done)
    for part in task.problem.parts:
        made = walked.made.get(part.id, 0)
        if made != wanted[part.id]:
            says = f"{wanted[part.id]} to be made, the steps make {made}"
            yield Violation(Breach.TREE, says, part=part.id)
