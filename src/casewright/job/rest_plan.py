"""The rest of a job planned anew while sheets of an earlier plan lie on the bench.

Sheets that were begun are cut to their end by the plan that they were begun by. What was spoiled
on them, and what lies on sheets that nobody has begun, is laid out anew: on offcuts that are
there, and on whole sheets, which go on being counted where the earlier plans left off.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any, TypeVar

from casewright.breakdown import Breakdown, Each, break_down, in_turn
from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.cutting.problem import Problem
from casewright.cutting.settling import TaskSolution
from casewright.cutting.solution import Solution
from casewright.cutting.steps import CutPlan, Piece
from casewright.job.learning import with_learned
from casewright.job.load import LoadedJob
from casewright.job.recorded import Recorded, marked, on_hand
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["Rest", "first_sheet", "plan_rest", "renumbered", "rest_of", "room_of"]

_Thing = TypeVar("_Thing")
_Made = TypeVar("_Made")


@dataclass(frozen=True, slots=True)
class Rest:
    """What is planned anew beside plans that are being cut by.

    Parameters
    ----------
    lost
        Parts that were spoiled: they are made again, with their lips.
    held
        Parts still to be cut that lie on sheets begun by the earlier plans.
    after
        Sheets of the earlier plans, by id of the problem's stock [-].
    dropped
        Sheets that are not cut any more as the earlier plans have them [-].
    """

    lost: frozenset[str]
    held: frozenset[str]
    after: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    dropped: int = 0


def room_of(loaded: LoadedJob, recorded: Recorded) -> Room:
    """A job built with what its record says; not proved."""
    spec = with_learned(loaded.spec, recorded.learned)
    room = marked(build(spec, recorded.facts), recorded.marks)
    return replace(room, offcuts=on_hand(recorded.offcuts))


def plan_rest(
    loaded: LoadedJob, recorded: Recorded, rests: Sequence[Rest]
) -> tuple[int, Breakdown]:
    """Plan the rest of a job anew, with as few sheets more as can be and then as little changed.

    Parameters
    ----------
    rests
        What may be planned anew, the least first.

    Returns
    -------
    Number of the one that was chosen, from 0, and its plan.

    Raises
    ------
    PlanDefectError
        As `break_down` does.
    """
    room = room_of(loaded, recorded)
    best: tuple[int, int, Breakdown] | None = None
    for number, rest in enumerate(rests):
        made = rest_of(room, rest)
        more = sum(plan.count for plan in made.plans if plan.kind == "sheets") - rest.dropped
        if best is None or more < best[0]:
            best = more, number, made
        if best[0] <= 0:
            break
    if best is None:
        msg = "something must be planned"
        raise ValueError(msg)
    return best[1:]


def rest_of(room: Room, rest: Rest, each: Each = in_turn) -> Breakdown:
    """`break_down` of what is planned anew, its sheets numbered after the earlier ones.

    Parameters
    ----------
    each
        As for `break_down`.
    """

    def numbered(work: Callable[[_Thing], _Made], things: Sequence[_Thing]) -> list[_Made]:
        made: list[Any] = []
        given: Sequence[Any] = things
        settled: Sequence[Any] = each(work, things)
        for tasks, own in zip(given, settled, strict=True):
            made.append(_after(own, tasks[own.chosen].problem, rest))
        return made

    return break_down(_left(room, rest), each=numbered)


def _after(settled: TaskSolution, problem: Problem, rest: Rest) -> TaskSolution:
    by = first_sheet(problem, rest)
    solution, order = renumbered(settled.sawn.solution, settled.sawn.order, by)
    return replace(settled, sawn=replace(settled.sawn, solution=solution, order=order))


def first_sheet(problem: Problem, rest: Rest) -> int:
    """Sheets of a stock in the earlier plans: the number of the first one planned anew, from 0."""
    return max((rest.after.get(item.id, 0) for item in problem.stock), default=0)


def renumbered(solution: Solution, order: CutPlan, by: int) -> tuple[Solution, CutPlan]:
    """A plan whose sheets bear other numbers, and the pieces of them names that follow.

    Parameters
    ----------
    by
        Added to each [-].
    """
    if not by:
        return solution, order

    def named(piece: Piece) -> Piece:
        sheet, dot, number = piece.name.partition(".")
        return replace(piece, name=f"{int(sheet) + by}{dot}{number}")

    steps = tuple(
        replace(
            step, sheet=step.sheet + by, piece=named(step.piece),
            leaves=tuple(map(named, step.leaves)),
        )
        for step in order.steps
    )  # fmt: skip
    sheets = tuple(replace(sheet, piece=named(sheet.piece)) for sheet in order.sheets)
    return (
        replace(
            solution,
            placements=tuple(replace(p, sheet=p.sheet + by) for p in solution.placements),
            tree=tuple(replace(tree, sheet=tree.sheet + by) for tree in solution.tree),
        ),
        replace(order, sheets=sheets, steps=steps),
    )


def _left(room: Room, rest: Rest) -> Room:
    """A room in which nothing but the rest is to be cut; lips of what is not lost are there."""

    def left(part: Part) -> Part:
        if part.path in rest.held:
            return replace(part, state="cut")
        return part if part.path in rest.lost else replace(part, edges=())

    cases: dict[str, Case] = {
        case.key: replace(case, parts=tuple(map(left, case.parts))) for case in room.cases
    }
    runs = tuple(run.with_parts(left).with_cases(cases) for run in room.runs)
    return replace(room, cases=tuple(cases.values()), runs=runs)
