"""Plans of cuts kept as data: their solutions alone, checked as any plan before they are believed.

Numbers, pieces and words are never kept: they come from the job and its record, as they were when
it was planned. What is kept says only where each piece lies and in which order it is cut, under
the fingerprint of the problem that it solves.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, TypeVar

from casewright.breakdown import Breakdown, break_down
from casewright.cutting.codec import fingerprint
from casewright.cutting.problem import ProblemError
from casewright.cutting.settling import Task, TaskSolution, WorkPlan
from casewright.cutting.solution_codec import write_solution
from casewright.cutting.work import work_of
from casewright.errors import CasewrightError
from casewright.job.cut_file import CutTask
from casewright.job.plan_file import file_breaches, plan_of
from casewright.job.rest_plan import Rest, first_sheet, renumbered, rest_of
from casewright.room.model import Room

__all__ = ["KeptPlanError", "kept_solutions", "plan_from"]

_Thing = TypeVar("_Thing")
_Made = TypeVar("_Made")


class KeptPlanError(CasewrightError, ValueError):
    """A plan that was kept is of no use: it is damaged, or not for what is to be cut."""


def kept_solutions(breakdown: Breakdown, rest: Rest | None) -> list[dict[str, Any]]:
    """What is kept of a plan, as JSON would hold it.

    Parameters
    ----------
    rest
        What was planned anew by it; None: all that was to be cut.
    """
    return list(_solutions(breakdown, rest))


def _solutions(breakdown: Breakdown, rest: Rest | None) -> Iterator[dict[str, Any]]:
    told: set[str] = set()
    for plan in (*breakdown.plans, *breakdown.wanted):
        name = fingerprint(plan.problem)
        if plan.kind != "strips" and name not in told:  # strips are crosscut as they come
            told.add(name)
            by = first_sheet(plan.problem, rest) if rest else 0
            yield write_solution(plan.problem, *renumbered(plan.solution, plan.order, -by))


def plan_from(room: Room, solutions: object, rest: Rest | None) -> Breakdown:
    """The plan that solutions are kept of.

    Parameters
    ----------
    room
        As it was when it was planned.
    solutions, rest
        As `kept_solutions` gave them, and as it was given them.

    Raises
    ------
    KeptPlanError
        When one is damaged, or something is to be cut that none is for.
    """
    rows = solutions if isinstance(solutions, list) else []
    known = {row.get("fingerprint"): row for row in rows if isinstance(row, Mapping)}

    def each(work: Callable[[_Thing], _Made], things: Sequence[_Thing]) -> list[_Made]:
        asked: Sequence[Any] = things
        return [_solved(tasks, known) for tasks in asked]  # type: ignore[misc]

    return rest_of(room, rest, each) if rest else break_down(room, each=each)


def _solved(tasks: Sequence[Task], known: Mapping[object, Mapping[str, Any]]) -> TaskSolution:
    for number, task in enumerate(tasks):
        row = known.get(fingerprint(task.problem))
        if row is not None:
            return _checked(number, task, row)
    msg = "it is not for what is to be cut now"
    raise KeptPlanError(msg)


def _checked(number: int, task: Task, row: Mapping[str, Any]) -> TaskSolution:
    """A solution, gone through as if a stranger had sent it."""
    try:
        plan = plan_of(row)
    except ProblemError as error:
        msg = f"it is damaged: {error.faults[0].where}: {error.faults[0].field}"
        raise KeptPlanError(msg) from None
    if plan.order is None:
        msg = "it is damaged: its cuts are not there"
        raise KeptPlanError(msg)
    wrong = file_breaches(CutTask(task.problem, task.model, has_shop=True), plan)
    if wrong:
        msg = f"it is damaged: {wrong[0].says}"
        raise KeptPlanError(msg)
    work = work_of(task.problem, plan.solution, plan.order, task.model)
    return TaskSolution(number, plan.solution, WorkPlan(plan.solution, plan.order, work, None))
