"""What `verify` prints for people."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from casewright.cutting.claim_verifier import least_sheets
from casewright.cutting.violations import Violation
from casewright.dims.count_text import counted
from casewright.job.cut_file import CutTask
from casewright.job.plan_file import PlanFile, is_of

__all__ = ["verdict_lines"]

_MOST = 200


def verdict_lines(task: CutTask, plan: PlanFile, breaches: Sequence[Violation]) -> Iterator[str]:
    """Sound, and what that covers; or each breach."""
    solution = plan.solution
    if not breaches:
        order = ", every cut made in thought in its order" if plan.order else ""
        yield (
            f"sound: {counted(len(solution.placements), 'piece')} on "
            f"{counted(len(solution.tree), 'sheet')}{order}"
        )
        claim, measure = solution.bound, solution.bound.measure
        known = measure == "sheets" and claim.value <= least_sheets(task.problem, solution)
        yield (
            f"its claim that no plan needs less than {claim.value} ({measure}, {claim.scope}) "
            + ("follows from the area of the parts" if known else "was not proved anew")
        )
        for entry in solution.unplaced:
            yield f"left over: {entry.count} of {entry.part}, {entry.reason.value}"
        return
    if not is_of(task, plan):
        yield "the plan was made for another problem, or before this one was changed"
    for breach in breaches[:_MOST]:
        yield _breach_line(breach)
    if len(breaches) > _MOST:
        yield f"and {len(breaches) - _MOST} more"


def _breach_line(breach: Violation) -> str:
    place = [
        *([f"sheet {breach.sheet + 1}"] if breach.sheet is not None else []),
        *([f'part "{breach.part}"'] if breach.part else []),
    ]
    return f"{', '.join(place) or 'plan'}: {breach.breach.value}; {breach.says}"
