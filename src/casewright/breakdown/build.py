"""`break_down(room)`: every piece to cut, stock by stock, as verified plans."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from casewright.breakdown.boards import draft_boards, lips
from casewright.breakdown.desk import USUAL_STOP, Desk
from casewright.breakdown.each import Each, in_turn
from casewright.breakdown.just_fit import measure_first
from casewright.breakdown.lots import StockDraft, plan_lots
from casewright.breakdown.matches import cut_apart, grain_breaks, left_out
from casewright.breakdown.numbers import plan_numbers
from casewright.breakdown.pieces import Piece
from casewright.breakdown.plan import Breakdown, StockPlan, Waiting
from casewright.breakdown.sheets import draft_sheets
from casewright.breakdown.solving import ground_of
from casewright.breakdown.strips import plan_strips, strip_blanks
from casewright.casework.parts import Part
from casewright.cutting.engine import Stop
from casewright.cutting.solution import Reason
from casewright.dims import Dim, Measure, joined, shop_text, tell
from casewright.findings import Finding, Question, Reckoning, Severity
from casewright.room.model import Room
from casewright.stock import THINNEST_SOLD, Board, milling_source

__all__ = ["break_down"]


def break_down(room: Room, *, stop: Stop | None = None, each: Each = in_turn) -> Breakdown:
    """Turn the parts of a room into cutting plans.

    Parts that wait for an answer are kept off the plans, and counted in what must be bought;
    parts that are cut already are in neither. A pure function of the room.

    Parameters
    ----------
    stop
        When to be content with a plan; None: after a second or so for a large stock.
    each
        How several stocks are planned: it changes nothing but the time.

    Raises
    ------
    PlanDefectError
        When a plan does not pass the verifier: a defect of the program.
    """
    parts = tuple(part for part in room.parts if part.state == "planned")
    waiting = tuple(Waiting(part.path, part.waits_for) for part in parts if part.waits_for)
    desk = Desk(room, stop or USUAL_STOP)
    lots = [(desk, tuple(part for part in parts if not part.waits_for))]
    if waiting:
        lots.append((replace(desk, eases=False), parts))
    sheets = [draft_sheets(*lot) for lot in lots]
    lots_sorted = [_Sorted.of(*lot, own) for lot, own in zip(lots, sheets, strict=True)]
    desks = (its for its, _ in lots)
    made = plan_lots([*zip(desks, (own.drafts for own in lots_sorted), strict=True)], each)
    now, *others = (own.plans(plans) for own, plans in zip(lots_sorted, made, strict=True))
    wanted = others[0] if others else now
    plans = tuple(
        replace(plan, numbers=plan_numbers(desk.chain, desk.kerf(), plan)) for plan in now
    )
    return Breakdown(
        plans=plans,
        wanted=_bought(wanted, plans) if waiting else plans,
        chain=desk.chain,
        waiting=waiting,
        questions=(*measure_first(desk, plans), *_boards_wanted(lots_sorted[-1].homeless)),
        findings=(
            *_too_large(desk, wanted),
            *left_out(room),
            *cut_apart(room),
            *_breaks(desk, wanted),
        ),
    )


def _bought(wanted: Sequence[StockPlan], plans: Sequence[StockPlan]) -> tuple[StockPlan, ...]:
    """A stock none of whose parts waits is bought for the plan that it is cut by."""
    cut = {(plan.path, plan.problem): plan for plan in plans}
    return tuple(cut.get((plan.path, plan.problem), plan) for plan in wanted)


@dataclass(slots=True)
class _Sorted:
    """A set of parts by their stocks, and those for which the job has no board.

    Strips are planned already: boards follow from them.
    """

    sheets: Sequence[StockDraft] = ()
    strips: Sequence[StockPlan] = ()
    boards: Sequence[StockDraft] = ()
    homeless: dict[str, list[str]] = field(default_factory=dict)

    @property
    def drafts(self) -> tuple[StockDraft, ...]:
        """What is still to be planned."""
        return (*self.sheets, *self.boards)

    def plans(self, made: Sequence[StockPlan]) -> tuple[StockPlan, ...]:
        """All plans, when those of the drafts are made."""
        count = len(self.sheets)
        return (*made[:count], *self.strips, *made[count:])

    @classmethod
    def of(cls, desk: Desk, parts: Sequence[Part], sheets: Sequence[StockDraft]) -> _Sorted:
        """Sheets, then strips, then boards that strips and lips come from."""
        own = cls(sheets)
        by_stock: dict[str, list[Part]] = {}
        for part in parts:
            by_stock.setdefault(part.stock, []).append(part)
        room, stock = desk.room, desk.room.spec.stock
        own.strips = tuple(own._strips(desk, by_stock))
        others: dict[str, list[Piece]] = {}
        for plan in own.strips:
            if plan.milling is not None:
                others.setdefault(plan.milling.source, []).extend(strip_blanks(room, (plan,)))
        for board, piece in lips(desk, parts):
            if board is None:
                own.homeless.setdefault("lips", []).extend(piece.serves)
            else:
                others.setdefault(board.key, []).append(piece)
        own.boards = [
            draft_boards(desk, goods, _solid(goods, by_stock), others.get(key, ()))
            for key, goods in stock.items()
            if isinstance(goods, Board) and (_solid(goods, by_stock) or key in others)
        ]
        return own

    def _strips(self, desk: Desk, by_stock: dict[str, list[Part]]) -> Iterator[StockPlan]:
        room = desk.room
        waste = room.spec.style["strip_waste"].value
        for key, goods in room.spec.stock.items():
            if key in by_stock and isinstance(goods, Board) and _is_thin(goods):
                source = milling_source(goods, room.spec.stock, waste)
                if source is None:
                    paths = [part.path for part in by_stock[key]]
                    self.homeless.setdefault(goods.title, []).extend(paths)
                else:
                    yield from plan_strips(desk, goods, source, by_stock[key])


def _is_thin(board: Board) -> bool:
    return board.thickness.value < THINNEST_SOLD


def _solid(board: Board, by_stock: dict[str, list[Part]]) -> list[Part]:
    return [] if _is_thin(board) else by_stock.get(board.key, [])


def _boards_wanted(homeless: dict[str, list[str]]) -> Iterator[Question]:
    for name, paths in homeless.items():
        yield Question(
            path=f"stock.board_for_{name.replace(' ', '_')}",
            needs=f"a board in the job's stock that is thick enough for {name}",
            because="thin strips and lips are ripped and resawn out of thicker boards",
            waiting=tuple(dict.fromkeys(paths)),
            how='add a [stock.<name>] with kind = "board"',
        )


_REASONS = {
    Reason.TOO_LARGE: "larger than any",
    Reason.AGAINST_GRAIN: "fits only with its grain across",
    Reason.DEFECTS: "fits only over a defect of",
    Reason.MATCHED: "with its neighbours, through which its grain is to run, larger than any",
    Reason.NO_STOCK: "more than there are of",
}


def _breaks(desk: Desk, plans: Sequence[StockPlan]) -> Iterator[Finding]:
    trim, kerf = desk.room.spec.style["sheet_trim"].value, desk.kerf().value
    for plan in plans:
        if plan.kind == "sheets":
            ground = ground_of(tuple(plan.offered.values()), trim, kerf)
            title = desk.room.spec.stock[plan.stock].title
            yield from grain_breaks(desk.room, tuple(plan.pieces.values()), ground, title)


def _too_large(desk: Desk, plans: Sequence[StockPlan]) -> Iterator[Finding]:
    for plan in plans:
        title = desk.room.spec.stock[plan.stock].title
        for entry in plan.solution.unplaced:
            piece = plan.pieces[entry.part]
            own = Reckoning("cut", piece.id, desk.room.spec.unit, desk.chain.nodes, "plan")
            sizes = joined(" x ", (_said(own, piece.long), _said(own, piece.wide)))
            yield Finding(
                rule="larger than stock",
                severity=Severity.STOP,
                path=piece.serves[0] if piece.serves else piece.id,
                says=tell(
                    "the {}, {}, is {} {}", piece.title, sizes, _REASONS[entry.reason], title
                ),
                measured=sizes,
                source="common practice",
                remedies=(
                    tell("a sheet or board that leaves {} and a kerf free", sizes),
                    "a smaller case",
                    "a joint in the part",
                ),
                numbers=own.numbers,
            )


def _said(own: Reckoning, dim: Dim) -> Measure:
    return own.said(dim, shop_text(dim.value, own.unit, with_unit=True), "size")
