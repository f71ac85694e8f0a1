"""Plans for sheet goods."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from casewright.breakdown.desk import Desk
from casewright.breakdown.each import Each, in_turn
from casewright.breakdown.just_fit import just_fits, unmeasured_saws
from casewright.breakdown.pieces import Piece, part_piece
from casewright.breakdown.plan import StockPlan
from casewright.breakdown.set_ups import test_pieces
from casewright.breakdown.solving import Draft, Offered, Settled, Task, draft, on_hand, settle
from casewright.casework.parts import Part
from casewright.stock import Sheet

__all__ = ["plan_lots", "plan_sheets"]


@dataclass(frozen=True, slots=True)
class _SheetDraft:
    """The pieces of a stock, not laid out yet.

    Parameters
    ----------
    pieces, tests
        Parts, and test pieces beside them.
    drafts
        With the test pieces; where there are some, without them too.
    """

    sheet: Sheet
    pieces: tuple[Piece, ...]
    tests: tuple[Piece, ...]
    drafts: tuple[Draft, ...]

    @property
    def tasks(self) -> tuple[Task, ...]:
        """What is to be done: the first, or one that takes fewer sheets."""
        return tuple(each.task for each in self.drafts)

    def plan(self, desk: Desk, settled: Settled) -> StockPlan:
        """What came of it. Test pieces that would cost another sheet are left to the offcuts."""
        sheet, spec = self.sheet, desk.room.spec
        slack, saws = spec.style["sheet_slack"].value, unmeasured_saws(spec.shop)
        layout, sawn = settled.layout(self.drafts[settled.chosen]), settled.sawn
        left = self.tests if settled.chosen else ()
        laid = self.pieces if settled.chosen else (*self.pieces, *self.tests)
        return replace(
            StockPlan.of(layout, sawn, f"plan.{sheet.key}", sheet.key, "sheets", laid),
            just_fit=tuple(just_fits(layout, sawn.solution, sheet, slack, kerf_is_known=not saws)),
            from_offcuts=left,
        )


def plan_sheets(desk: Desk, parts: Iterable[Part]) -> list[StockPlan]:
    """Lay parts out on the sheets of their stocks, and test pieces beside them."""
    (plans,) = plan_lots([(desk, parts)])
    return plans


def plan_lots(
    lots: Sequence[tuple[Desk, Iterable[Part]]], each: Each = in_turn
) -> list[list[StockPlan]]:
    """`plan_sheets` for several lots of parts, each on a desk of its own.

    Parameters
    ----------
    each
        How what is to be done is done: one after the other, or in several processes.
    """
    drafts = [(desk, drafted) for desk, parts in lots for drafted in _drafts(desk, parts)]
    settled = each(settle, [drafted.tasks for _, drafted in drafts])
    made = [(desk, d.plan(desk, done)) for (desk, d), done in zip(drafts, settled, strict=True)]
    return [[plan for its, plan in made if its is desk] for desk, _ in lots]


def _drafts(desk: Desk, parts: Iterable[Part]) -> list[_SheetDraft]:
    """What is to be laid out, stock by stock."""
    by_stock: dict[str, list[Part]] = {}
    for part in parts:
        by_stock.setdefault(part.stock, []).append(part)
    return [
        _drafted(desk, goods, by_stock[key])
        for key, goods in desk.room.spec.stock.items()
        if isinstance(goods, Sheet) and key in by_stock
    ]


def _drafted(desk: Desk, sheet: Sheet, parts: Sequence[Part]) -> _SheetDraft:
    style = desk.room.spec.style
    pieces = tuple(part_piece(part) for part in parts)
    tests = test_pieces(
        sheet.key, parts, length=desk.style("test_piece_length"),
        width=desk.style("test_piece_width"), turns=True, unit=desk.room.spec.unit,
    )  # fmt: skip
    offered = (
        Offered(
            sheet.key,
            desk.given(f"stock.{sheet.key}.length", sheet.length_in_hand),
            desk.given(f"stock.{sheet.key}.width", sheet.width_in_hand),
        ),
        *on_hand(desk, sheet.key),
    )
    trim = style["sheet_trim"].value
    ways = ((*pieces, *tests), pieces) if tests else (pieces,)
    drafts = tuple(draft(desk, sheet, offered, way, trim=trim) for way in ways)
    return _SheetDraft(sheet, pieces, tests, drafts)
