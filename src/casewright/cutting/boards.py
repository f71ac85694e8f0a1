"""Boards cut to length: the same problem in one dimension."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from casewright.cutting.board_search import BoardSearch, BoardTask, Kind, UsedBoard
from casewright.cutting.engine import Stop, solve
from casewright.cutting.outcome import lower_bound, solution_of, sort_out
from casewright.cutting.problem import Fault, PartDemand, Problem, ProblemError, StockItem
from casewright.cutting.solution import Bound, Leaf, Node, Rect, SheetTree, Solution
from casewright.cutting.tree import Cell, divide

__all__ = ["board_problem", "solve_boards"]


def board_problem(
    unit: str, kerf: int, stock: Sequence[StockItem], parts: Sequence[PartDemand]
) -> Problem:
    """A problem of lengths alone.

    Parameters
    ----------
    unit, kerf
        As in `Problem`.
    stock, parts
        All of one width; parts are never turned.

    Raises
    ------
    ProblemError
        When widths differ, a part may be turned, or a long edge is to be trimmed.
    """
    problem = Problem(unit, kerf, None, tuple(stock), tuple(parts))
    _check_widths(problem)
    return problem


def solve_boards(problem: Problem, stop: Stop | None = None) -> Solution:
    """Cut boards to length with the cheapest boards (the fewest, when all cost the same).

    A greedy plan, then every way to fill board after board while `stop` allows; small problems
    are proved. Boards with defects are left to `solve`.

    Parameters
    ----------
    problem
        As from `board_problem`.
    stop
        When to be content.

    Raises
    ------
    ProblemError
        When it is not a problem of lengths alone.
    """
    _check_widths(problem)
    stop = stop or Stop()
    if any(item.defects for item in problem.stock):
        return solve(problem, stop)
    sound, unplaced = sort_out(problem)
    if not sound.parts:
        return solution_of(problem, (), unplaced, Bound(0))
    bound = lower_bound(sound)
    search = BoardSearch(_task(sound, bound), stop.reached)
    boards = search.run(bound.value)
    if boards is not None and search.is_exhaustive:
        price = sum(search.task.kinds[board.kind].price for board in boards)
        bound = replace(bound, value=max(bound.value, price))
    trees = _trees(sound, search.fill_as_much() if boards is None else boards)
    return solution_of(problem, trees, unplaced, bound)


def _check_widths(problem: Problem) -> None:
    width = problem.stock[0].width
    faults = [
        Fault(f'stock "{item.id}"', "width", str(item.width), f"{width}, as the first board has")
        for item in problem.stock
        if item.width != width
    ]
    faults += [
        Fault(f'stock "{item.id}"', "trim", "along the length", "at the ends only")
        for item in problem.stock
        if item.usable_width != item.width
    ]
    faults += [
        Fault(f'part "{part.id}"', "width", str(part.width), f"{width}, the boards' width")
        for part in problem.parts
        if part.width != width
    ]
    faults += [
        Fault(f'part "{part.id}"', "rotate", "allowed", "forbidden for boards")
        for part in problem.parts
        if part.rotate
    ]
    if faults:
        raise ProblemError(faults)


def _task(problem: Problem, bound: Bound) -> BoardTask:
    kerf = problem.kerf
    kinds = tuple(
        Kind(item.usable_length + kerf, item.count, item.price if bound.measure == "price" else 1)
        for item in problem.stock
    )
    counts: dict[int, int] = {}
    for part in sorted(problem.parts, key=lambda part: -part.length):
        counts[part.length + kerf] = counts.get(part.length + kerf, 0) + part.count
    return BoardTask(kinds, tuple(counts), tuple(counts.values()))


def _trees(problem: Problem, boards: Sequence[UsedBoard]) -> tuple[SheetTree, ...]:
    """Longest pieces first on each board; like parts of a group are dealt side by side."""
    names: dict[int, list[tuple[str, int]]] = {}
    for part in sorted(problem.parts, key=lambda part: (-part.length, part.group or "")):
        copies = names.setdefault(part.length, [])
        copies += [(part.id, copy) for copy in range(1, part.count + 1)]
    dealt = {length: iter(copies) for length, copies in names.items()}
    trees = []
    for number, board in enumerate(boards):
        item = problem.stock[board.kind]
        pieces = [
            (length, next(dealt[length]))
            for length, count in zip(names, board.counts, strict=True)
            for _ in range(count)
        ]
        trees.append(SheetTree(number, item.id, _root(problem, item, pieces)))
    return tuple(trees)


def _root(
    problem: Problem, item: StockItem, pieces: Sequence[tuple[int, tuple[str, int]]]
) -> Node:
    at = item.trim.left
    cells = []
    for length, name in pieces:
        cells.append(Cell(at, at + length, partial(_piece, name)))
        at += length + problem.kerf
    whole = Rect(0, 0, item.length, item.width)
    return divide(whole, "x", cells, problem.kerf, problem.keep)


def _piece(name: tuple[str, int], rect: Rect) -> Leaf:
    return Leaf(rect, "part", *name)
