"""What carries things: which parts are shelves, how far they span, what stiffens them."""

from __future__ import annotations

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["SHELF_ROLES", "nosing_of", "shelf_modulus", "shelf_span_mm"]

SHELF_ROLES = ("shelf", "fixed shelf", "divider")


def shelf_modulus(room: Room, part: Part) -> int | None:
    """Bending modulus along the shelf's span [MPa]; None: not known."""
    goods = room.spec.stock[part.stock]
    if not isinstance(goods, Sheet) or (goods.grain and not part.grain):
        return None
    return goods.modulus


def shelf_span_mm(room: Room, case: Case, part: Part) -> float:
    """Clear distance between a shelf's supports [mm]."""
    clear = room.chain.nodes[f"{case.key}.clear_width"].value
    return float(min(clear, part.finished.length.value))


def nosing_of(case: Case, part: Part) -> Part | None:
    """The strip glued under a shelf's front edge, if it has one."""
    parts = {p.path: p for p in case.parts if p.role == "nosing"}
    for joint in case.joints:
        if joint.form == "face" and joint.other.part == part.path and joint.one.part in parts:
            return parts[joint.one.part]
    return None
