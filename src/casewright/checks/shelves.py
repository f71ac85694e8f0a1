"""What carries things: which parts are shelves, how far they span, what stiffens them."""

from __future__ import annotations

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = [
    "SHELF_ROLES", "nosing_of", "nosing_words", "shelf_modulus", "shelf_span", "takes_nosing",
]  # fmt: skip

SHELF_ROLES = ("shelf", "fixed shelf", "divider")


def shelf_modulus(room: Room, part: Part) -> int | None:
    """Bending modulus along the shelf's span [MPa]; None: not known."""
    goods = room.spec.stock[part.stock]
    if not isinstance(goods, Sheet) or (goods.grain and not part.grain):
        return None
    return goods.modulus


def shelf_span(room: Room, case: Case, part: Part) -> Dim:
    """Clear distance between a shelf's supports [mm]."""
    clear = room.chain.nodes[f"{case.key}.clear_width"]
    return min(clear, part.finished.length, key=lambda dim: dim.value)


def takes_nosing(case: Case, part: Part) -> bool:
    """Whether a word of the job draws a nosing under a shelf: nothing closes the case."""
    is_open = case.spec.front is None and not case.spec.rows and part.role != "shelf"
    return case.spec.kind == "bookcase" or is_open


def nosing_words(case: Case, part: Part) -> str:
    """How a shelf gets a nosing: by a word of the job where one draws it, else by hand."""
    if takes_nosing(case, part):
        return f"nosing in [case.{case.key}]"
    return "made and glued on by hand, as no word of the job draws it there"


def nosing_of(case: Case, part: Part) -> Part | None:
    """The strip glued under a shelf's front edge, if it has one."""
    parts = {p.path: p for p in case.parts if p.role == "nosing"}
    for joint in case.joints:
        if joint.form == "face" and joint.other.part == part.path and joint.one.part in parts:
            return parts[joint.one.part]
    return None
