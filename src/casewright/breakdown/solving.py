"""Pieces into a cutting problem, the problem into a plan that has passed the verifier."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from casewright.breakdown.desk import Desk
from casewright.breakdown.limits import shop_limits
from casewright.breakdown.pieces import Piece
from casewright.breakdown.units import WholeUnit, common_unit
from casewright.cutting.boards import solve_boards
from casewright.cutting.engine import Stop, solve
from casewright.cutting.methods import Limits
from casewright.cutting.problem import Keep, PartDemand, Problem, StockItem, Trim
from casewright.cutting.solution import Solution
from casewright.cutting.steps import CutPlan, plan_cuts
from casewright.cutting.verifier import verify
from casewright.cutting.walker import walk
from casewright.dims import Dim
from casewright.room.model import Room
from casewright.stock import Board, Sheet

__all__ = ["Offered", "PlanDefectError", "Solved", "confirm", "solve_pieces"]

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
    """

    id: str
    length: Dim
    width: Dim


@dataclass(frozen=True, slots=True)
class Solved:
    """A problem with its solution and the order of work, both checked, their unit and stock."""

    unit: WholeUnit
    problem: Problem
    solution: Solution
    work: CutPlan
    offered: Mapping[str, Offered]


def _face_weight(room: Room, goods: Sheet | Board) -> Fraction:
    """Weight of a stock for each unit of its face, by the thickness known now [kg/mm2]."""
    node = room.chain.nodes.get(f"stock.{goods.key}.thickness")
    thickness = node.value if node else goods.thickness.value
    return goods.density * thickness / 1_000_000_000


def solve_pieces(
    desk: Desk,
    goods: Sheet | Board,
    offered: Sequence[Offered],
    pieces: Sequence[Piece],
    *,
    trim: Fraction = Fraction(0),
    lengths_only: bool = False,
) -> Solved:
    """Lay pieces out on sheets or boards.

    Parameters
    ----------
    desk
        The room, and when to be content with a plan.
    goods
        The stock, for what it weighs.
    offered
        At least one size of stock. Where sizes differ, the least length in all is used.
    trim
        Cut off each edge before [mm].
    lengths_only
        Everything is of one width: a plan of crosscuts alone.

    Raises
    ------
    PlanDefectError
        When the plan does not pass the verifier.
    """
    room = desk.room
    kerf = desk.kerf().value
    style = room.spec.style
    keeps = (style["offcut_long"].value, style["offcut_short"].value)
    unit = common_unit(_lengths(offered, pieces, (kerf, trim, *keeps)), room.spec.unit)
    edge = unit.count(trim)
    several = len({item.length.value for item in offered}) > 1
    problem = Problem(
        unit=unit.name,
        kerf=unit.count(kerf),
        stages=None if lengths_only else _STAGES,
        stock=tuple(
            StockItem(
                item.id,
                unit.count(item.length.value),
                unit.count(item.width.value),
                price=unit.count(item.length.value) if several else 1,
                trim=Trim(edge, edge, edge, edge),
            )
            for item in offered
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
    )
    narrow = isinstance(goods, Board)
    limits = shop_limits(room, unit, _face_weight(room, goods), narrow=narrow)
    solution, work = _sawn(problem, desk.stop, limits, lengths_only)
    return Solved(unit, problem, solution, work, {item.id: item for item in offered})


def _lengths(
    offered: Iterable[Offered], pieces: Iterable[Piece], others: Iterable[Fraction]
) -> Iterable[Fraction]:
    yield from others
    for item in offered:
        yield from (item.length.value, item.width.value)
    for piece in pieces:
        yield from (piece.length, piece.width)


@lru_cache(maxsize=512)
def _sawn(
    problem: Problem,
    stop: Stop,
    limits: Limits,
    lengths_only: bool,
) -> tuple[Solution, CutPlan]:
    """Plan and order of work of a problem; the same problem is solved once."""
    solution = (solve_boards if lengths_only else solve)(problem, stop)
    work = plan_cuts(problem, solution, limits)
    confirm(problem, solution, work, limits)
    return solution, work


def confirm(problem: Problem, solution: Solution, work: CutPlan, limits: Limits) -> None:
    """Check a plan with the verifier, and its order of work by making every cut in thought.

    Raises
    ------
    PlanDefectError
        When either is wrong: a defect of the program.
    """
    wrong = [violation.says for violation in verify(problem, solution)]
    walked = walk(problem, work, limits)
    wrong += [f"step {slip.step}: {slip.slip.value}, {slip.says}" for slip in walked.missteps]
    unplaced = {entry.part: entry.count for entry in solution.unplaced}
    wrong += [
        f"{part.id} is not made"
        for part in problem.parts
        if walked.made.get(part.id, 0) != part.count - unplaced.get(part.id, 0)
    ]
    if wrong:
        msg = f"the cutting plan is wrong: {'; '.join(wrong)}"
        raise PlanDefectError(msg)
