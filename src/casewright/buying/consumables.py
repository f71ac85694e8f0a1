"""Glue, filler, abrasives: by rules of the trade, from what the model holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.buying.line import BuyLine, packed
from casewright.buying.spares import GLUE_ML_PER_MM
from casewright.buying.words import counted, long_length
from casewright.casework.joints import Joint
from casewright.casework.parts import Part
from casewright.room.model import Room

__all__ = ["consumables", "glued_length"]

_BOTTLE_ML = Fraction(250)
_EVERY = {"in": "60 ft (18.3 m)", "mm": "18.3 m (60 ft)"}  # that a bottle glues
_TUB_ML = Fraction(473)
_BOXES_A_TUB = 10
_GRITS = (150, 220, 320)
_ABRASIVE = {
    "in": "sheet of 9 x 11 in (230 x 280 mm)",
    "mm": "sheet of 230 x 280 mm (9 x 11 in)",
}
_SHEETS_A_DOOR = Fraction(2)
_SHEETS_A_BOX = Fraction(2)


def glued_length(joint: Joint, parts: Mapping[str, Part]) -> Fraction:
    """Length of a glue line: along the edge or end that is glued [mm]."""
    if not any(fastening.kind == "glue" for fastening in joint.fastenings):
        return Fraction(0)
    size = parts[joint.one.part].finished
    return size.width.value if joint.one.plane[0] == "l" else size.length.value


def consumables(room: Room) -> Iterator[BuyLine]:
    """Glue by the glued edges, filler by the boxes, abrasives by doors and boxes."""
    yield from _glue(room)
    if room.boxes:
        yield _filler(room)
        yield from _abrasives(room)


def _glue(room: Room) -> Iterator[BuyLine]:
    length = Fraction(0)
    paths: list[str] = []
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        for joint in case.joints:
            own = glued_length(joint, parts)
            length += own
            if own:
                paths.append(joint.path)
    if length:
        need = length * GLUE_ML_PER_MM
        yield BuyLine(
            "glue and filler", "wood glue", "glue", "volume", need, Fraction(0), _BOTTLE_ML,
            packed(need, Fraction(0), _BOTTLE_ML), "bottle of 250 ml",
            f"{long_length(length, room.spec.unit)} of glued edges, 250 ml for "
            f"{_EVERY[room.spec.unit]}",
            tuple(paths),
        )  # fmt: skip


def _filler(room: Room) -> BuyLine:
    boxes = len(room.boxes)
    need = _TUB_ML * boxes / _BOXES_A_TUB
    return BuyLine(
        "glue and filler", "wood filler that takes paint", "filler", "volume", need, Fraction(0),
        _TUB_ML, packed(need, Fraction(0), _TUB_ML), "tub of 473 ml (1 pint)",
        f"one tub for {_BOXES_A_TUB} boxes: {counted(boxes, 'box', 'boxes')}",
        tuple(case.key for case in room.boxes),
    )  # fmt: skip


def _abrasives(room: Room) -> Iterator[BuyLine]:
    doors = sum(len(case.fronts) for case in room.boxes)
    boxes = len(room.boxes)
    for grit in _GRITS:
        boxed = _SHEETS_A_BOX * boxes / 2 if grit != _GRITS[-1] else Fraction(0)
        need = _SHEETS_A_DOOR * doors / len(_GRITS) + boxed
        if need:
            terms = [f"2 sheets a door in three grits: {counted(doors, 'door')}"] if doors else []
            terms += [f"2 a box in two grits: {counted(boxes, 'box', 'boxes')}"] if boxed else []
            yield BuyLine(
                "abrasives", f"abrasive paper, grit {grit}, or discs of the same area",
                f"grit_{grit}", "pieces", need, Fraction(0), Fraction(1),
                packed(need, Fraction(0), Fraction(1)), _ABRASIVE[room.spec.unit],
                "; ".join(terms), tuple(case.key for case in room.boxes),
            )  # fmt: skip
