"""Plans for sheet goods."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from casewright.breakdown.desk import Desk
from casewright.breakdown.lots import StockDraft, plan_lots
from casewright.breakdown.pieces import part_piece
from casewright.breakdown.plan import StockPlan
from casewright.breakdown.set_ups import test_pieces
from casewright.breakdown.solving import Offered, draft, on_hand
from casewright.casework.parts import Part
from casewright.stock import Sheet

__all__ = ["draft_sheets", "plan_sheets"]


def plan_sheets(desk: Desk, parts: Iterable[Part]) -> list[StockPlan]:
    """Lay parts out on the sheets of their stocks, and test pieces beside them."""
    (plans,) = plan_lots([(desk, draft_sheets(desk, parts))])
    return plans


def draft_sheets(desk: Desk, parts: Iterable[Part]) -> list[StockDraft]:
    """What is to be laid out, stock by stock."""
    by_stock: dict[str, list[Part]] = {}
    for part in parts:
        by_stock.setdefault(part.stock, []).append(part)
    return [
        _drafted(desk, goods, by_stock[key])
        for key, goods in desk.room.spec.stock.items()
        if isinstance(goods, Sheet) and key in by_stock
    ]


def _drafted(desk: Desk, sheet: Sheet, parts: Sequence[Part]) -> StockDraft:
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
    return StockDraft(sheet.key, "sheets", pieces, drafts, tests)
