"""Cut trees of sheets that are divided to any depth."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from casewright.cutting.nest import Nested
from casewright.cutting.nook import Nook
from casewright.cutting.problem import Problem
from casewright.cutting.solution import Leaf, Node, Rect, SheetTree
from casewright.cutting.tree import Axis, Cell, divide

__all__ = ["nested_trees"]

_Deal = Callable[[int], tuple[str, int]]


def nested_trees(
    problem: Problem, nested: Nested, deal: _Deal, start: int = 0
) -> tuple[SheetTree, ...]:
    """The cut tree of each sheet, numbered from `start`; u lies along the stock's length.

    Parameters
    ----------
    deal
        Gives the next part of a shape.
    """
    return tuple(
        _tree(problem, index, nook, deal, number)
        for number, (index, nook) in enumerate(nested.sheets, start)
    )


def _tree(problem: Problem, index: int, nook: Nook, deal: _Deal, number: int) -> SheetTree:
    item = problem.stock[index]
    whole = Rect(0, 0, item.length, item.width)
    root = _node(problem, nook, (item.trim.left, item.trim.bottom), deal, whole)
    return SheetTree(number, item.id, root)


def _node(problem: Problem, nook: Nook, at: tuple[int, int], deal: _Deal, rect: Rect) -> Node:
    """A piece that begins at a place on the stock, cut out of a rectangle."""
    if not nook.inner:
        return _part(problem, nook, at, deal, rect)
    axis: Axis = "x" if nook.axis == 0 else "y"
    x, y = at
    cells: list[Cell] = []
    inner = nook.inner if nook.stays else sorted(nook.inner, key=lambda one: one.is_free)
    for one in inner:
        low, size = (x, one.du) if nook.axis == 0 else (y, one.dv)
        if not one.is_empty:
            build = partial(_node, problem, one, (x, y), deal)
            cells.append(Cell(low, low + size - problem.kerf, build))
        x, y = (x + one.du, y) if nook.axis == 0 else (x, y + one.dv)
    return divide(rect, axis, cells, problem.kerf, problem.keep)


def _part(problem: Problem, nook: Nook, at: tuple[int, int], deal: _Deal, rect: Rect) -> Node:
    """A part, trimmed where the piece that it comes out of is larger."""
    kerf = problem.kerf
    for axis, low, size, span in (
        ("x", at[0], nook.du - kerf, (rect.x, rect.x1)),
        ("y", at[1], nook.dv - kerf, (rect.y, rect.y1)),
    ):
        if span != (low, low + size):
            cell = Cell(low, low + size, partial(_part, problem, nook, at, deal))
            return divide(rect, "x" if axis == "x" else "y", [cell], kerf, problem.keep)
    return Leaf(rect, "part", *deal(nook.shape))
