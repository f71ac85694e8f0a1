"""Plans for sheet goods."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from casewright.breakdown.desk import Desk
from casewright.breakdown.just_fit import just_fits, unmeasured_saws
from casewright.breakdown.pieces import part_piece
from casewright.breakdown.plan import StockPlan
from casewright.breakdown.set_ups import test_pieces
from casewright.breakdown.solving import Offered, lay_out, saw
from casewright.casework.parts import Part
from casewright.dims import Given, Origin
from casewright.stock import Sheet

__all__ = ["plan_sheets"]


def plan_sheets(desk: Desk, sheet: Sheet, parts: Sequence[Part]) -> StockPlan:
    """Lay the parts of a stock out on its sheets, and test pieces beside them.

    Where the test pieces would cost another sheet they are left to the offcuts.
    """
    room = desk.room
    style = room.spec.style
    pieces = tuple(part_piece(part) for part in parts)
    tests = test_pieces(
        sheet.key, parts, length=desk.style("test_piece_length"),
        width=desk.style("test_piece_width"), turns=True, unit=room.spec.unit,
    )  # fmt: skip
    offered = (
        Offered(
            sheet.key,
            desk.given(f"stock.{sheet.key}.length", sheet.length_in_hand),
            desk.given(f"stock.{sheet.key}.width", sheet.width_in_hand),
        ),
        *_kept(desk, sheet),
    )
    trim = style["sheet_trim"].value
    layout = lay_out(desk, sheet, offered, (*pieces, *tests), trim=trim)
    left: tuple[str, ...] = ()
    if tests:
        alone = lay_out(desk, sheet, offered, pieces, trim=trim)
        if alone.solution.cost < layout.solution.cost:
            layout, left = alone, tuple(test.id for test in tests)
    slack, saws = style["sheet_slack"].value, unmeasured_saws(room.spec.shop)
    sawn = saw(desk, layout)
    laid = (piece for piece in (*pieces, *tests) if piece.id not in left)
    return replace(
        StockPlan.of(layout, sawn, f"plan.{sheet.key}", sheet.key, "sheets", laid),
        just_fit=tuple(just_fits(layout, sawn.solution, sheet, slack, kerf_is_known=not saws)),
        from_offcuts=tuple(test for test in tests if test.id in left),
    )


def _kept(desk: Desk, sheet: Sheet) -> Iterator[Offered]:
    """The offcuts of a sheet that are on hand."""
    for offcut in desk.room.offcuts:
        if offcut.stock == sheet.key:
            origin = Origin("measured", "kept in the record")
            length, width = (
                desk.given(f"{offcut.path}.{name}", Given(size, origin))
                for name, size in (("length", offcut.length), ("width", offcut.width))
            )
            yield Offered(offcut.path, length, width, kept=True)
