"""Plans for a bare problem: fewest sheets, then least work, checked before they are told."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, replace

from casewright.breakdown import PlanDefectError
from casewright.cutting.boards import solve_boards
from casewright.cutting.easing import ease
from casewright.cutting.engine import Progress, Stop, solve
from casewright.cutting.problem import Problem
from casewright.cutting.replan import Replan, replan
from casewright.cutting.solution import Leaf, Solution, Status
from casewright.cutting.steps import CutPlan, plan_cuts
from casewright.cutting.trade import Trade, weigh
from casewright.cutting.work import Work, work_of
from casewright.job.cut_file import CutTask
from casewright.job.patience import Ending, Patience
from casewright.job.plan_check import breaches_of

__all__ = ["CutAnswer", "cut", "cut_again", "not_done"]

_EASING = 6
"""Easing the work counts each place that is tried; it gets a part of the places of the sheets."""

_FIRST = 20_000
"""Places of the first of several rounds, which tells how fast the machine is."""

_SHEETS, _EASED = 0.7, 0.9
"""Shares of the time after which the sheets, and then the work of their plan, are left alone."""

_ORDERS = 3
"""Finishing takes as long as putting the cuts in order so often: to judge the last plan, and to
tell and check it."""

_IDLE = 2
"""Rounds of easing without a gain after which there is hardly one left."""

Tell = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class CutAnswer:
    """A checked plan for a problem file.

    Parameters
    ----------
    task
        What was asked for.
    solution, order, work
        The plan, its cuts in their order, and what they ask of the person at the saw.
    trade
        What more sheets would save; None: it was not looked for.
    made
        How the plan came out of the last one, when there was one.
    done
        Numbers of the sheets that are cut already, from 0; no step is for them.
    ending
        Why the search ended.
    """

    task: CutTask
    solution: Solution
    order: CutPlan
    work: Work
    trade: Trade | None = None
    made: Replan | None = None
    done: frozenset[int] = frozenset()
    ending: Ending = Ending.CONTENT


def cut(task: CutTask, patience: Patience, tell: Tell) -> CutAnswer:
    """Plan the cuts of a problem.

    Parameters
    ----------
    task
        What to cut from what.
    patience
        When to be content. A first plan is always made.
    tell
        Called with a few words whenever there is something new.

    Raises
    ------
    PlanDefectError
        When the plan does not pass the verifier, or cannot be walked: a defect of the program.
    """
    if task.is_lengths:
        stop = patience.stop(patience.work)
        solution = solve_boards(
            task.problem, stop, watch=lambda found: tell(_so_far(found, "boards"))
        )
        return _answer(task, solution, None, patience.ending)
    solution = _fewest(task.problem, patience, tell)
    trade = None
    finish = _finish(task, solution, patience)
    if solution.tree and not patience.is_over and patience.left() > finish:
        solution = _eased(task, solution, patience, finish, tell)
    if solution.tree and not patience.is_over and patience.left() > finish:
        tell("looking at what more stock would save")
        stop = patience.stop(patience.work // _EASING, spare=finish)
        trade = weigh(task.problem, solution, task.model, stop)
        solution = trade.fewest.solution
    return _answer(task, solution, trade, patience.ending)


def cut_again(
    task: CutTask, last: Solution, done: Collection[int], patience: Patience, tell: Tell
) -> CutAnswer:
    """Plan a changed problem with as little moved as may be.

    Parameters
    ----------
    last
        The plan before the change.
    done
        Numbers of its sheets that are cut, from 0; they stay.
    task, patience, tell
        As for `cut`.

    Raises
    ------
    ProblemError
        When a cut sheet cannot stand in the problem.
    PlanDefectError
        As for `cut`.
    """
    tell("planning from the last plan")
    made = replan(task.problem, last, done, patience.stop(patience.work))
    cut = frozenset(n for n, origin in enumerate(made.origins) if origin in done)
    answer = _answer(task, made.solution, None, patience.ending, cut)
    return replace(answer, made=made)


def _answer(
    task: CutTask,
    solution: Solution,
    trade: Trade | None,
    ending: Ending,
    done: frozenset[int] = frozenset(),
) -> CutAnswer:
    left = not_done(solution, done)
    order = plan_cuts(task.problem, left, task.model.limits)
    wrong = breaches_of(task, solution, order, done)
    if wrong:
        msg = f"the cutting plan is wrong: {'; '.join(breach.says for breach in wrong)}"
        raise PlanDefectError(msg)
    work = work_of(task.problem, left, order, task.model)
    return CutAnswer(task, solution, order, work, trade, None, done, ending)


def not_done(solution: Solution, done: frozenset[int]) -> Solution:
    """What is still to be cut: sheets that are cut stand there whole, with no step for them."""
    if not done:
        return solution
    trees = tuple(
        replace(tree, root=Leaf(tree.root.rect, "waste")) if tree.sheet in done else tree
        for tree in solution.tree
    )
    placements = tuple(place for place in solution.placements if place.sheet not in done)
    return replace(solution, tree=trees, placements=placements)


def _fewest(problem: Problem, patience: Patience, tell: Tell) -> Solution:
    """The fewest sheets, in one search of counted work or in several that fill the time."""
    best: Solution | None = None
    for stop in _rounds(patience):
        found = solve(problem, stop, watch=lambda found: tell(_so_far(found)))
        best = found if best is None else _better(best, found)
        if best.status is Status.PROVED:
            break
    if best is None:
        msg = "there is always a first round"
        raise AssertionError(msg)
    return best


def _so_far(progress: Progress, counted: str = "sheets") -> str:
    count, bound = progress.cost, progress.bound
    what = "cost" if bound.measure == "price" else counted
    return f"{what} {count}, at least {bound.value} needed"


def _rounds(patience: Patience) -> Iterator[Stop]:
    """Ever longer searches, each as long as the time left seems to allow.

    Parts of the search look at nothing but the places they may try; so each may try about as many
    as it has time for.
    """
    if patience.seconds is None:
        yield patience.stop(patience.work)
        return
    nodes, took = _FIRST, 0.0
    while True:
        began = patience.spent
        yield patience.stop(nodes, _SHEETS)
        took = patience.spent - began
        left = patience.left(_SHEETS)
        if patience.asked() or left <= took:
            return
        nodes = max(2 * nodes, int(nodes * left / max(took, 0.001)))


def _better(one: Solution, other: Solution) -> Solution:
    """The better plan of two, with the higher bound."""
    best = min(one, other, key=lambda plan: (-_placed(plan), plan.cost))
    bound = max(one.bound, other.bound, key=lambda bound: bound.value)
    if Status.SHORT in (one.status, other.status):
        return best
    status = Status.PROVED if bound.value == best.cost else Status.BOUNDED
    return replace(best, bound=bound, status=status)


def _placed(plan: Solution) -> int:
    """Area of what is placed [unit squared]."""
    return sum(placed.rect.area for placed in plan.placements)


def _finish(task: CutTask, solution: Solution, patience: Patience) -> float:
    """How long it takes, where time is limited, to judge a plan and to finish it [s]."""
    if patience.seconds is None:
        return 0
    began = patience.spent
    plan_cuts(task.problem, solution, task.model.limits)
    return _ORDERS * (patience.spent - began)


def _eased(
    task: CutTask, solution: Solution, patience: Patience, finish: float, tell: Tell
) -> Solution:
    """The plan with less work, looked for once with counted work or for a share of the time."""
    count = len(solution.tree)
    tell(f"{count} sheet{'' if count == 1 else 's'}, looking for less work")
    if patience.seconds is None:
        stop = patience.stop(patience.work // _EASING)
        return ease(task.problem, solution, task.model, stop)
    idle, nodes, seed = 0, _FIRST, 0
    while idle < _IDLE and not patience.stop(nodes, _EASED, finish).is_asked():
        stop = patience.stop(nodes, _EASED, finish)
        eased = ease(task.problem, solution, task.model, stop, seed)
        idle = idle + 1 if eased is solution else 0
        solution, nodes, seed = eased, 2 * nodes, seed + 1
    return solution
