"""Pieces laid out on offcuts, by the solver that sheets are cut by."""

from __future__ import annotations

from collections.abc import Sequence

from casewright.breakdown import common_unit
from casewright.casework.parts import Part
from casewright.cutting.engine import Stop, solve
from casewright.cutting.problem import PartDemand, Problem, StockItem
from casewright.room.model import Room
from casewright.shop import saw_kerf
from casewright.stock import Offcut

__all__ = ["out_of_offcuts"]

_WORK = Stop(nodes=20_000)
"""A few pieces out of a few offcuts are proved with far less."""

_STAGES = 3


def out_of_offcuts(
    room: Room, lost: Sequence[Part], offcuts: Sequence[Offcut]
) -> dict[str, Offcut]:
    """By part, the offcut that it comes out of."""
    sizes = {part.path: (part.blank.length.value, part.blank.width.value) for part in lost}
    kerf = saw_kerf(room.spec.shop)
    lengths = [size for pair in sizes.values() for size in pair]
    lengths += [size for each in offcuts for size in (each.length, each.width)]
    unit = common_unit([kerf, *lengths], room.spec.unit)
    if not offcuts:
        return {}
    problem = Problem(
        unit=unit.name,
        kerf=unit.count(kerf),
        stages=_STAGES,
        stock=tuple(
            StockItem(
                each.path,
                unit.count(each.length),
                unit.count(each.width),
                count=1,
                price=max(1, round(each.area / 100)),
            )
            for each in offcuts
        ),
        parts=tuple(
            PartDemand(
                part.path,
                unit.count(part.blank.length.value),
                unit.count(part.blank.width.value),
                rotate=not part.grain,
            )
            for part in lost
        ),
    )
    solution = solve(problem, _WORK)
    named = {each.path: each for each in offcuts}
    of_sheet = {tree.sheet: named[tree.stock] for tree in solution.tree}
    return {placed.part: of_sheet[placed.sheet] for placed in solution.placements}
