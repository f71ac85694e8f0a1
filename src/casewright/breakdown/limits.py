"""What the shop's saws reach and what one person handles, in the unit of a problem."""

from __future__ import annotations

from fractions import Fraction

from casewright.breakdown.units import WholeUnit
from casewright.cutting.methods import Limits
from casewright.cutting.rates import Load, WorkModel
from casewright.room.model import Room
from casewright.stock import Board, Sheet

__all__ = ["shop_limits", "work_model"]


_FULL_LIFT, _HALF_LIFT = 18, 9
"""From which weights a lift is like that of a full sheet, and of half one [kg]: own defaults."""


def work_model(room: Room, unit: WholeUnit, goods: Sheet | Board) -> WorkModel:
    """What the shop can do with a stock, and what is heavy of it.

    Without a weight nothing is heavy.
    """
    weight = _face_weight(room, goods)
    limits = shop_limits(room, unit, weight, narrow=isinstance(goods, Board))
    if not weight:
        return WorkModel(limits)
    full, half = (int(lift / weight / unit.step**2) for lift in (_FULL_LIFT, _HALF_LIFT))
    return WorkModel(limits, load=Load(full, half))


def _face_weight(room: Room, goods: Sheet | Board) -> Fraction:
    """Weight of a stock for each unit of its face, by the thickness known now [kg/mm2]."""
    node = room.chain.nodes.get(f"stock.{goods.key}.thickness")
    thickness = node.value if node else goods.thickness.value
    return goods.density * thickness / 1_000_000_000


def shop_limits(room: Room, unit: WholeUnit, weight: Fraction, *, narrow: bool = False) -> Limits:
    """Limits of the shop for one stock.

    Without a table saw nothing goes to a fence; crosscuts then need a mitre saw, else the
    straightedge.

    Parameters
    ----------
    weight
        Of the stock [kg/mm2]; one person handles at the saw no more than the shop's lift.
    narrow
        Boards and strips: they are crosscut at any length, their far end on a stand.
    """
    shop, style = room.spec.shop, room.spec.style

    def whole(length: Fraction) -> int:
        return int(length // unit.step)

    table, mitre = shop.tools.get("table saw"), shop.tools.get("mitre saw")
    reaches = [style["sled_reach"].value] if table else []
    reaches += [mitre.reach.value] if mitre and mitre.reach else []
    rip: int | None = 0
    if table is not None:
        rip = whole(table.reach.value) if table.reach else None
    return Limits(
        rip_capacity=rip,
        crosscut_capacity=whole(max(reaches, default=Fraction(0))),
        straightedge=whole(shop.straightedge.value),
        lift_area=int(shop.lift / weight / unit.step**2) if weight else None,
        narrowest_rip=whole(style["narrow_rip"].value),
        shortest_on_fence=whole(style["fence_contact"].value),
        longest_on_sled=None if narrow else whole(style["sled_length"].value),
    )
