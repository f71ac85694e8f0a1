"""What can be cut at all, and the solution that a set of cut trees amounts to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from casewright.cutting.bounds import lift, price_bound, sheet_bound
from casewright.cutting.cards import setting_cards
from casewright.cutting.frame import Frame, fits
from casewright.cutting.problem import PartDemand, Problem, StockItem
from casewright.cutting.solution import (
    Bound,
    Placement,
    Reason,
    SheetTree,
    Solution,
    Status,
    Unplaced,
    leaves,
)  # fmt: skip

__all__ = ["lower_bound", "solution_of", "sort_out"]


def lower_bound(problem: Problem) -> Bound:
    """What no plan for these parts can do without; every part must fit on some stock."""
    task = Frame(problem, "crosscut", panels=True).task()
    if _measure_is_price(problem):
        money = price_bound(task.bins, task.shapes, task.kerf)
        return Bound(lift(task.bins, money), measure="price")
    return Bound(sheet_bound(task.bins, task.shapes, task.kerf))


def sort_out(problem: Problem) -> tuple[Problem, tuple[Unplaced, ...]]:
    """The problem without the parts that no stock can hold, and these with the reason.

    Stock of which there is none is left out, unless there is no other.
    """
    stock = tuple(item for item in problem.stock if item.count != 0)
    sound: list[PartDemand] = []
    unplaced: list[Unplaced] = []
    for part in problem.parts:
        reason = _obstacle(problem, part)
        if reason is None and not _fits_any(stock, part, problem.kerf):
            reason = Reason.NO_STOCK
        if reason is None:
            sound.append(part)
        else:
            unplaced.append(Unplaced(part.id, part.count, reason))
    return replace(problem, stock=stock or problem.stock, parts=tuple(sound)), tuple(unplaced)


def solution_of(
    problem: Problem, trees: tuple[SheetTree, ...], unplaced: tuple[Unplaced, ...], bound: Bound
) -> Solution:
    """The solution that a set of cut trees amounts to; parts in none of them lack stock."""
    parts = {part.id: part for part in problem.parts}
    placements = tuple(
        Placement(
            leaf.part, leaf.copy, tree.sheet, leaf.rect,
            tuple(leaf.rect[2:]) != (parts[leaf.part].length, parts[leaf.part].width),
        )
        for tree in trees
        for leaf in leaves(tree.root)
        if leaf.use == "part"
    )  # fmt: skip
    prices = {item.id: item.price for item in problem.stock}
    cost = sum(prices[tree.stock] for tree in trees) if bound.measure == "price" else len(trees)
    short = _short(problem, placements, unplaced)
    status = Status.PROVED if cost == bound.value else Status.BOUNDED
    if any(entry.reason is Reason.NO_STOCK for entry in (*unplaced, *short)):
        status, bound = Status.SHORT, replace(bound, value=min(bound.value, cost))
    return Solution(
        placements, trees, setting_cards(trees), cost, bound, status, (*unplaced, *short)
    )


def _short(
    problem: Problem, placements: tuple[Placement, ...], unplaced: tuple[Unplaced, ...]
) -> tuple[Unplaced, ...]:
    left = {part.id: part.count for part in problem.parts}
    for entry in unplaced:
        left[entry.part] -= entry.count
    for placement in placements:
        left[placement.part] -= 1
    return tuple(Unplaced(part, count, Reason.NO_STOCK) for part, count in left.items() if count)


def _measure_is_price(problem: Problem) -> bool:
    return len({item.price for item in problem.stock}) > 1


def _fits_any(stock: Sequence[StockItem], part: PartDemand, kerf: int) -> bool:
    ways = (False, True) if part.rotate else (False,)
    return any(fits(item, part, kerf, turned=turned) for item in stock for turned in ways)


def _obstacle(problem: Problem, part: PartDemand) -> Reason | None:
    if _fits_any(problem.stock, part, problem.kerf):
        return None
    if _fits_any([replace(item, defects=()) for item in problem.stock], part, problem.kerf):
        return Reason.DEFECTS
    if _fits_any(problem.stock, replace(part, rotate=True), problem.kerf):
        return Reason.AGAINST_GRAIN
    return Reason.TOO_LARGE
