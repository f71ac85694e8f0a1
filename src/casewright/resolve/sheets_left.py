"""Whether spoiled pieces go onto the sheets still to be cut, or take more of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from casewright.breakdown.desk import Desk
from casewright.breakdown.pieces import part_piece
from casewright.breakdown.solving import Offered, lay_out
from casewright.breakdown.units import UnevenLengthError
from casewright.casework.parts import Part
from casewright.cutting.engine import Stop
from casewright.cutting.problem import PartDemand
from casewright.cutting.replan import replan
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["more_sheets"]

_WORK = Stop(nodes=30_000)
"""A third of a second for a room of five sheets."""


def more_sheets(room: Room, stock: str, lost: Sequence[Part]) -> int | None:
    """How many more sheets it takes to cut pieces again with what is still to be cut [-].

    The rest is laid out first and the pieces are planned into it: as little of it moves as may be,
    and of plans the one with the fewest sheets that was found is taken.

    Parameters
    ----------
    lost
        Pieces of that stock to be cut again.

    Returns
    -------
    None for stock that is not laid out on sheets, or sizes off its grid.
    """
    sheet = room.spec.stock[stock]
    if not isinstance(sheet, Sheet):
        return None
    gone = {part.path for part in lost}
    rest = [
        part_piece(part)
        for part in room.parts
        if part.stock == stock and part.state == "planned" and part.path not in gone
    ]
    desk = Desk(room, _WORK, eases=False)
    offered = Offered(
        sheet.key,
        desk.given(f"stock.{sheet.key}.length", sheet.length_in_hand),
        desk.given(f"stock.{sheet.key}.width", sheet.width_in_hand),
    )
    layout = lay_out(desk, sheet, (offered,), rest, trim=room.spec.style["sheet_trim"].value)
    try:
        demands = tuple(
            PartDemand(
                part.path,
                layout.unit.count(part.blank.length.value),
                layout.unit.count(part.blank.width.value),
                rotate=not part.grain,
            )
            for part in lost
        )
    except UnevenLengthError:
        return None
    problem = replace(layout.problem, parts=(*layout.problem.parts, *demands))
    again = replan(problem, layout.solution, stop=_WORK).solution
    return None if again.unplaced else len(again.tree) - len(layout.solution.tree)
