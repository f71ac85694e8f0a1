"""Hinges and stays of lids, counted on the lids of window seats."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.pieces import pieces
from casewright.buying.spares import FIXED_SPARES
from casewright.buying.words import counted
from casewright.casework.parts import Part
from casewright.room.model import Room

__all__ = ["lid_goods"]

_APART = Fraction(450)
"""Distance of a lid's hinges, at most: about 18 in (common practice) [mm]."""

_STAYS_A_LID = 2
"""One at either end, so that it does not twist (common practice)."""


def lid_goods(room: Room) -> Iterator[BuyLine]:
    """What turns a lid and holds it open; nothing where lids are fixed."""
    hung = [case for case in room.cases if case.spec.lid == "hinged"]
    lids = [part for case in hung for part in case.parts if part.role == "lid"]
    lids += [part for run in room.runs if run.spec.one_lid and run.cases[0].spec.lid == "hinged"
             for part in run.own_parts if part.role == "lid"]  # fmt: skip
    if not lids:
        return
    paths = tuple(lid.path for lid in lids)
    hinges = sum(_hinges(lid) for lid in lids)
    yield pieces(
        "door hardware", "butt hinge for a lid, with its screws", "lid_hinge", hinges,
        FIXED_SPARES, paths=paths,
        why=f"{hinges} on {counted(len(lids), 'lid')}, none farther apart than about 18 in "
        "(450 mm)",
    )  # fmt: skip
    heaviest = max(_weight(room, lid) for lid in lids)
    yield pieces(
        "door hardware", "lid stay that holds at any angle", "lid_stay", _STAYS_A_LID * len(lids),
        FIXED_SPARES, paths=paths, why=f"{_STAYS_A_LID} on each of {counted(len(lids), 'lid')}",
        note=f"chosen by its maker's table for a lid of {-(-heaviest // 1)} kg, cushion apart; "
        "before anyone uses the lid",
    )  # fmt: skip


def _hinges(lid: Part) -> int:
    return max(2, int(lid.finished.length.value // _APART) + 1)


def _weight(room: Room, lid: Part) -> Fraction:
    return lid.weight(getattr(room.spec.stock[lid.stock], "density", Fraction(0)))
