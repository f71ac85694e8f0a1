"""Whole boards out of a mix in fractions: fix the clearest fillings, mix the rest again."""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from casewright.cutting.board_bound import Worths
from casewright.cutting.board_draft import Draft
from casewright.cutting.board_greedy import fill_greedily
from casewright.cutting.board_master import SHARE
from casewright.cutting.board_mix import MixSearch
from casewright.cutting.board_search import BoardSearch
from casewright.cutting.board_task import UNCUT, UsedBoard

__all__ = ["Dive", "DiveRule", "dive_rules"]

_FEW_PIECES = 45
_FEW_TRIES = 400
_MOST_TRIES = 6_400
_PARTS = (4, 8, 16, 10_000)
_SKIPS = 4
_REOPENED = 6


@dataclass(frozen=True, slots=True)
class DiveRule:
    """How a dive chooses.

    Parameters
    ----------
    part
        Of the boards still to come, one in so many is fixed at a time.
    tries
        Fillings to try for the last few pieces.
    skipped
        Depth at which the clearest filling is passed over; None: nowhere.
    reopened
        How often to open boards again when the last few pieces do not come out.
    """

    part: int
    tries: int
    skipped: int | None = None
    reopened: int = 0


def dive_rules() -> Iterator[DiveRule]:
    """From the quickest to the most careful, then some that go astray on purpose; without end."""
    tries = _FEW_TRIES
    for part in _PARTS:
        yield DiveRule(part, tries)
    while True:
        tries = min(tries * 2, _MOST_TRIES)
        for skipped in range(_SKIPS):
            yield DiveRule(16, tries, skipped, _REOPENED)


@dataclass(frozen=True, slots=True)
class Dive:
    """One search for a cheaper plan.

    Parameters
    ----------
    search
        Mixes of the task.
    worths
        Of the whole task.
    rule
        How to choose.
    enough, below
        A price to be content with; only plans cheaper than `below` count.
    rng
        Draws the boards that are opened again when the last pieces do not come out.
    """

    search: MixSearch
    worths: Worths | None
    rule: DiveRule
    enough: int
    below: int
    rng: random.Random

    def run(self, is_over: Callable[[int], bool]) -> list[UsedBoard] | None:
        """The plan, if any; asks with the work done whether to give up."""
        task, depth = self.search.task, 0
        draft = Draft.of(task)
        while any(draft.left):
            mix = self.search.run(draft.left, draft.stock)
            if is_over(self.search.nodes):
                return None
            if draft.price + mix.bound >= self.below:
                return self._reopen(draft, is_over)
            if sum(draft.left) <= _FEW_PIECES:
                boards, is_all = self._finish(draft, mix.worths)
                if boards is not None:
                    return boards
                if is_all:
                    return self._reopen(draft, is_over)
            if not self._go_on(draft, depth):
                return None
            depth += 1
        return draft.boards

    def _finish(self, draft: Draft, worths: Worths | None) -> tuple[list[UsedBoard] | None, bool]:
        """All boards with the last few pieces, when found; and whether every way was tried."""
        tries = BoardSearch(self.search.task, worths, lambda nodes: nodes >= self.rule.tries)
        rest = tries.run(
            draft.left, draft.stock, self.enough - draft.price, self.below - draft.price
        )
        self.search.spend(tries.nodes)
        return None if rest is None else draft.boards + rest, tries.is_exhaustive

    def _reopen(self, draft: Draft, is_over: Callable[[int], bool]) -> list[UsedBoard] | None:
        """Open some boards again, drawn by lot, and try to finish with their pieces."""
        for _ in range(self.rule.reopened):
            if is_over(self.search.nodes):
                break
            pieces = self.rng.randint(_FEW_PIECES // 2, _FEW_PIECES)
            boards, _ = self._finish(draft.reopened(self.rng, pieces), self.worths)
            if boards is not None:
                return boards
        return None

    def _go_on(self, draft: Draft, depth: int) -> int:
        """Fix whole shares of the mix, or else the clearest; how many boards."""
        shares = self.search.master.shares()
        if self.search.task.uncut is None and any(one.kind == UNCUT for _, one in shares):
            return 0
        made = sum(draft.fix(filling, share // SHARE) for share, filling in shares)
        return made or self._fix_clearest(draft, shares, depth)

    def _fix_clearest(self, draft: Draft, shares: list[tuple[int, UsedBoard]], depth: int) -> int:
        """Fix the fillings with the greatest shares that do not want the same pieces."""
        shares = [one for one in shares if one[1].kind != UNCUT] or shares
        if depth == self.rule.skipped:
            shares = shares[1:] or shares
        most = max(1, sum(share for share, _ in shares) // SHARE // self.rule.part)
        made = 0
        for share, filling in shares:
            if made and (made >= most or share * 2 < SHARE):
                break
            if all(n <= m for n, m in zip(filling.counts, draft.left, strict=True)):
                made += draft.fix(filling, 1)
        if not made:
            rest = fill_greedily(draft.task, draft.left, draft.stock) or []
            made = sum(draft.fix(board, 1) for board in rest[:1])
        return made
