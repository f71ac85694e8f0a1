"""How many sheets a room takes, soon: counted as for buying, no work at the saw planned yet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.breakdown.desk import Desk
from casewright.breakdown.sheets import plan_sheets
from casewright.cutting.engine import Stop
from casewright.room.model import Room

__all__ = ["SheetCount", "count_sheets"]

_SOON = Stop(nodes=3_000)


@dataclass(frozen=True, slots=True)
class SheetCount:
    """Sheets of a room.

    Parameters
    ----------
    sheets
        To buy, by stock [-].
    proved
        Whether it takes no fewer of any stock.
    """

    sheets: Mapping[str, int]
    proved: bool

    @property
    def total(self) -> int:
        """Of all goods [-]."""
        return sum(self.sheets.values())


def count_sheets(room: Room, *, stop: Stop = _SOON) -> SheetCount:
    """Count the sheets that a room's planned parts take, parts that wait among them.

    Parameters
    ----------
    stop
        When to be content: with little, a sheet more may be counted than the plan will take.
    """
    desk = Desk(room, stop, eases=False)
    plans = plan_sheets(desk, (part for part in room.parts if part.state == "planned"))
    return SheetCount(
        {plan.stock: plan.count for plan in plans}, all(not plan.solution.gap for plan in plans)
    )
