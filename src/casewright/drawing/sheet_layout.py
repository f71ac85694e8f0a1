"""A sheet or board as it is cut: passes in order, parts by their mark, offcuts to keep."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.breakdown import Piece, StockPlan
from casewright.cutting.solution import Leaf, Rect, SheetTree, leaves
from casewright.cutting.steps import Step
from casewright.dims.units import Unit
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.measure import Content, measure_of
from casewright.drawing.notes import Balloon, Text
from casewright.drawing.pens import CUT, FINE, THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, line, rectangle
from casewright.drawing.symbols import GrainArrow, Sign

__all__ = ["sheet_scene"]

_ROOMY_MM = 150
_TIGHT_MM = 45
_SHORT = {"test piece": "test", "spare": "spare", "strip blank": "blank", "lip": "lip"}


def sheet_scene(plan: StockPlan, tree: SheetTree, unit: Unit, *, grain: bool) -> Scene:
    """One sheet with its parts and the saw's passes, numbered in the order of work."""
    whole = _box(plan, tree.root.rect)
    elements: list[Element] = [
        rectangle((whole[0], whole[1]), (whole[2], whole[3]), VISIBLE, fill=Ink.SHADE)
    ]
    steps = plan.order.on_sheet(tree.sheet)
    names = {leaf.rect: leaf.name for step in steps for leaf in step.leaves}
    for leaf in leaves(tree.root):
        elements.extend(_leaf(plan, leaf, names.get(leaf.rect, ""), unit))
    for step in steps:
        elements.extend(_pass(plan, step))
    elements.append(Sign("datum", (whole[2] / 2, whole[1]), toward_deg=270, size_mm=3.0))
    elements.append(Sign("datum", (whole[0], whole[3] / 2), toward_deg=180, size_mm=3.0))
    if grain:
        elements.append(GrainArrow((whole[2] / 2, whole[3]), 16.0))
    long, wide = (measure_of(dim, unit) for dim in plan.numbers.sizes[f"{tree.sheet + 1}"])
    elements.append(
        Dimensions("below", whole[1], (Span(whole[0], whole[2], long),), offset_mm=5.0)
    )
    elements.append(Dimensions("right", whole[2], (Span(whole[1], whole[3], wide),)))
    return Scene(tuple(elements), f"{plan.stock} {tree.sheet + 1}")


def _box(plan: StockPlan, rect: Rect) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    x, y = plan.length(rect.x), plan.length(rect.y)
    return x, y, plan.length(rect.x1), plan.length(rect.y1)


def _leaf(plan: StockPlan, leaf: Leaf, name: str, unit: Unit) -> Iterator[Element]:
    x0, y0, x1, y1 = _box(plan, leaf.rect)
    long, wide = x1 - x0, y1 - y0
    if leaf.use == "waste":
        return
    if leaf.use == "offcut":
        yield rectangle((x0, y0), (x1, y1), FINE, fill=Ink.TINT)
        if long > _ROOMY_MM and wide > _TIGHT_MM:
            size = [measure_of(dim, unit) for dim in plan.numbers.sizes[name]]
            words: Content = ("keep ", size[0], " × ", size[1])
            yield Text(((x0 + x1) / 2, (y0 + y1) / 2), words, 2.2, ink=Ink.SOFT)
        return
    piece = plan.pieces[leaf.part]
    tag = Tag(path=piece.id, title=piece.title, target=piece.id if piece.kind == "part" else "")
    yield rectangle((x0, y0), (x1, y1), THIN, fill=Ink.PAPER, tag=tag)
    yield from _label(piece, (x0, y0, x1, y1), unit)


def _label(
    piece: Piece, box: tuple[Fraction, Fraction, Fraction, Fraction], unit: Unit
) -> Iterator[Element]:
    x0, y0, x1, y1 = box
    long, wide = x1 - x0, y1 - y0
    turned = 90.0 if wide > long * Fraction(3, 2) else 0.0
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    name = piece.mark or _SHORT.get(piece.kind, "")
    run = max(long, wide)
    if min(long, wide) > _ROOMY_MM and run > 2 * _ROOMY_MM:
        shift = (0.0, 2.6) if not turned else (-2.6, 0.0)
        yield Text(middle, name, 3.4, weight=600, rotation_deg=turned, shift_mm=shift)
        words: Content = (measure_of(piece.long, unit), " × ", measure_of(piece.wide, unit))
        back = (0.0, -2.8) if not turned else (2.8, 0.0)
        yield Text(middle, words, 2.0, rotation_deg=turned, shift_mm=back)
    elif min(long, wide) > _TIGHT_MM or run > _ROOMY_MM:
        size = 2.4 if min(long, wide) > _TIGHT_MM else 1.7
        yield Text(middle, name, size, weight=600, rotation_deg=turned)


def _pass(plan: StockPlan, step: Step) -> Iterator[Element]:
    """The line a pass runs on, with its number where the saw enters."""
    x0, y0, x1, y1 = _box(plan, step.piece.rect)
    setting = plan.length(step.setting)
    if step.direction == "rip":
        y = y0 + setting if step.datum == "bottom" else y1 - setting
        yield line((x0, y), (x1, y), CUT if step.method == "straightedge" else VISIBLE)
        at = (x0 + min((x1 - x0) / 12, Fraction(70)), y)
    else:
        x = x0 + setting if step.datum == "left" else x1 - setting
        yield line((x, y0), (x, y1), CUT if step.method == "straightedge" else VISIBLE)
        at = (x, y0 + min((y1 - y0) / 5, Fraction(70)))
    yield Balloon(at, str(step.number), height=1.6)
