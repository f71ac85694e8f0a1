"""Pieces into a cutting problem."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casewright.breakdown.desk import Desk
from casewright.breakdown.limits import work_model
from casewright.breakdown.matches import Ground, matches_of
from casewright.breakdown.pieces import Piece
from casewright.breakdown.units import WholeUnit, common_unit
from casewright.cutting.problem import Keep, PartDemand, Problem, StockItem, Trim
from casewright.cutting.settling import Task, laid_out
from casewright.cutting.solution import Solution
from casewright.dims import Dim, Given, Origin
from casewright.stock import Board, Sheet

__all__ = [
    "NEW_SHEET",
    "Draft",
    "Layout",
    "Offered",
    "draft",
    "ground_of",
    "lay_out",
    "on_hand",
]

_STAGES = 3


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

    def layout(self, solution: Solution) -> Layout:
        """What came of its task."""
        return Layout(self.unit, self.task.problem, solution, self.offered)


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
    return drafted.layout(laid_out(drafted.task))


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
