"""The cheapest boards: a greedy plan, a bound, dives for the bound, then every way."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from casewright.cutting.board_bound import length_bound, next_price
from casewright.cutting.board_search import BoardSearch, fill_greedily
from casewright.cutting.board_task import BoardTask, UsedBoard

__all__ = ["BoardPlan", "plan_task"]

_MOST_LENGTHS = 2_000


@dataclass(frozen=True, slots=True)
class BoardPlan:
    """Boards that were found, None when the stock does not suffice; and what none can beat."""

    boards: list[UsedBoard] | None
    bound: int
    nodes: int


def plan_task(
    task: BoardTask, is_over: Callable[[int], bool], known: list[UsedBoard] | None = None
) -> BoardPlan:
    """Cut every piece from the cheapest boards.

    Parameters
    ----------
    task
        What to cut.
    is_over
        Asked with the work done; says whether to be content.
    known
        Boards that give every piece.
    """
    boards = fill_greedily(task, task.counts, task.stock)
    if known is not None and (boards is None or task.total(known) < task.total(boards)):
        boards = known
    bound = length_bound(task)
    if boards is not None and task.total(boards) == bound:
        return BoardPlan(boards, bound, 0)
    if len(task.sizes) > _MOST_LENGTHS:
        return BoardPlan(boards, bound, 0)
    return _improve(task, boards, bound, is_over)


def _improve(
    task: BoardTask, boards: list[UsedBoard] | None, bound: int, is_over: Callable[[int], bool]
) -> BoardPlan:
    # NumPy and the linear solver take their time to load; most small plans do without them.
    from casewright.cutting.board_dive import dive, dive_rules
    from casewright.cutting.board_mix import MixSearch

    search = MixSearch(task, is_over)
    for board in boards or ():
        search.master.add(board)
    mix = search.run(task.counts, task.stock)
    bound = max(bound, mix.bound)
    below = _dearest(task) if boards is None else task.total(boards)
    for rule in dive_rules():
        if below <= bound or is_over(search.nodes):
            break
        found = dive(search, rule, bound, below, is_over)
        if found is not None and task.total(found) < below:
            boards, below = found, task.total(found)
    nodes = search.nodes
    if below > bound:
        every = BoardSearch(task, mix.worths, lambda tried: is_over(nodes + tried))
        found = every.run(task.counts, task.stock, bound, below)
        boards = boards if found is None else found
        if every.is_exhaustive and boards is not None:
            bound = task.total(boards)
        nodes += every.nodes
    return BoardPlan(boards, bound, nodes)


def _dearest(task: BoardTask) -> int:
    """More than any plan costs."""
    return next_price(task, max(kind.price for kind in task.kinds) * sum(task.counts) + 1)
