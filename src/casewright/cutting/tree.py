"""Cut trees: dividing a piece into cells by parallel cuts, and turning a tree over."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal, NamedTuple

from casewright.cutting.problem import Keep
from casewright.cutting.solution import Direction, Leaf, Node, Rect, Split

__all__ = ["Axis", "Cell", "divide", "leftover", "transpose"]

Axis = Literal["x", "y"]
"""Along which the cells follow each other: x by crosscuts, y by rips."""


class Cell(NamedTuple):
    """A piece wanted out of a larger one: where it begins and ends, and what becomes of it."""

    low: int
    high: int
    build: Callable[[Rect], Node]


def leftover(rect: Rect, keep: Sequence[Keep]) -> Leaf:
    """An offcut when it is worth keeping, else waste."""
    long, short = max(rect[2:]), min(rect[2:])
    is_worth = any(long >= size.long and short >= size.short for size in keep)
    return Leaf(rect, "offcut" if is_worth else "waste")


def divide(
    rect: Rect, axis: Axis, cells: Sequence[Cell], kerf: int, keep: Sequence[Keep] = ()
) -> Node:
    """Cut cells out of a piece.

    Parameters
    ----------
    rect
        The piece.
    axis
        Along which the cells follow each other.
    cells
        Ascending, at least a kerf apart, inside the piece.
    kerf
        Width of the blade's cut [unit].
    keep
        Sizes from which leftovers are offcuts.

    Returns
    -------
    The piece split, or what its only cell becomes when there is nothing to cut.
    """
    low, high = (rect.x, rect.x1) if axis == "x" else (rect.y, rect.y1)
    cuts: list[int] = []
    pieces: list[Node] = []
    at = low
    for cell in cells:
        if cell.low > at:
            if cell.low - kerf > at:
                pieces.append(leftover(_slice(rect, axis, at, cell.low - kerf), keep))
            cuts.append(cell.low - kerf)
        pieces.append(cell.build(_slice(rect, axis, cell.low, cell.high)))
        at = cell.high
        if at < high:
            cuts.append(at)
            at += kerf
    if at < high and cuts:
        pieces.append(leftover(_slice(rect, axis, at, high), keep))
    if not cuts:
        return pieces[0]
    return Split(rect, "crosscut" if axis == "x" else "rip", tuple(cuts), tuple(pieces))


def transpose(node: Node) -> Node:
    """The tree with length and width, rips and crosscuts, exchanged."""
    rect = Rect(node.rect.y, node.rect.x, node.rect.width, node.rect.length)
    if isinstance(node, Leaf):
        return Leaf(rect, node.use, node.part, node.copy)
    direction: Direction = "rip" if node.direction == "crosscut" else "crosscut"
    return Split(rect, direction, node.cuts, tuple(transpose(piece) for piece in node.pieces))


def _slice(rect: Rect, axis: Axis, low: int, high: int) -> Rect:
    if axis == "x":
        return Rect(low, rect.y, high - low, rect.width)
    return Rect(rect.x, low, rect.length, high - low)
