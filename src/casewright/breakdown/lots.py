"""Pieces of a stock before they are laid out, and the plans that come of them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from casewright.breakdown.desk import Desk
from casewright.breakdown.each import Each, in_turn
from casewright.breakdown.just_fit import just_fits, unmeasured_saws
from casewright.breakdown.pieces import Piece
from casewright.breakdown.plan import PlanKind, StockPlan
from casewright.breakdown.solving import Draft
from casewright.cutting.settling import Task, TaskSolution, settle
from casewright.stock import Sheet

__all__ = ["StockDraft", "plan_lots", "settle_all"]

Tasks = tuple[Task, ...]


@dataclass(frozen=True, slots=True)
class StockDraft:
    """The pieces of a stock, not laid out yet.

    Parameters
    ----------
    stock
        Its key.
    pieces, tests
        What is cut from it, and test pieces beside them that offcuts may give as well.
    drafts
        With those test pieces; where there are some, without them too.
    """

    stock: str
    kind: PlanKind
    pieces: tuple[Piece, ...]
    drafts: tuple[Draft, ...]
    tests: tuple[Piece, ...] = ()

    @property
    def tasks(self) -> Tasks:
        """What is to be done: the first, or one that takes less stock."""
        return tuple(each.task for each in self.drafts)

    def plan(self, desk: Desk, settled: TaskSolution) -> StockPlan:
        """What came of it. Test pieces that would cost another sheet are left to the offcuts."""
        layout = self.drafts[settled.chosen].layout(settled.solution)
        laid = self.pieces if settled.chosen else (*self.pieces, *self.tests)
        path, sawn = f"plan.{self.stock}", settled.sawn
        plan = StockPlan.of(layout, sawn, path, self.stock, self.kind, laid)
        spec = desk.room.spec
        sheet, slack = spec.stock[self.stock], spec.style["sheet_slack"].value
        if not isinstance(sheet, Sheet):
            return plan
        is_known = not unmeasured_saws(spec.shop)
        fits = just_fits(layout, sawn.solution, sheet, slack, kerf_is_known=is_known)
        left = self.tests if settled.chosen else ()
        return replace(plan, just_fit=tuple(fits), from_offcuts=left)


def plan_lots(
    lots: Sequence[tuple[Desk, Iterable[StockDraft]]], each: Each = in_turn
) -> list[list[StockPlan]]:
    """The plans of several lots of stock, each on a desk of its own.

    Parameters
    ----------
    each
        How what is to be done is done: one after the other, or in several processes.
    """
    drafts = [(desk, tuple(drafted)) for desk, drafted in lots]
    done = settle_all((one.tasks for _, drafted in drafts for one in drafted), each)
    return [[one.plan(desk, done[one.tasks]) for one in drafted] for desk, drafted in drafts]


def settle_all(tasks: Iterable[Tasks], each: Each) -> dict[Tasks, TaskSolution]:
    """What comes of several tasks, each done once."""
    asked = list(dict.fromkeys(tasks))
    return dict(zip(asked, each(settle, asked), strict=True))
