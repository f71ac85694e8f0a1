"""The order of cuts: every setting made as few times as can be, like parts in one of them."""

from __future__ import annotations

import heapq
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from casewright.cutting.methods import Method
from casewright.cutting.problem import Problem
from casewright.cutting.rates import Rates
from casewright.cutting.sawing import Job
from casewright.cutting.solution import Leaf

__all__ = ["order_cuts"]

_RANK: dict[Method, int] = {"straightedge": 0, "fence": 1, "carrier": 2, "sled": 3}

_GUIDE = 0
"""Rank of the straightedge, which is laid anew for each cut and keeps no saw set."""

_MOST = 100_000
"""Blocks handled in looking ahead, after which the order is made without."""

_AT_ONCE = 600_000
"""Blocks that one look ahead may handle: thousands of parts of different sizes take more."""

_Key = tuple[int, int]
"""Rank of the method, and the setting below zero: wide before narrow."""


class _Run(NamedTuple):
    """Blocks done one after the other at one setting."""

    key: _Key
    blocks: list[int]


_Rule = Callable[["_State"], _Key]


def order_cuts(problem: Problem, jobs: Sequence[Job]) -> list[int]:
    """Put cuts into an order in which each comes after the cut that gives its piece.

    Straightedges are laid as soon as there is something to lay them on. A setting whose pieces
    are all in hand is made, fences from wide to narrow, then stops from long to short. Where none
    is complete, one must be made twice: looking ahead to the end tells which.

    Parameters
    ----------
    problem
        What is cut; parts of a group should get their sizes at one setting.
    jobs
        The cuts, each after the cut that gives its piece.

    Returns
    -------
    Places in `jobs`.

    Sources
    -------
    Bertsekas, Tsitsiklis and Wu 1997, rollout algorithms for combinatorial optimization.
    """
    blocks = _Blocks(problem, jobs)
    return [job for run in blocks.best() for block in run.blocks for job in blocks.jobs[block]]


@dataclass(slots=True)
class _State:
    """Blocks in hand and still to come by their setting, and what was done.

    `complete` holds the settings of which all is in hand, `guides` blocks for the straightedge.
    """

    ready: dict[_Key, list[int]] = field(default_factory=dict)
    to_come: dict[_Key, int] = field(default_factory=dict)
    complete: list[_Key] = field(default_factory=list)
    guides: list[tuple[int, int, int]] = field(default_factory=list)
    runs: list[_Run] = field(default_factory=list)

    def copy(self) -> _State:
        """A copy of a state in which nothing is complete."""
        ready = {key: list(blocks) for key, blocks in self.ready.items()}
        return _State(ready, dict(self.to_come), runs=list(self.runs))


class _Blocks:
    """Cuts that follow each other on one piece at one setting, as one."""

    def __init__(self, problem: Problem, jobs: Sequence[Job]) -> None:
        self.jobs: list[list[int]] = []
        self.keys: list[_Key] = []
        self.after: list[list[int]] = []
        self._first: list[int] = []
        self._sheets: list[int] = []
        self._handled = 0
        block: list[int] = []
        for index, job in enumerate(jobs):
            key = _RANK[job.method], -job.setting
            parent = None if job.before is None else block[job.before]
            if parent is not None and key == self.keys[parent] and key[0] != _GUIDE:
                block.append(parent)
                self.jobs[parent].append(index)
                continue
            number = len(self.jobs)
            (self._first if parent is None else self.after[parent]).append(number)
            block.append(number)
            self.jobs.append([index])
            self.keys.append(key)
            self.after.append([])
            self._sheets.append(job.sheet)
        self._parts = list(_grouped(problem, jobs, block))

    def best(self) -> list[_Run]:
        """The best order found."""
        state = _State(to_come=dict(Counter(self.keys)))
        self._open(state, self._first)
        best: tuple[int, list[_Run]] | None = None
        while self._go_on(state) and self._handled < _MOST and self._may_look(state):
            key, some, cost, runs = min(self._looks(state), key=lambda look: look[2])
            if best is None or cost < best[0]:
                best = cost, runs
            self._take(state, key, some=some)
        self._go_on(state, _fullest)
        return state.runs if best is None or self._cost(state.runs) <= best[0] else best[1]

    def _may_look(self, state: _State) -> bool:
        """Whether looking once does not take too long: each setting is tried in four ways."""
        return 4 * len(state.ready) * len(self.keys) <= _AT_ONCE

    def _looks(self, state: _State) -> Iterator[tuple[_Key, bool, int, list[_Run]]]:
        """For each setting that may be made now, of all or of what is cut further: the end."""
        for key in sorted(state.ready):
            leads = [bool(self.after[block]) for block in state.ready[key]]
            for some in {False, any(leads) and not all(leads)}:
                for rule in (_widest, _fullest):
                    end = state.copy()
                    self._take(end, key, some=some)
                    self._go_on(end, rule)
                    self._handled += len(self.keys)
                    yield key, some, self._cost(end.runs), end.runs

    def _go_on(self, state: _State, rule: _Rule | None = None) -> bool:
        """Do all that is complete, and with a rule the rest too; whether something is left."""
        while True:
            if state.guides:
                block = heapq.heappop(state.guides)[2]
                state.runs.append(_Run(self.keys[block], [block]))
                self._open(state, self.after[block])
            elif state.complete:
                self._take(state, heapq.heappop(state.complete))
            elif state.ready and rule is not None:
                self._take(state, rule(state))
            else:
                return bool(state.ready)

    def _take(self, state: _State, key: _Key, *, some: bool = False) -> None:
        """Do what is in hand of a setting; only `some`: what is cut further."""
        blocks = state.ready.pop(key)
        if some:
            state.ready[key] = [block for block in blocks if not self.after[block]]
            blocks = [block for block in blocks if self.after[block]]
        state.to_come[key] -= len(blocks)
        state.runs.append(_Run(key, blocks))
        for block in blocks:
            self._open(state, self.after[block])

    def _open(self, state: _State, blocks: Sequence[int]) -> None:
        for block in blocks:
            key = self.keys[block]
            if key[0] == _GUIDE:
                heapq.heappush(state.guides, (self._sheets[block], key[1], block))
                continue
            ready = state.ready.setdefault(key, [])
            ready.append(block)
            if len(ready) == state.to_come[key]:
                heapq.heappush(state.complete, key)

    def _cost(self, runs: Sequence[_Run]) -> int:
        """What the settings cost, and parts of a group spread over several, at usual rates."""
        rates = Rates()
        at = [0] * len(self.keys)
        cost = number = 0
        last: _Key | None = None
        for number, (key, blocks) in enumerate(runs, 1):
            if key[0] != _GUIDE and key != last:
                cost += rates.stop if key[0] == _RANK["sled"] else rates.fence
            last = key
            for block in blocks:
                at[block] = number
        ways: dict[int, set[tuple[int, ...]]] = {}
        for kind, way in self._parts:
            ways.setdefault(kind, set()).add(tuple(at[block] for block in way))
        return cost + rates.split_group * sum(len(found) - 1 for found in ways.values())


def _widest(state: _State) -> _Key:
    return min(state.ready)


def _fullest(state: _State) -> _Key:
    """The setting of which the least is still to come."""
    return min(state.ready, key=lambda key: (state.to_come[key] - len(state.ready[key]), key))


def _grouped(
    problem: Problem, jobs: Sequence[Job], block: Sequence[int]
) -> Iterator[tuple[int, tuple[int, ...]]]:
    """For each part of a group its kind, and the blocks of the last cuts along and across."""
    group = {
        part.id: (part.group, part.length, part.width) for part in problem.parts if part.group
    }
    kinds: dict[tuple[str | None, int, int], int] = {}
    ways: list[dict[str, int]] = []
    for index, job in enumerate(jobs):
        before = {} if job.before is None else ways[job.before]
        ways.append({**before, job.direction: block[index]})
        for side in (job.low, job.high):
            if isinstance(side, Leaf) and side.use == "part" and side.part in group:
                kind = kinds.setdefault(group[side.part], len(kinds))
                yield kind, tuple(way for _, way in sorted(ways[index].items()))
