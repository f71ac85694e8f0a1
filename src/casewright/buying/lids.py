"""Hinges and stays of lids, counted on the lids of window seats."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.numbers import sums
from casewright.buying.pieces import pieces
from casewright.buying.spares import FIXED_SPARES
from casewright.buying.words import counted
from casewright.casework.lifted import lift_path, told_weight
from casewright.casework.parts import Part
from casewright.dims import tell
from casewright.findings import Limit
from casewright.room.model import Room

__all__ = ["lid_goods"]

_APART = Limit("lid_hinge.apart", "", "450", "distance of a lid's hinges, at most")
"""About 18 in in either half of the trade."""

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
    own = sums(room, "lid", "heaviest")
    apart = own.limit(_APART)
    hinges = sum(_hinges(lid, apart.value) for lid in lids)
    inches, metric = own.said(apart, "18 in", "apart"), own.said(apart, "450 mm", "apart")
    yield pieces(
        "door hardware", "butt hinge for a lid, with its screws", "lid_hinge", hinges,
        FIXED_SPARES, paths=paths,
        why=tell(
            "{} on {}, none farther apart than about {} ({})",
            hinges, counted(len(lids), "lid"), inches, metric,
        ),
        numbers=own.numbers,
    )  # fmt: skip
    heaviest = max(lids, key=lambda lid: _weight(room, lid))
    kilos = _weight(room, heaviest)
    weight = replace(told_weight(kilos, room.spec.unit, lift_path(heaviest.path)),
                     said=f"{-(-kilos // 1)} kg")  # fmt: skip
    yield pieces(
        "door hardware", "lid stay that holds at any angle", "lid_stay", _STAYS_A_LID * len(lids),
        FIXED_SPARES, paths=paths, why=f"{_STAYS_A_LID} on each of {counted(len(lids), 'lid')}",
        note=tell(
            "chosen by its maker's table for a lid of {}, cushion apart; before anyone uses the "
            "lid", weight,
        ),
    )  # fmt: skip


def _hinges(lid: Part, apart: Fraction) -> int:
    return max(2, int(lid.finished.length.value // apart) + 1)


def _weight(room: Room, lid: Part) -> Fraction:
    return lid.weight(getattr(room.spec.stock[lid.stock], "density", Fraction(0)))
