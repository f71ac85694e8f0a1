"""Boards cut to length: the same problem in one dimension."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import repeat
from math import gcd
from typing import NamedTuple

from casewright.cutting.board_rooms import deal, stretches
from casewright.cutting.board_solver import BoardPlan, plan_task
from casewright.cutting.board_task import UNCUT, BoardTask, Counts, Kind, UsedBoard
from casewright.cutting.engine import Progress, Stop
from casewright.cutting.outcome import solution_of
from casewright.cutting.plain import Plain
from casewright.cutting.problem import Fault, PartDemand, Problem, ProblemError, StockItem
from casewright.cutting.solution import (
    Bound,
    Leaf,
    Measure,
    Node,
    Reason,
    Rect,
    SheetTree,
    Solution,
    Unplaced,
)
from casewright.cutting.tree import Cell, divide

__all__ = ["board_problem", "solve_boards"]


class _Pile(NamedTuple):
    """Items of the stock that are alike: same rooms, same price, all with an end or none."""

    kind: Kind
    items: list[StockItem]

    def each(self) -> Iterator[StockItem]:
        """The boards one by one."""
        for item in self.items:
            yield from repeat(item) if item.count is None else repeat(item, item.count)


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


def solve_boards(
    problem: Problem,
    stop: Stop | None = None,
    seed: int = 0,
    watch: Callable[[Progress], None] | None = None,
) -> Solution:
    """Cut boards to length with the cheapest boards (the fewest, when all cost the same).

    Most problems of a shop, and most of the published ones, are proved. When the boards do not
    suffice, pieces of the greatest length in all are cut from them and the rest are listed.
    Where a defect is narrower than the blade, the stretch beside it gives way by the difference,
    whatever lies on it; the bound does not count on that.

    Parameters
    ----------
    problem
        As from `board_problem`.
    stop
        When to be content; counted work, never the clock.
    seed
        Draws what is tried again.
    watch
        Called with every better plan.

    Returns
    -------
    The plan. The same problem, stop and seed give the same plan. It is proved, or it tells by its
    bound how much cheaper any plan could be at the most.

    Raises
    ------
    ProblemError
        When it is not a problem of lengths alone.

    Sources
    -------
    Gilmore and Gomory 1961, a linear programming approach to the cutting-stock problem.
    """
    _check_widths(problem)
    stop = stop or Stop()
    if problem.matches:
        plain = Plain(problem)

        def tell(made: Progress) -> None:
            if watch is not None:
                watch(Progress(plain.outer(made.solution), made.nodes))

        return plain.outer(solve_boards(plain.inner, stop, seed, tell))
    sound, unplaced = _sort_out(problem)
    if not sound.parts:
        return solution_of(problem, (), unplaced, Bound(0))
    measure: Measure = "price" if len({item.price for item in problem.stock}) > 1 else "sheets"
    piles = _piles(sound, measure)
    most: int | None = None
    if any(_is_narrow(item, problem.kerf) for item in sound.stock):
        most = plan_task(_task(sound, _piles(sound, measure, apart=False)), stop.reached).bound

    def solution(plan: BoardPlan) -> Solution:
        trees = _trees(sound, piles, sorted(plan.boards or (), key=_order))
        value = plan.bound if most is None else min(plan.bound, most)
        return solution_of(problem, trees, unplaced, Bound(value, measure=measure))

    def told(plan: BoardPlan) -> None:
        if watch is not None:
            watch(Progress(solution(plan), plan.nodes))

    return solution(_plan(_task(sound, piles), sound, stop, seed, told))


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
    faults += [
        Fault(f'match "{match.id}"', "way", "across", "along: boards are cut to length alone")
        for match in problem.matches
        if match.size({part.id: part for part in problem.parts}, 0)[1] > width
    ]
    if faults:
        raise ProblemError(faults)


def _sort_out(problem: Problem) -> tuple[Problem, tuple[Unplaced, ...]]:
    """The problem without the parts that no board can hold, and these with the reason."""
    there = tuple(item for item in problem.stock if item.count != 0)
    whole = [replace(item, defects=()) for item in problem.stock]
    reasons = (
        (_longest(whole), Reason.TOO_LARGE),
        (_longest(problem.stock), Reason.DEFECTS),
        (_longest(there), Reason.NO_STOCK),
    )
    sound: list[PartDemand] = []
    unplaced: list[Unplaced] = []
    for part in problem.parts:
        reason = next((why for length, why in reasons if part.length > length), None)
        if reason is None:
            sound.append(part)
        else:
            unplaced.append(Unplaced(part.id, part.count, reason))
    return replace(problem, stock=there or problem.stock, parts=tuple(sound)), tuple(unplaced)


def _longest(stock: Sequence[StockItem]) -> int:
    """The longest sound stretch of all."""
    return max((span.length for item in stock for span in stretches(item, 0)), default=0)


def _piles(problem: Problem, measure: Measure, *, apart: bool = True) -> tuple[_Pile, ...]:
    """Stock that is alike for who cuts it, without what no part fits in."""
    kerf, step = problem.kerf, _step(problem)
    shortest = min(part.length for part in problem.parts) + kerf
    alike: dict[tuple[bool, int, tuple[int, ...]], list[StockItem]] = {}
    for item in problem.stock:
        rooms = [span.length + kerf for span in stretches(item, kerf, apart=apart)]
        usable = sorted((room // step for room in rooms if room >= shortest), reverse=True)
        if usable:
            price = item.price if measure == "price" else 1
            alike.setdefault((item.count is None, price, tuple(usable)), []).append(item)
    return tuple(
        _Pile(Kind(rooms, None if endless else sum(i.count or 0 for i in items), price), items)
        for (endless, price, rooms), items in alike.items()
    )


def _task(problem: Problem, piles: Sequence[_Pile]) -> BoardTask:
    """Lengths grown by a kerf, in the coarsest step that tells them apart."""
    step = _step(problem)
    counts: dict[int, int] = {}
    for part in sorted(problem.parts, key=lambda part: -part.length):
        size = (part.length + problem.kerf) // step
        counts[size] = counts.get(size, 0) + part.count
    kinds = tuple(pile.kind for pile in piles)
    return BoardTask(kinds, tuple(counts), tuple(counts.values()))


def _step(problem: Problem) -> int:
    return gcd(*(part.length + problem.kerf for part in problem.parts))


def _plan(
    task: BoardTask,
    problem: Problem,
    stop: Stop,
    seed: int,
    watch: Callable[[BoardPlan], None],
) -> BoardPlan:
    """A plan for all pieces, or for the greatest length of them that the stock allows."""
    if _is_plenty(task):
        return plan_task(task, stop.reached, seed=seed, watch=watch)
    lengths = sorted({part.length for part in problem.parts}, reverse=True)
    free = tuple(replace(kind, price=0) for kind in task.kinds)
    all_or_uncut = replace(task, kinds=free, uncut=tuple(lengths))
    most = plan_task(all_or_uncut, lambda nodes: stop.reached(nodes * 2), seed=seed)
    boards = [board for board in most.boards or () if board.kind != UNCUT]
    if not boards:
        return BoardPlan([], 0, most.nodes)
    cut: Counts = tuple(map(sum, zip(*(board.counts for board in boards), strict=True)))
    return plan_task(
        replace(task, counts=cut),
        lambda nodes: stop.reached(most.nodes + nodes),
        boards,
        seed,
        watch,
    )


def _is_plenty(task: BoardTask) -> bool:
    """Whether boards without end hold even the longest piece."""
    return any(kind.count is None and max(kind.rooms) >= task.sizes[0] for kind in task.kinds)


def _is_narrow(item: StockItem, kerf: int) -> bool:
    return stretches(item, kerf) != stretches(item, kerf, apart=False)


def _order(board: UsedBoard) -> tuple[int, Counts]:
    """Boards of one stock together, and those that are cut alike."""
    return board.kind, tuple(-count for count in board.counts)


def _trees(
    problem: Problem, piles: Sequence[_Pile], boards: Sequence[UsedBoard]
) -> tuple[SheetTree, ...]:
    """Longest pieces first on each board; like parts of a group are dealt side by side."""
    names: dict[int, list[tuple[str, int]]] = {}
    for part in sorted(problem.parts, key=lambda part: (-part.length, part.group or "")):
        copies = names.setdefault(part.length, [])
        copies += [(part.id, copy) for copy in range(1, part.count + 1)]
    dealt = {length: iter(copies) for length, copies in names.items()}
    taken = [pile.each() for pile in piles]
    trees = []
    for number, board in enumerate(boards):
        item = next(taken[board.kind])
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
    spans = stretches(item, problem.kerf)
    cells = []
    for span, row in zip(
        spans, deal([length for length, _ in pieces], spans, problem.kerf), strict=True
    ):
        at = span.low
        for length, name in (pieces[index] for index in row):
            cells.append(Cell(at, at + length, partial(_piece, name)))
            at += length + problem.kerf
    whole = Rect(0, 0, item.length, item.width)
    return divide(whole, "x", cells, problem.kerf, problem.keep)


def _piece(name: tuple[str, int], rect: Rect) -> Leaf:
    return Leaf(rect, "part", *name)
