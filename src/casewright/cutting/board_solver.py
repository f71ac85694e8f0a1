"""The cheapest boards: plans at once, a bound, dives for the bound, every way in between."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from casewright.cutting.board_bound import length_bound, next_price
from casewright.cutting.board_greedy import fill_fully, fill_greedily
from casewright.cutting.board_search import BoardSearch
from casewright.cutting.board_task import BoardTask, UsedBoard

if TYPE_CHECKING:
    from casewright.cutting.board_mix import MixSearch

__all__ = ["BoardPlan", "plan_task"]

_MOST_LENGTHS = 2_000
_TRIES_A_DIVE = 2


@dataclass(frozen=True, slots=True)
class BoardPlan:
    """Boards that were found, None when the stock does not suffice; and what none can beat."""

    boards: list[UsedBoard] | None
    bound: int
    nodes: int


def _unseen(_: BoardPlan) -> None:
    """Nobody looks on."""


def plan_task(
    task: BoardTask,
    is_over: Callable[[int], bool],
    known: list[UsedBoard] | None = None,
    seed: int = 0,
    watch: Callable[[BoardPlan], None] = _unseen,
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
    seed
        Draws what is tried again.
    watch
        Called with every better plan.
    """
    bound = length_bound(task)
    boards = known
    for fill in (fill_greedily, fill_fully):
        if boards is not None and task.total(boards) == bound:
            break
        found = fill(task, task.counts, task.stock)
        if found is not None and (boards is None or task.total(found) < task.total(boards)):
            boards = found
    plan = BoardPlan(boards, bound, 0)
    if boards is not None:
        watch(plan)
    if len(task.sizes) > _MOST_LENGTHS or (boards is not None and task.total(boards) == bound):
        return plan
    return _improve(task, plan, is_over, random.Random(seed), watch)  # noqa: S311


def _improve(
    task: BoardTask,
    plan: BoardPlan,
    is_over: Callable[[int], bool],
    rng: random.Random,
    watch: Callable[[BoardPlan], None],
) -> BoardPlan:
    # NumPy and the linear solver take their time to load; most small plans do without them.
    from casewright.cutting.board_dive import Dive, dive_rules
    from casewright.cutting.board_mix import MixSearch

    boards = plan.boards
    search = MixSearch(task, is_over)
    for board in boards or ():
        search.master.add(board)
    mix = search.run(task.counts, task.stock)
    bound = max(plan.bound, mix.bound)
    below = _dearest(task) if boards is None else task.total(boards)
    for rule in dive_rules():
        if below <= bound or is_over(search.nodes):
            break
        found = Dive(search, mix.worths, rule, bound, below, rng).run(is_over)
        if found is None and not rule.skipped:
            every = BoardSearch(task, mix.worths, _limit(search, rule.tries, is_over))
            found = every.run(task.counts, task.stock, bound, below)
            search.spend(every.nodes)
            if every.is_exhaustive:
                bound = below if found is None else task.total(found)
        if found is not None:
            boards, below = found, task.total(found)
            watch(BoardPlan(boards, bound, search.nodes))
    return BoardPlan(boards, bound, search.nodes)


def _limit(search: MixSearch, tries: int, is_over: Callable[[int], bool]) -> Callable[[int], bool]:
    """To be asked by a search beside the mixes, which ends with them or after so many tries."""
    spent = search.nodes
    return lambda nodes: nodes >= tries * _TRIES_A_DIVE or is_over(spent + nodes)


def _dearest(task: BoardTask) -> int:
    """More than any plan costs."""
    return next_price(task, max(kind.price for kind in task.kinds) * sum(task.counts) + 1)
