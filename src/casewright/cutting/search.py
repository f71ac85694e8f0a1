"""A beam search plan by plan, for stock with defects and for numbers of any size.

Sheets are filled panel by panel, strip by strip, part by part. Every level lays one more part, so
the plans in the beam can be compared by what they have wasted.
"""

from __future__ import annotations

import random  # noqa: TID251 - seeded by the caller
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from heapq import nsmallest
from typing import NamedTuple

from casewright.cutting.shapes import Action, Bin, Found, Laid, Task, places, slide

__all__ = ["Search"]

_FINE = 1 << 40


class _Move(NamedTuple):
    shape: int
    du: int
    dv: int
    area: int


_Child = tuple[int, int, int, int, Action, int, int, int]
"""Score, placed area negated, place of the parent and of the move, action, u, v, bin: the least
is the best."""


@dataclass(slots=True)
class _State:
    """A partly filled sheet, and all before it.

    The last column begins at `side` and is filled up to `top`; `leads` tells whether it is the
    first of its strip. `last` and `onto` come before what may begin a column or lie in it.
    """

    bin: int
    u0: int
    u1: int
    v0: int
    v1: int
    u: int
    side: int
    top: int
    leads: bool
    grows: bool
    last: tuple[int, int] | None
    onto: tuple[int, int] | None
    closed: int
    placed: int
    price: int
    used: tuple[int, ...]
    left: tuple[int, ...]
    parent: _State | None
    laid: Laid | None

    def key(self) -> tuple[object, ...]:
        place = (self.bin, self.u0, self.u1, self.v0, self.v1, self.u, self.last)
        column = (self.side, self.top, self.leads, self.onto)
        return (*place, *column, self.left, self.used)

    def chain(self) -> tuple[Laid, ...]:
        laid: list[Laid] = []
        state: _State | None = self
        while state is not None and state.laid is not None:
            laid.append(state.laid)
            state = state.parent
        return tuple(reversed(laid))


class Search:
    """Beam searches over one task.

    Parameters
    ----------
    task
        What to cut.
    is_over
        Whether to give up; `nodes` counts the places tried so far.
    """

    guides = 1

    def __init__(self, task: Task, is_over: Callable[[], bool]) -> None:
        self.task = task
        self.nodes = 0
        self._is_over = is_over
        self._pieces = sum(s.count for s in task.shapes)
        area = sum(s.du * s.dv * s.count for s in task.shapes)
        if len(task.bins) == 1:
            self._rates = [1]
        else:
            self._rates = [b.price * _FINE // b.area for b in task.bins]
        self._par = min((rate for rate in self._rates if rate), default=1)
        self._mean = max(1, area // max(1, self._pieces)) * self._par

    def run(
        self,
        width: int,
        guide: int = 0,
        *,
        limit: int | None = None,
        seed: int | None = None,
        finish: bool = False,
    ) -> Found | None:
        """Fill sheets keeping the best `width` plans at every level.

        Parameters
        ----------
        width
            Plans kept.
        guide
            How half-made plans are compared, below `guides`.
        limit
            Price that no plan may pass; None: no limit.
        seed
            Breaks ties when given.
        finish
            Go on to the end whatever `is_over` says.

        Returns
        -------
        The cheapest full plan; a partial one when the stock ran out; None when nothing came
        within the limits.
        """
        moves = self._moves(seed)
        beam = [self._root()]
        for _ in range(self._pieces):
            children: list[_Child] = []
            for index, state in enumerate(beam):
                children += self._children(index, state, moves, limit)
                if not finish and self._is_over():
                    return None
            if not children:
                return self._best(beam, complete=False) if limit is None else None
            beam = self._select(children, beam, moves, width)
        return self._best(beam, complete=True)

    def _best(self, beam: list[_State], *, complete: bool) -> Found:
        best = min(beam, key=lambda s: (-s.placed, s.price))
        return Found(best.chain(), best.price, complete)

    def _moves(self, seed: int | None) -> list[_Move]:
        moves = [
            _Move(i, du, dv, du * dv)
            for i, shape in enumerate(self.task.shapes)
            for du, dv in shape.sides
        ]
        if seed is not None:
            random.Random(seed).shuffle(moves)  # noqa: S311 - for ties, not for secrets
        moves.sort(key=lambda m: -m.area)
        return moves

    def _root(self) -> _State:
        left = tuple(s.count for s in self.task.shapes)
        used = (0,) * len(self.task.bins)
        return _State(
            -1, 0, 0, 0, 0, 0, 0, 0, False, False, None, None, 0, 0, 0, used, left, None, None
        )  # fmt: skip

    def _children(
        self, index: int, s: _State, moves: list[_Move], limit: int | None
    ) -> list[_Child]:
        out: list[_Child] = []
        if s.bin >= 0:
            b, rate = self.task.bins[s.bin], self._rates[s.bin]
            row = (b.du if s.grows else s.u1) - s.u, s.v1 - s.v0
            onto = self._room(b, s)
            above = s.u1 - s.u0, b.dv - s.v1
            beside = b.du - s.u1 if self.task.panels else 0
            for m, move in enumerate(moves):
                shape, du, dv = move[:3]
                if not s.left[shape] or not (
                    (du <= row[0] and dv <= row[1])
                    or (du <= onto[0] and dv <= onto[1])
                    or (du <= above[0] and dv <= above[1])
                    or du <= beside
                ):
                    continue
                for action, u, v, consumed in self._openings(b, s, move):
                    score = self._score(s, move, s.closed + consumed * rate)
                    out.append((score, -s.placed - move.area, index, m, action, u, v, s.bin))
        self.nodes += len(out)
        return out or self._new_sheets(index, s, moves, limit)

    def _room(self, b: Bin, s: _State) -> tuple[int, int]:
        """How large a part may lie onto the last one; the first column may grow with it."""
        return (s.u - s.side, (b.dv if s.leads else s.v1) - s.top) if self.task.stacks else (0, 0)

    def _openings(self, b: Bin, s: _State, move: _Move) -> Iterator[tuple[Action, int, int, int]]:
        """Places on the sheet in work, each with the area used up once the part lies there."""
        du, dv = move.du, move.dv
        kerf, clear = self.task.kerf, not b.defects
        before, span = s.u0 * b.dv, s.u1 - s.u0
        key, room = (-dv, move.shape), self._room(b, s)
        depth = s.v1 if s.grows else s.v1 - s.v0
        before_strip = before if s.grows else before + span * s.v0
        if du <= room[0] and dv <= room[1] and (s.onto is None or key >= s.onto):
            u = s.side if clear else slide(b, s.side, s.top, (du, dv), kerf)
            if u + du <= s.u:
                used = (s.side - s.u0) * depth + (s.u - s.side) * (s.top + dv - s.v0)
                yield Action.ONTO_PART, u, s.top, before_strip + used
        if dv <= s.v1 - s.v0 and (s.last is None or key >= s.last):
            u = s.u if clear else slide(b, s.u, s.v0, (du, dv), kerf)
            if u + du <= (b.du if s.grows else s.u1):
                last = du * dv if self.task.stacks else du * depth
                yield Action.INTO_STRIP, u, s.v0, before_strip + (u - s.u0) * depth + last
        if du <= span and s.v1 + dv <= b.dv:
            for u, v in ((s.u0, s.v1),) if clear else places(b, (s.u0, s.v1), (du, dv), kerf):
                if u + du <= s.u1:
                    yield Action.NEW_STRIP, u, v, before + span * v + (u + du - s.u0) * dv
        if self.task.panels and s.u1 + du <= b.du and dv <= b.dv:
            for u, v in ((s.u1, 0),) if clear else places(b, (s.u1, 0), (du, dv), kerf):
                yield Action.NEW_PANEL, u, v, s.u1 * b.dv + (u + du - s.u1) * (v + dv)

    def _new_sheets(
        self, index: int, s: _State, moves: list[_Move], limit: int | None
    ) -> list[_Child]:
        out: list[_Child] = []
        closed = s.closed + (self.task.bins[s.bin].area * self._rates[s.bin] if s.bin >= 0 else 0)
        for i, b in enumerate(self.task.bins):
            gone = b.count is not None and s.used[i] >= b.count
            if gone or (limit is not None and s.price + b.price > limit):
                continue
            for m, move in enumerate(moves):
                if s.left[move.shape]:
                    for u, v in places(b, (0, 0), (move.du, move.dv), self.task.kerf):
                        used = (u + move.du) * (v + move.dv)
                        if not self.task.panels:
                            used = b.du * v + (u + move.du) * move.dv
                        score = self._score(s, move, closed + used * self._rates[i])
                        unplaced = -s.placed - move.area
                        out.append((score, unplaced, index, m, Action.NEW_SHEET, u, v, i))
        self.nodes += len(out)
        return out

    def _score(self, s: _State, move: _Move, value: int) -> int:
        """Waste for each unit of area placed."""
        placed = s.placed + move.area
        waste = value - placed * self._par + self._mean // 10
        return (waste << 20) // placed

    def _select(
        self, children: list[_Child], beam: list[_State], moves: list[_Move], width: int
    ) -> list[_State]:
        if width == 1:
            best = min(children)
            return [self._advance(beam[best[2]], best, moves[best[3]])]
        seen: set[tuple[object, ...]] = set()
        chosen: list[_State] = []
        for child in nsmallest(4 * width, children):
            state = self._advance(beam[child[2]], child, moves[child[3]])
            key = state.key()
            if key not in seen:
                seen.add(key)
                chosen.append(state)
            if len(chosen) == width:
                break
        return chosen

    def _advance(self, s: _State, child: _Child, move: _Move) -> _State:
        action, u, v, index = child[4:]
        u0, u1, v0, v1, grows = s.u0, s.u1, s.v0, s.v1, s.grows
        closed, price, used = s.closed, s.price, s.used
        last: tuple[int, int] | None = (-move.dv, move.shape)
        end, side, onto, leads = u + move.du, u, None, s.leads
        if action == Action.ONTO_PART:
            end, side, onto, last = s.u, s.side, last, None if leads else s.last
            v1 = max(v1, v + move.dv)
        elif action == Action.INTO_STRIP:
            u1 = max(u1, end) if grows else u1
            leads = False
        else:
            v0, v1, leads = v, v + move.dv, True
        if action == Action.NEW_STRIP:
            grows = False
        elif action == Action.NEW_PANEL:
            u0, u1, grows = s.u1, end, True
        elif action == Action.NEW_SHEET:
            b = self.task.bins[index]
            grows = self.task.panels
            u0, u1 = 0, end if grows else b.du
            price += b.price
            used = _with(used, index, 1)
            if s.bin >= 0:
                closed += self.task.bins[s.bin].area * self._rates[s.bin]
        laid = Laid(action, index, move.shape, u, v, move.du, move.dv)
        return _State(
            index, u0, u1, v0, v1, end, side, v + move.dv, leads, grows, last, onto, closed,
            s.placed + move.area, price, used, _with(s.left, move.shape, -1), s, laid,
        )  # fmt: skip


def _with(counts: tuple[int, ...], index: int, step: int) -> tuple[int, ...]:
    return (*counts[:index], counts[index] + step, *counts[index + 1 :])
