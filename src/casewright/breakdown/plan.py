"""What comes back from breaking a job down: a plan for each stock, checked, and who waits."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.breakdown.numbers import NO_NUMBERS, PlanNumbers
from casewright.breakdown.pieces import Piece
from casewright.breakdown.solving import NEW_SHEET, Layout, Offered
from casewright.breakdown.units import WholeUnit
from casewright.cutting.problem import Problem
from casewright.cutting.settling import WorkPlan
from casewright.cutting.solution import Placement, SheetTree, Solution
from casewright.cutting.steps import CutPlan
from casewright.cutting.trade import Trade
from casewright.cutting.work import Work
from casewright.dims import Chain
from casewright.findings import Finding, Question

__all__ = ["Breakdown", "JustFit", "Milling", "PlanKind", "StockPlan", "Waiting"]

PlanKind = Literal["sheets", "boards", "strips"]

_QUARTERS = ("a quarter", "half", "three quarters")


@dataclass(frozen=True, slots=True)
class JustFit:
    """A sheet on which the parts leave too little to spare for a sheet under its label.

    Parameters
    ----------
    sheet
        Number of the sheet, from 0.
    side
        length or width of the sheet.
    spare
        Left over along it [mm].
    parts
        Pieces that lie on it.
    """

    sheet: int
    side: Literal["length", "width"]
    spare: Fraction
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Milling:
    """How strips come out of thicker boards.

    Parameters
    ----------
    source
        Key of the board they are milled from.
    board_thickness, thickness
        Of the board and of the finished strip [mm].
    width
        Of the strips [mm].
    yields
        Strips from one rip of the board by resawing [-].
    words
        What is done, for the card.
    """

    source: str
    board_thickness: Fraction
    thickness: Fraction
    width: Fraction
    yields: int
    words: str


@dataclass(frozen=True, slots=True)
class StockPlan:
    """How the pieces of one stock are cut.

    Parameters
    ----------
    path
        Under which its numbers stand on the chain: `plan.ply18`.
    stock
        Key of the stock.
    kind
        sheets, boards, or strips: crosscuts of strips that were milled before.
    unit
        What the problem counts in.
    problem, solution
        In whole numbers; the solution has passed the verifier.
    order
        The cuts in the order of a careful person, walked through; `saw_steps` tells them in
        lengths and parts.
    work, trade
        What the order asks of the person at the saw, and what more stock would save of it.
    offered
        Stock by the ids of the problem.
    pieces
        By the ids of the problem.
    just_fit
        Sheets that wait for a reading of their size and of the kerf.
    from_offcuts
        Test pieces that take no room on the plan: they come from what is left over.
    milling
        For strips.
    numbers
        Sizes and settings on the chain, for the plans that are printed.
    """

    path: str
    stock: str
    kind: PlanKind
    unit: WholeUnit
    problem: Problem
    solution: Solution
    order: CutPlan
    work: Work
    trade: Trade | None
    offered: Mapping[str, Offered]
    pieces: Mapping[str, Piece]
    just_fit: tuple[JustFit, ...] = ()
    from_offcuts: tuple[Piece, ...] = ()
    milling: Milling | None = None
    numbers: PlanNumbers = NO_NUMBERS

    @classmethod
    def of(
        cls, layout: Layout, sawn: WorkPlan, path: str, stock: str, kind: PlanKind,
        pieces: Iterable[Piece],
    ) -> StockPlan:  # fmt: skip
        """The plan of pieces as they were laid out and put in order."""
        return cls(
            path, stock, kind, layout.unit, layout.problem, sawn.solution, sawn.order, sawn.work,
            sawn.trade, layout.offered, {piece.id: piece for piece in pieces},
        )  # fmt: skip

    @property
    def count(self) -> int:
        """Sheets, boards or strips used, offcuts on hand apart [-]."""
        return sum(not self.offered[tree.stock].kept for tree in self.solution.tree)

    @property
    def offcuts(self) -> tuple[str, ...]:
        """Offcuts on hand that are used."""
        return tuple(t.stock for t in self.solution.tree if self.offered[t.stock].kept)

    @property
    def counts(self) -> Mapping[str, int]:
        """Sheets, boards or strips used, by id of the problem's stock."""
        found: dict[str, int] = {}
        for tree in self.solution.tree:
            found[tree.stock] = found.get(tree.stock, 0) + 1
        return found

    @property
    def verdict(self) -> str:
        """What is known of the plan, in words: of boards to a quarter of the dearest."""
        solution = self.solution
        kept = any(item.kept for item in self.offered.values())
        if kept and solution.gap and self.kind == "sheets":
            sheets = solution.gap // NEW_SHEET
            most = f"{sheets} sheet{'s' if sheets > 1 else ''}" if sheets else "no whole sheet"
            return f"at most {most} more than needed" if sheets else f"{most} more than needed"
        if solution.bound.measure == "sheets" or not solution.gap:
            return solution.verdict
        whole = max(item.price for item in self.problem.stock)
        boards, quarters = divmod(-(-4 * solution.gap // whole), 4)
        words = [] if not boards else [f"{boards} board{'s' if boards > 1 else ''}"]
        words += [f"{_QUARTERS[quarters - 1]} of a board"] if quarters else []
        return f"at most {' and '.join(words)} more than needed"

    @property
    def waiting_sheets(self) -> tuple[int, ...]:
        """Sheets not to be cut before their size and the kerf are measured."""
        return tuple(sorted({fit.sheet for fit in self.just_fit}))

    def on_sheet(self, tree: SheetTree) -> Iterator[tuple[Piece, Placement]]:
        """The pieces on one sheet, with their places."""
        for placement in self.solution.placements:
            if placement.sheet == tree.sheet:
                yield self.pieces[placement.part], placement

    def length(self, count: int) -> Fraction:
        """A whole number of the problem as a length [mm]."""
        return self.unit.length(count)


@dataclass(frozen=True, slots=True)
class Waiting:
    """A part kept off the cut sheets.

    Parameters
    ----------
    part
        Its path.
    questions
        Paths of what is asked.
    """

    part: str
    questions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Breakdown:
    """A job broken down into cuts.

    Parameters
    ----------
    plans
        What can be cut now, stock by stock.
    wanted
        The same with every part that waits: what must be bought for. The same object as `plans`
        when nothing waits.
    waiting
        Parts kept off `plans`, with what they wait for.
    questions
        What cutting brings up.
    findings
        Pieces that no stock is large enough for.
    chain
        The numbers of the room and of `plans`.
    """

    plans: tuple[StockPlan, ...]
    wanted: tuple[StockPlan, ...]
    chain: Chain
    waiting: tuple[Waiting, ...] = ()
    questions: tuple[Question, ...] = ()
    findings: tuple[Finding, ...] = field(default=())
