"""Sheets whose parts leave so little to spare that the sheet in hand must be measured first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.breakdown.desk import Desk
from casewright.breakdown.plan import JustFit, StockPlan
from casewright.breakdown.solving import Layout
from casewright.cutting.solution import Solution
from casewright.dims import Dim, Origin, as_said, tell
from casewright.findings import Question
from casewright.room.model import Room
from casewright.shop import Shop, ToolKind
from casewright.stock import Sheet

__all__ = ["just_fits", "measure_first", "unmeasured_saws"]

_SHEET_SAWS: tuple[ToolKind, ...] = ("table saw", "circular saw")


def unmeasured_saws(shop: Shop) -> tuple[ToolKind, ...]:
    """Saws for sheets whose kerf was not read on a test cut yet."""
    owned = ((kind, shop.tools[kind].kerf) for kind in _SHEET_SAWS if kind in shop.tools)
    return tuple(kind for kind, kerf in owned if kerf is None or kerf.origin.kind != "measured")


def just_fits(
    layout: Layout, solution: Solution, sheet: Sheet, least: Fraction, *, kerf_is_known: bool
) -> Iterator[JustFit]:
    """Every side of a sheet along which less than `least` is to spare.

    Structural plywood may be 1/16 in under its label (`ps1`), and three cuts with a blade
    1/64 in wider than believed take as much again. A sheet does not wait when both its size and
    the kerf were measured.

    Parameters
    ----------
    least
        [mm].
    kerf_is_known
        Whether the kerf was read on a test cut.
    """
    places = solution.placements
    items = {item.id: item for item in layout.problem.stock}
    waits = {"length": not (kerf_is_known and sheet.measured_length),
             "width": not (kerf_is_known and sheet.measured_width)}  # fmt: skip
    for tree in solution.tree:
        item = items[tree.stock]
        if item.count is not None:  # an offcut was read as it lay there
            continue
        mine = [place for place in places if place.sheet == tree.sheet]
        parts = tuple(dict.fromkeys(place.part for place in mine))
        far_x, far_y = max(p.rect.x1 for p in mine), max(p.rect.y1 for p in mine)
        spare = layout.unit.length(item.length - item.trim.right - far_x)
        if spare < least and waits["length"]:
            yield JustFit(tree.sheet, "length", spare, parts)
        spare = layout.unit.length(item.width - item.trim.top - far_y)
        if spare < least and waits["width"]:
            yield JustFit(tree.sheet, "width", spare, parts)


def measure_first(desk: Desk, plans: Sequence[StockPlan]) -> Iterator[Question]:
    """What must be read before the sheets that just fit are cut, and where it is written."""
    room = desk.room
    for plan in plans:
        goods = room.spec.stock[plan.stock]
        if not plan.just_fit or not isinstance(goods, Sheet):
            continue
        sides = sorted({fit.side for fit in plan.just_fit})
        tightest = min(plan.just_fit, key=lambda fit: fit.spare)
        spare = "nothing"
        if tightest.spare:
            spare = tell("only {}", as_said(_spare(desk, plan, tightest), room.spec.unit))
        needs, how = _still_to_read(room, goods, sides)
        yield Question(
            path=f"stock.{plan.stock}.size",
            needs=needs,
            because=tell(
                "the parts on {} of {} sheets leave {} to spare, and {}",
                len(plan.waiting_sheets), plan.count, spare,
                "a blade may take more than its label says"
                if goods.measured_length
                else "sheets may be under their label",
            ),
            waiting=tuple(
                dict.fromkeys(
                    piece for fit in plan.just_fit for piece in fit.parts
                    if plan.pieces[piece].kind == "part"
                )
            ),
            how=how,
        )  # fmt: skip


def _spare(desk: Desk, plan: StockPlan, fit: JustFit) -> Dim:
    """What the parts on a sheet leave of it, as the plan lays them."""
    place = desk.chain.place(f"{plan.path}.sheet_{fit.sheet + 1}")
    path = f"{place.path}.spare_{fit.side}"
    whole = plan.numbers.sizes[f"{fit.sheet + 1}"][fit.side == "width"]
    left = Dim("by", (whole,), fit.spare)
    left.origin = Origin("solved", "the cutting plan: what its parts and its trimmed edge leave")
    return desk.chain.nodes.get(path) or desk.chain.register(path, left)


def _still_to_read(room: Room, sheet: Sheet, sides: Sequence[str]) -> tuple[str, str]:
    """What is to be measured, and the lines that take it."""
    needs, lines = [], []
    if sheet.measured_length is None:
        needs.append(f"the {' and '.join(sides)} of the sheets of {sheet.title}")
        lines.append(f'under [stock.{sheet.key}] write measured_size = ["...", "..."]')
    saws = unmeasured_saws(room.spec.shop)
    if saws:
        needs.append(f"the kerf of the {' and the '.join(saws)} on a test cut")
        sections = " and ".join(f'[shop.tool."{saw}"]' for saw in saws)
        lines.append(f'under {sections} write measured_kerf = "..."')
    return f"measure {', and '.join(needs)}", "; ".join(lines)
