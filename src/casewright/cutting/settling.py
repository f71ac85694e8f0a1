"""A cutting problem into a plan in its order of work, eased and checked: whole numbers alone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from casewright.cutting.boards import solve_boards
from casewright.cutting.easing import ease
from casewright.cutting.engine import Stop, solve
from casewright.cutting.methods import Limits
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.solution import Solution
from casewright.cutting.steps import CutPlan, plan_cuts
from casewright.cutting.trade import Trade, weigh
from casewright.cutting.verifier import verify
from casewright.cutting.walker import walk
from casewright.cutting.work import Work, work_of

__all__ = [
    "PlanDefectError",
    "Task",
    "TaskSolution",
    "WorkPlan",
    "confirm",
    "confirm_places",
    "laid_out",
    "settle",
]


class PlanDefectError(RuntimeError):
    """A cutting plan that the verifier refuses: a defect of the program."""


@dataclass(frozen=True, slots=True)
class Task:
    """What is to be laid out and put in order, in whole numbers alone.

    Parameters
    ----------
    problem
        What is cut from what.
    model
        What the shop can do, and what work at the saw is reckoned by.
    stop
        When to be content with the number of sheets.
    eases
        When to be content with the work; None: it is not eased.
    lengths_only
        Crosscuts alone.
    """

    problem: Problem
    model: WorkModel
    stop: Stop
    eases: Stop | None
    lengths_only: bool


@dataclass(frozen=True, slots=True)
class WorkPlan:
    """A layout with its work eased: the order of work, checked, and what more stock would save."""

    solution: Solution
    order: CutPlan
    work: Work
    trade: Trade | None


@dataclass(frozen=True, slots=True)
class TaskSolution:
    """One of several tasks, done.

    Parameters
    ----------
    chosen
        Its number, from 0.
    solution
        As it was laid out, its work not eased yet.
    """

    chosen: int
    solution: Solution
    sawn: WorkPlan


def settle(tasks: Sequence[Task]) -> TaskSolution:
    """Do the first of several tasks, or one that takes less stock.

    Its work is eased where it asks for it, its cuts are put in order, and both are checked. It
    hangs on the tasks alone, whoever does it.

    Raises
    ------
    PlanDefectError
        When the plan does not pass the verifier, or cannot be walked.
    """
    solutions = [laid_out(task) for task in tasks]
    chosen = min(range(len(tasks)), key=lambda number: solutions[number].cost)
    solution, task = solutions[chosen], tasks[chosen]
    return TaskSolution(chosen, solution, _sawn(task.problem, solution, task.model, task.eases))


def laid_out(task: Task) -> Solution:
    """A task with its sheets alone, its work not eased."""
    return _solved(task.problem, task.stop, task.lengths_only)


@lru_cache(maxsize=512)
def _solved(problem: Problem, stop: Stop, lengths_only: bool) -> Solution:
    """The same problem is solved once."""
    return (solve_boards if lengths_only else solve)(problem, stop)


@lru_cache(maxsize=512)
def _sawn(problem: Problem, solution: Solution, model: WorkModel, stop: Stop | None) -> WorkPlan:
    trade: Trade | None = None
    if stop is not None:
        solution = ease(problem, solution, model, stop)
        trade = weigh(problem, solution, model, stop)
        solution = trade.fewest.solution
    order = plan_cuts(problem, solution, model.limits)
    confirm(problem, solution, order, model.limits)
    return WorkPlan(solution, order, work_of(problem, solution, order, model), trade)


def confirm(problem: Problem, solution: Solution, work: CutPlan, limits: Limits) -> None:
    """Check a plan with the verifier, and its order of work by making every cut in thought.

    Raises
    ------
    PlanDefectError
        When either is wrong: a defect of the program.
    """
    confirm_places(problem, solution)
    walked = walk(problem, work, limits)
    wrong = [f"step {slip.step}: {slip.slip.value}, {slip.says}" for slip in walked.missteps]
    unplaced = {entry.part: entry.count for entry in solution.unplaced}
    wrong += [
        f"{part.id} is not made"
        for part in problem.parts
        if walked.made.get(part.id, 0) != part.count - unplaced.get(part.id, 0)
    ]
    _sound(wrong)


def confirm_places(problem: Problem, solution: Solution) -> None:
    """Check where a plan puts each piece, with the verifier.

    Raises
    ------
    PlanDefectError
        When it is refused: a defect of the program.
    """
    _sound([violation.says for violation in verify(problem, solution)])


def _sound(wrong: Sequence[str]) -> None:
    if wrong:
        msg = f"the cutting plan is wrong: {'; '.join(wrong)}"
        raise PlanDefectError(msg)
