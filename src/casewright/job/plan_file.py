"""A plan of cuts as a JSON file, whoever made it: read, and checked against its problem."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from casewright.cutting.codec import fingerprint
from casewright.cutting.problem import ProblemError
from casewright.cutting.solution import Solution
from casewright.cutting.solution_codec import write_solution
from casewright.cutting.solution_reader import read_solution
from casewright.cutting.steps import CutPlan
from casewright.cutting.verifier import verify
from casewright.cutting.violations import Breach, Violation
from casewright.cutting.walker import walk
from casewright.job.cut_file import CutTask
from casewright.job.json_file import faults_error, read_json
from casewright.job.order_reader import read_order

__all__ = ["PlanFile", "breaches_of", "is_of", "read_plan"]

_HOLDS = "placements, tree, bound, cost and status, as `cut --problem --json` prints"


@dataclass(frozen=True, slots=True)
class PlanFile:
    """A plan as it stands in a file.

    Parameters
    ----------
    solution
        Where each part lies and how each sheet is divided.
    order
        The cuts in their order, when they are told.
    cards
        The settings as told, when the cuts are not.
    fingerprint
        Of the problem it was made for, as told.
    """

    solution: Solution
    order: CutPlan | None = None
    cards: object = None
    fingerprint: object = None


def read_plan(path: Path) -> PlanFile:
    """The plan in a file.

    Raises
    ------
    CutFileError
        When it cannot be read, is no JSON, or has no plan's shape.
    """
    data = read_json(path, _HOLDS)
    try:
        solution = read_solution(data)
        order = read_order(data, solution) if "steps" in data else None
    except ProblemError as error:
        raise faults_error(path, error.faults) from None
    return PlanFile(solution, order, data.get("cards"), data.get("fingerprint"))


def breaches_of(task: CutTask, plan: PlanFile) -> tuple[Violation, ...]:
    """Everything wrong with a plan: of its places and its cut trees, then of its order of work.

    The order of work is made in thought, cut by cut, with nothing known but saws and pieces; only
    where the places are sound.
    """
    found = verify(task.problem, plan.solution)
    if found:
        return found
    if plan.order is not None:
        return tuple(_order_breaches(task, plan.solution, plan.order))
    written: Mapping[str, Any] = write_solution(task.problem, plan.solution)
    if plan.cards is not None and plan.cards != written["cards"]:
        says = "they belong to steps that are not told, or the cut trees ask for other settings"
        return (Violation(Breach.CARDS, says),)
    return ()


def is_of(task: CutTask, plan: PlanFile) -> bool:
    """Whether a plan says that it was made for this very problem, or says nothing of it."""
    return plan.fingerprint in (None, fingerprint(task.problem))


def _order_breaches(task: CutTask, solution: Solution, order: CutPlan) -> list[Violation]:
    walked = walk(task.problem, order, task.model.limits)
    sheets = {step.number: step.sheet for step in order.steps}
    wrong = [
        Violation(
            Breach.TREE,
            f"step {slip.step}: {slip.slip.value} ({slip.says})" if slip.step else slip.says,
            sheets.get(slip.step),
        )
        for slip in walked.missteps
    ]
    unplaced = {entry.part: entry.count for entry in solution.unplaced}
    for part in task.problem.parts:
        made, want = walked.made.get(part.id, 0), part.count - unplaced.get(part.id, 0)
        if made != want:
            says = f"{want} placed, the steps make {made}"
            wrong.append(Violation(Breach.TREE, says, part=part.id))
    return wrong
