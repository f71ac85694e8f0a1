"""What the shop's saws reach and what one person handles, in the unit of a problem."""

from __future__ import annotations

from fractions import Fraction

from casewright.breakdown.units import WholeUnit
from casewright.cutting.methods import Limits
from casewright.room.model import Room

__all__ = ["shop_limits"]


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
