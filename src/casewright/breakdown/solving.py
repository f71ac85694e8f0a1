"""Pieces into a cutting problem, the problem into a plan that has passed the verifier."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from casewright.breakdown.desk import Desk
from casewright.breakdown.limits import work_model
from casewright.breakdown.matches import Ground, matches_of
from casewright.breakdown.pieces import Piece
from casewright.breakdown.units import WholeUnit, common_unit
from casewright.cutting.boards import solve_boards
from casewright.cutting.easing import ease
from casewright.cutting.engine import Stop, solve
from casewright.cutting.methods import Limits
from casewright.cutting.problem import Keep, PartDemand, Problem, StockItem, Trim
from casewright.cutting.rates import WorkModel
from casewright.cutting.solution import Solution
from casewright.cutting.steps import CutPlan, plan_cuts
from casewright.cutting.trade import Trade, weigh
from casewright.cutting.verifier import verify
from casewright.cutting.walker import walk
from casewright.cutting.work import Work, work_of
from casewright.dims import Dim, Given, Origin
from casewright.stock import Board, Sheet

__all__ = [
    "NEW_SHEET",
    "Draft",
    "Layout",
    "Offered",
    "PlanDefectError",
    "Sawn",
    "Settled",
    "Task",
    "confirm",
    "confirm_places",
    "draft",
    "ground_of",
    "lay_out",
    "on_hand",
    "settle",
]

_STAGES = 3


class PlanDefectError(RuntimeError):
    """A cutting plan that the verifier refuses: a defect of the program."""


@dataclass(frozen=True, slots=True)
class Offered:
    """Sheets or boards of one size that may be used up.

    Parameters
    ----------
    id
        Name in the problem.
    length, width
        Grain along the length.
    kept
        Whether it is an offcut: there is one, and it counts as far less than a new sheet.
    price
        Of one, in hundredths of some money; None: nobody has said.
    """

    id: str
    length: Dim
    width: Dim
    kept: bool = False
    price: int | None = None


def on_hand(desk: Desk, stock: str) -> Iterator[Offered]:
    """Offcuts of a sheet, leftovers of a board: what the record says is there."""
    for offcut in desk.room.offcuts:
        if offcut.stock == stock:
            origin = Origin("measured", "kept in the record")
            length, width = (
                desk.given(f"{offcut.path}.{name}", Given(size, origin))
                for name, size in (("length", offcut.length), ("width", offcut.width))
            )
            yield Offered(offcut.path, length, width, kept=True)


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
class Draft:
    """Pieces and stock as a task, not laid out yet.

    Parameters
    ----------
    unit
        What the problem counts in.
    offered
        Stock by the ids of the problem.
    """

    unit: WholeUnit
    task: Task
    offered: Mapping[str, Offered]


@dataclass(frozen=True, slots=True)
class Layout:
    """A problem with a solution from the cheapest stock that was found.

    Parameters
    ----------
    unit
        What the problem counts in.
    problem, solution
        In whole numbers.
    offered
        Stock by the ids of the problem.
    """

    unit: WholeUnit
    problem: Problem
    solution: Solution
    offered: Mapping[str, Offered]


@dataclass(frozen=True, slots=True)
class Sawn:
    """A layout with its work eased: the order of work, checked, and what more stock would save."""

    solution: Solution
    order: CutPlan
    work: Work
    trade: Trade | None


@dataclass(frozen=True, slots=True)
class Settled:
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
    sawn: Sawn

    def layout(self, draft: Draft) -> Layout:
        """What came of the draft that was chosen."""
        return Layout(draft.unit, draft.task.problem, self.solution, draft.offered)


def lay_out(
    desk: Desk,
    goods: Sheet | Board,
    offered: Sequence[Offered],
    pieces: Sequence[Piece],
    *,
    trim: Fraction = Fraction(0),
) -> Layout:
    """Lay pieces out on sheets or boards, their work not eased; as `draft`."""
    drafted = draft(desk, goods, offered, pieces, trim=trim)
    task = drafted.task
    return Layout(drafted.unit, task.problem, _laid_out(task), drafted.offered)


def draft(
    desk: Desk,
    goods: Sheet | Board,
    offered: Sequence[Offered],
    pieces: Sequence[Piece],
    *,
    trim: Fraction = Fraction(0),
    ends: Fraction = Fraction(0),
    lengths_only: bool = False,
) -> Draft:
    """Pieces to be laid out on sheets or boards.

    Parameters
    ----------
    desk
        The room, and when to be content with a plan.
    goods
        The stock, for what it weighs.
    offered
        At least one size of stock. Where sizes differ the cheapest are used, or the least length
        in all where they have no prices.
    trim
        Cut off each edge before [mm].
    ends
        Cut off each end of new boards before [mm].
    lengths_only
        Everything is of one width: a plan of crosscuts alone.
    """
    room = desk.room
    kerf = desk.kerf().value
    keeps = _keeps(desk, goods)
    unit = common_unit(_lengths(offered, pieces, (kerf, trim, ends, *keeps)), room.spec.unit)
    edge, end = unit.count(trim), unit.count(trim + ends)
    problem = Problem(
        unit=unit.name,
        kerf=unit.count(kerf),
        stages=None if lengths_only else _STAGES,
        stock=tuple(
            StockItem(
                item.id,
                unit.count(item.length.value),
                unit.count(item.width.value),
                count=1 if item.kept else None,
                price=price,
                trim=Trim(edge, edge, edge, edge) if item.kept else Trim(end, end, edge, edge),
            )
            for item, price in zip(offered, _prices(offered, unit), strict=True)
        ),
        parts=tuple(
            PartDemand(
                piece.id,
                unit.count(piece.length),
                unit.count(piece.width),
                rotate=piece.turns,
                group=piece.group or None,
            )
            for piece in pieces
        ),
        keep=(Keep(*(unit.count(size) for size in keeps)),),
        matches=matches_of(room, pieces, ground_of(offered, trim, kerf)),
    )
    model = work_model(room, unit, goods)
    stop, eases = desk.short if lengths_only else desk.stop, None
    if desk.eases and not lengths_only:
        eases = desk.short
    task = Task(problem, model, stop, eases, lengths_only)
    return Draft(unit, task, {item.id: item for item in offered})


def _keeps(desk: Desk, goods: Sheet | Board) -> tuple[Fraction, Fraction]:
    """Long and short side of the least leftover that is worth keeping [mm]."""
    style = desk.room.spec.style
    narrow = "offcut_board" if isinstance(goods, Board) else "offcut_short"
    return style["offcut_long"].value, style[narrow].value


def settle(tasks: Sequence[Task]) -> Settled:
    """Do the first of several tasks, or one that takes less stock.

    Its work is eased where it asks for it, its cuts are put in order, and both are checked. It
    hangs on the tasks alone, whoever does it.

    Raises
    ------
    PlanDefectError
        When the plan does not pass the verifier, or cannot be walked.
    """
    solutions = [_laid_out(task) for task in tasks]
    chosen = min(range(len(tasks)), key=lambda number: solutions[number].cost)
    solution, task = solutions[chosen], tasks[chosen]
    return Settled(chosen, solution, _sawn(task.problem, solution, task.model, task.eases))


def ground_of(offered: Sequence[Offered], trim: Fraction, kerf: Fraction) -> Ground:
    """What of a new sheet parts may lie on, and the kerf [mm]."""
    new = next(item for item in offered if not item.kept)
    return Ground(new.length.value - 2 * trim, new.width.value - 2 * trim, kerf)


NEW_SHEET = 1000
"""Price of a new sheet where offcuts are offered beside it."""


def _prices(offered: Sequence[Offered], unit: WholeUnit) -> list[int]:
    """Of boards the price or length; of sheets one each; of an offcut a fifth of its area's.

    Where offcuts are offered the largest new sheet or board counts as `NEW_SHEET`, unless it has
    a price.
    """
    if any(item.price for item in offered):
        rate = min(item.price / _area(item) for item in offered if item.price)
        return [item.price or max(1, round(_area(item) * rate / 5)) for item in offered]
    if any(item.kept for item in offered):
        whole = max(_area(item) for item in offered if not item.kept)
        shares = ((NEW_SHEET * _area(item) / whole, item.kept) for item in offered)
        return [max(1, round(share / 5 if kept else share)) for share, kept in shares]
    several = len({item.length.value for item in offered}) > 1
    return [unit.count(item.length.value) if several else 1 for item in offered]


def _area(item: Offered) -> Fraction:
    return item.length.value * item.width.value


def _lengths(
    offered: Iterable[Offered], pieces: Iterable[Piece], others: Iterable[Fraction]
) -> Iterable[Fraction]:
    yield from others
    for item in offered:
        yield from (item.length.value, item.width.value)
    for piece in pieces:
        yield from (piece.length, piece.width)


def _laid_out(task: Task) -> Solution:
    return _solved(task.problem, task.stop, task.lengths_only)


@lru_cache(maxsize=512)
def _solved(problem: Problem, stop: Stop, lengths_only: bool) -> Solution:
    """The same problem is solved once."""
    return (solve_boards if lengths_only else solve)(problem, stop)


@lru_cache(maxsize=512)
def _sawn(problem: Problem, solution: Solution, model: WorkModel, stop: Stop | None) -> Sawn:
    trade: Trade | None = None
    if stop is not None:
        solution = ease(problem, solution, model, stop)
        trade = weigh(problem, solution, model, stop)
        solution = trade.fewest.solution
    order = plan_cuts(problem, solution, model.limits)
    confirm(problem, solution, order, model.limits)
    return Sawn(solution, order, work_of(problem, solution, order, model), trade)


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
