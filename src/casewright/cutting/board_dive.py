"""Whole boards out of a mix in fractions: fix the clearest fillings, mix the rest again."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from casewright.cutting.board_master import SHARE
from casewright.cutting.board_mix import MixSearch
from casewright.cutting.board_search import BoardSearch, Stock, fill_greedily
from casewright.cutting.board_task import UNCUT, BoardTask, Counts, UsedBoard, minus

__all__ = ["DiveRule", "dive", "dive_rules"]

_FEW_PIECES = 45
_FEW_TRIES = 400
_PARTS = (4, 8, 16, 10_000)
_SKIPS = 6


@dataclass(frozen=True, slots=True)
class DiveRule:
    """How a dive chooses.

    Parameters
    ----------
    part
        Of the boards still to come, one in so many is fixed at a time.
    skipped
        Depth at which the clearest filling is passed over; None: nowhere.
    """

    part: int
    skipped: int | None = None


def dive_rules() -> Iterator[DiveRule]:
    """From the quickest to the most careful, then some that go astray on purpose."""
    for part in _PARTS:
        yield DiveRule(part)
    for skipped in range(_SKIPS):
        yield DiveRule(16, skipped)


@dataclass(slots=True)
class _Dive:
    """A plan in the making: boards fixed, pieces and stock left, what it has cost."""

    task: BoardTask
    left: Counts
    stock: Stock
    boards: list[UsedBoard] = field(default_factory=list)
    price: int = 0

    def fix(self, filling: UsedBoard, times: int) -> int:
        """Cut so many boards by a filling, as far as pieces and stock go; how many were."""
        made = 0
        while made < times:
            counts = tuple(map(min, filling.counts, self.left))
            stock = None if filling.kind == UNCUT else self.stock[filling.kind]
            if stock == 0 or not any(counts):
                break
            board = UsedBoard(filling.kind, counts)
            self.boards.append(board)
            self.price += self.task.price(board)
            self.left = minus(self.left, counts)
            if stock is not None:
                k = filling.kind
                self.stock = (*self.stock[:k], stock - 1, *self.stock[k + 1 :])
            made += 1
        return made


def dive(
    search: MixSearch, rule: DiveRule, enough: int, below: int, is_over: Callable[[int], bool]
) -> list[UsedBoard] | None:
    """Look for a plan cheaper than `below`; content with one of price `enough`."""
    task = search.task
    plan = _Dive(task, task.counts, task.stock)
    depth = 0
    while any(plan.left):
        mix = search.run(plan.left, plan.stock)
        if plan.price + mix.bound >= below or is_over(search.nodes):
            return None
        if sum(plan.left) <= _FEW_PIECES:
            tries = BoardSearch(task, mix.worths, lambda nodes: nodes >= _FEW_TRIES)
            rest = tries.run(plan.left, plan.stock, enough - plan.price, below - plan.price)
            if rest is not None:
                return plan.boards + rest
            if tries.is_exhaustive:
                return None
        shares = search.master.shares()
        if task.uncut is None and any(filling.kind == UNCUT for _, filling in shares):
            return None
        made = sum(plan.fix(filling, share // SHARE) for share, filling in shares)
        if not made:
            made = _fix_clearest(plan, shares, rule, depth)
            depth += 1
        if not made:
            return None
    return plan.boards


def _fix_clearest(
    plan: _Dive, shares: list[tuple[int, UsedBoard]], rule: DiveRule, depth: int
) -> int:
    """Fix the fillings with the greatest shares that do not want the same pieces; how many."""
    shares = [one for one in shares if one[1].kind != UNCUT] or shares
    if depth == rule.skipped:
        shares = shares[1:] or shares
    boards = sum(share for share, _ in shares) // SHARE
    most = max(1, boards // rule.part)
    made = 0
    for share, filling in shares:
        if made and (made >= most or share * 2 < SHARE):
            break
        if all(n <= m for n, m in zip(filling.counts, plan.left, strict=True)):
            made += plan.fix(filling, 1)
    if not made:
        rest = fill_greedily(plan.task, plan.left, plan.stock) or []
        made = sum(plan.fix(board, 1) for board in rest[:1])
    return made
