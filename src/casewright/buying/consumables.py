"""Glue, filler, abrasives: by rules of the trade, from what the model holds."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.buying.line import BuyLine, packed
from casewright.buying.numbers import long, sum_of, sums
from casewright.buying.spares import GLUE_ML_PER_MM
from casewright.buying.words import counted
from casewright.casework.joints import Joint
from casewright.casework.parts import Part
from casewright.dims import Dim, Told, Unit, tell, total
from casewright.findings import Limit, Reckoning
from casewright.room.model import Room

__all__ = ["consumables", "glued_length"]

_BOTTLE_ML = Fraction(250)
_EVERY: Mapping[Unit, str] = {"in": "60 ft (18.3 m)", "mm": "18.3 m (60 ft)"}
_GLUES = Limit("glue.bottle_glues", "720", "18288", "edges that a bottle glues, both faces wetted")
_TUB_ML = Fraction(473)
_BOXES_A_TUB = 10
_GRITS = (150, 220, 320)
_SHEET = (
    Limit("abrasive.width", "9", "230", "abrasive paper as it is sold"),
    Limit("abrasive.length", "11", "280", "abrasive paper as it is sold"),
)
_SHEETS_A_DOOR = Fraction(2)
_SHEETS_A_BOX = Fraction(2)


def glued_length(joint: Joint, parts: Mapping[str, Part]) -> Dim | None:
    """Length of a glue line: along the edge or end that is glued [mm]; None: no glue."""
    if not any(fastening.kind == "glue" for fastening in joint.fastenings):
        return None
    size = parts[joint.one.part].finished
    return size.width if joint.one.plane[0] == "l" else size.length


def consumables(room: Room) -> Iterator[BuyLine]:
    """Glue by the glued edges, filler by the boxes, abrasives by doors and boxes."""
    yield from _glue(room)
    if room.boxes:
        yield _filler(room)
        yield from _abrasives(room)


def _glue(room: Room) -> Iterator[BuyLine]:
    own = sums(room, "glue", "edges")
    paths: list[str] = []
    by_case: list[Dim] = []
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        lines = {joint.path: glued_length(joint, parts) for joint in case.joints}
        glued = {path: line for path, line in lines.items() if line is not None}
        paths += glued
        if glued:
            by_case.append(own.let(case.key, sum_of(glued.values())))
    if by_case:
        whole = total(*by_case)
        need = whole.value * GLUE_ML_PER_MM
        yield BuyLine(
            "glue and filler", "wood glue", "glue", "volume", need, Fraction(0), _BOTTLE_ML,
            packed(need, Fraction(0), _BOTTLE_ML), "bottle of 250 ml",
            tell(
                "{} of glued edges, 250 ml for {}", long(own, whole, "length"),
                own.said(own.limit(_GLUES), _EVERY[own.unit], "every"),
            ),
            tuple(paths), numbers=own.numbers,
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
    boxes, own = len(room.boxes), sums(room, "abrasive", "sheets")
    unit = _sheet(own)
    for grit in _GRITS:
        boxed = _SHEETS_A_BOX * boxes / 2 if grit != _GRITS[-1] else Fraction(0)
        need = _SHEETS_A_DOOR * doors / len(_GRITS) + boxed
        if need:
            terms = [f"2 sheets a door in three grits: {counted(doors, 'door')}"] if doors else []
            terms += [f"2 a box in two grits: {counted(boxes, 'box', 'boxes')}"] if boxed else []
            yield BuyLine(
                "abrasives", f"abrasive paper, grit {grit}, or discs of the same area",
                f"grit_{grit}", "pieces", need, Fraction(0), Fraction(1),
                packed(need, Fraction(0), Fraction(1)), unit,
                "; ".join(terms), tuple(case.key for case in room.boxes), numbers=own.numbers,
            )  # fmt: skip


def _sheet(own: Reckoning) -> Told:
    """'sheet of 9 x 11 in (230 x 280 mm)': in both units, the job's first."""
    halves = [("9", "11 in"), ("230", "280 mm")]
    dims = [own.limit(limit) for limit in _SHEET]
    said = [text for half in (halves if own.unit == "in" else halves[::-1]) for text in half]
    sizes = (own.said(dim, text, "size") for dim, text in zip(dims * 2, said, strict=True))
    return tell("sheet of {} x {} ({} x {})", *sizes)
