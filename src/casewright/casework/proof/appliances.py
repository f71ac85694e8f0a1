"""Rows that hold an appliance: nothing stands in the height that its sheet asks for."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.geometry import Box, Number

__all__ = ["check_appliances"]


def check_appliances(case: Assembled) -> Iterator[Failure]:
    """From the deck up, between the sides and before the back, the box of air is empty."""
    rows, key = case.model.spec.rows, case.model.key
    for number, row in enumerate(rows, start=1):
        if row.appliance is None or row.appliance.height is None:
            continue
        name = "bottom" if number == len(rows) else f"row_board.{number}"
        deck = case.solids.get(f"{key}.{name}")
        if deck is None:
            yield Failure("size", (key,), f"nothing carries {row.appliance.title}")
            continue
        room = deck.outer
        low, tall = room.y1, case.units.down(row.appliance.height.value)
        x0, x1 = _between_sides(case)
        backs = (s.outer.z1 for s in case.box_solids if s.part.role == "back")
        front = max(solid.outer.z1 for solid in case.case_solids)
        air = Box(x0, x1, low, low + tall, max((room.z0, *backs)), front)
        for solid in case.case_solids:
            if solid is not deck and any(piece.meets(air) for piece in solid.pieces):
                common = solid.outer.common(air)
                yield Failure(
                    "size", (solid.part.path, deck.part.path),
                    f"{solid.part.title} stands in the opening for {row.appliance.title}",
                    case.units.length(min(common.x1 - common.x0, common.y1 - common.y0)),
                )  # fmt: skip


def _between_sides(case: Assembled) -> tuple[Number, Number]:
    """Where the clear inside or the mouth of a frame ends; a deck in dadoes reaches beyond it."""
    role = "frame stile" if case.model.spec.framed else "side"
    sides = [solid.outer for solid in case.case_solids if solid.part.role == role]
    return min(side.x1 for side in sides), max(side.x0 for side in sides)
