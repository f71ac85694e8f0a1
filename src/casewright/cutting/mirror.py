"""Sheets seen mirrored, so that the edge that parts begin at is one that is as bought.

Plans are laid from the low edges on. Where the low edge is trimmed and the high one is not, the
parts belong at the high one: it is a datum that nobody has to make.
"""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from casewright.cutting.problem import Defect, StockItem, Trim
from casewright.cutting.solution import Leaf, Node, Rect, Split

__all__ = ["Mirror", "mirror_of", "mirrored_item", "mirrored_node"]


class Mirror(NamedTuple):
    """Whether a sheet is seen mirrored along its length, and across it."""

    along: bool
    across: bool


def mirror_of(trim: Trim) -> Mirror:
    """How a sheet is best seen."""
    return Mirror(trim.left > 0 == trim.right, trim.bottom > 0 == trim.top)


def mirrored_item(item: StockItem, view: Mirror) -> StockItem:
    """The stock as it is seen."""
    trim = item.trim
    if view.along:
        trim = replace(trim, left=trim.right, right=trim.left)
    if view.across:
        trim = replace(trim, bottom=trim.top, top=trim.bottom)
    whole = Rect(0, 0, item.length, item.width)
    spots = (
        Defect(*_mirrored(Rect(spot.x, spot.y, spot.length, spot.width), whole, view))
        for spot in item.defects
    )
    return replace(item, trim=trim, defects=tuple(spots))


def mirrored_node(node: Node, sheet: Rect, view: Mirror, kerf: int) -> Node:
    """A piece of a sheet as it is seen; seen so twice it is itself again."""
    if not any(view):
        return node
    rect = _mirrored(node.rect, sheet, view)
    if isinstance(node, Leaf):
        return replace(node, rect=rect)
    pieces = tuple(mirrored_node(piece, sheet, view, kerf) for piece in node.pieces)
    is_rip = node.direction == "rip"
    if not (view.across if is_rip else view.along):
        return Split(rect, node.direction, node.cuts, pieces)
    size = sheet.width if is_rip else sheet.length
    cuts = tuple(size - cut - kerf for cut in reversed(node.cuts))
    return Split(rect, node.direction, cuts, pieces[::-1])


def _mirrored(rect: Rect, sheet: Rect, view: Mirror) -> Rect:
    x = sheet.length - rect.x1 if view.along else rect.x
    y = sheet.width - rect.y1 if view.across else rect.y
    return Rect(x, y, rect.length, rect.width)
