"""A plan of cuts as a JSON file, whoever made it: read, and checked against its problem."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from casewright.cutting.claim_verifier import told_violations
from casewright.cutting.codec import fingerprint
from casewright.cutting.problem import ProblemError
from casewright.cutting.solution import Solution
from casewright.cutting.solution_codec import write_solution
from casewright.cutting.solution_reader import read_solution
from casewright.cutting.steps import CutPlan
from casewright.cutting.violations import Breach, Violation
from casewright.cutting.work import work_of
from casewright.job.bare_cutting import not_done
from casewright.job.cut_file import CutTask
from casewright.job.json_file import faults_error, read_json
from casewright.job.order_reader import read_order
from casewright.job.plan_check import breaches_of
from casewright.job.work_document import work_json

__all__ = ["PlanFile", "file_breaches", "is_of", "plan_of", "read_plan"]

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
    done
        Numbers of the sheets that were cut before it was made, from 0.
    fingerprint
        Of the problem it was made for, as told.
    told
        All that stands in the file.
    """

    solution: Solution
    order: CutPlan | None = None
    cards: object = None
    done: frozenset[int] = frozenset()
    fingerprint: object = None
    told: Mapping[str, Any] = field(default_factory=dict)


def read_plan(path: Path) -> PlanFile:
    """The plan in a file.

    Raises
    ------
    CutFileError
        When it cannot be read, is no JSON, or has no plan's shape.
    """
    data = read_json(path, _HOLDS)
    try:
        return plan_of(data)
    except ProblemError as error:
        raise faults_error(path, error.faults) from None


def plan_of(data: Any) -> PlanFile:
    """The plan in parsed JSON.

    Raises
    ------
    ProblemError
        With everything that keeps it from being a plan.
    """
    solution = read_solution(data)
    order = read_order(data, solution) if "steps" in data else None
    return PlanFile(
        solution, order, data.get("cards"), _done(data.get("last")), data.get("fingerprint"), data
    )


def _done(last: object) -> frozenset[int]:
    """Sheets that a plan made from another calls cut."""
    found = last.get("cut") if isinstance(last, Mapping) else None
    return (
        frozenset(n for n in found if type(n) is int) if isinstance(found, list) else frozenset()
    )


def file_breaches(task: CutTask, plan: PlanFile) -> tuple[Violation, ...]:
    """Everything wrong with a plan in a file; cards without steps are compared with its trees."""
    found = breaches_of(task, plan.solution, plan.order, plan.done)
    found += tuple(told_violations(task.problem, plan.solution, plan.told))
    if not found and plan.order is not None:
        return tuple(_work_breaches(task, plan, plan.order))
    if found or plan.order is not None or plan.cards is None:
        return found
    written: Mapping[str, Any] = write_solution(task.problem, plan.solution)
    if plan.cards == written["cards"]:
        return ()
    says = "they belong to steps that are not told, or the cut trees ask for other settings"
    return (Violation(Breach.CARDS, says),)


def _work_breaches(task: CutTask, plan: PlanFile, order: CutPlan) -> Iterator[Violation]:
    """What of the work is told, where it is, against the work of the steps."""
    told = plan.told.get("work")
    if told is None:
        return
    left = not_done(plan.solution, plan.done)
    facts = work_json(work_of(task.problem, left, order, task.model))
    if not isinstance(told, Mapping):
        yield Violation(Breach.TOLD, f"work is {told!r}, it must be an object")
        return
    for key, fact in facts.items():
        if key in told and told[key] != fact:
            yield Violation(Breach.TOLD, f"work: {key} is {told[key]!r}, the steps make {fact!r}")


def is_of(task: CutTask, plan: PlanFile) -> bool:
    """Whether a plan says that it was made for this very problem, or says nothing of it."""
    return plan.fingerprint in (None, fingerprint(task.problem))
