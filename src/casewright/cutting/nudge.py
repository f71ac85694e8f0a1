"""Small moves of a dimension that save a sheet or a setting."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from casewright.cutting.engine import Stop, solve
from casewright.cutting.problem import PartDemand, Problem
from casewright.cutting.solution import Solution

__all__ = ["Movable", "Nudge", "nudge"]

_MOST_TRIES = 24


@dataclass(frozen=True, slots=True)
class Movable:
    """A dimension that may move, such as the depth of the wall cases.

    Parameters
    ----------
    name
        Of the dimension.
    least, most
        How far it may move down (below 0) and up [unit].
    grows
        For each part whose size follows it, by its id: by how much its length and its width grow
        when the dimension grows by one [-].
    """

    name: str
    least: int
    most: int
    grows: Mapping[str, tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Nudge:
    """A move and what it saves.

    Parameters
    ----------
    name, by
        Of the dimension, and how far it moves [unit].
    saved
        Sheets, or money, in the measure of the plan's cost.
    settings
        Settings of fence and stop saved; below 0: that many more.
    solution
        The plan after the move.
    """

    name: str
    by: int
    saved: int
    settings: int
    solution: Solution


def nudge(
    problem: Problem, movables: tuple[Movable, ...], stop: Stop | None = None, seed: int = 0
) -> tuple[Nudge, ...]:
    """Find the least moves of each dimension that save a sheet, and one that saves settings.

    The farthest moves tell how many sheets can be saved, and halving the way finds how little is
    enough for each. Settings are looked for where something can change: at moves that let one
    more piece into the length or width of the stock, and such that make two sizes equal.

    Parameters
    ----------
    problem
        What is cut before any move.
    movables
        Dimensions, each moved alone.
    stop, seed
        As for `solve`, for each plan.

    Returns
    -------
    What was found, the most saved first: sheets, then settings, then the shorter move. Moves that
    leave parts without stock are not among them.
    """
    found: list[Nudge] = []
    for movable in movables:
        tries = _Tries(problem, movable, stop, seed)
        found += [*tries.cheaper(), *tries.calmer()]
    return tuple(sorted(found, key=lambda n: (-n.saved, -n.settings, abs(n.by), n.name)))


class _Tries:
    """Plans for moves of one dimension; each move is planned once."""

    def __init__(self, problem: Problem, movable: Movable, stop: Stop | None, seed: int) -> None:
        self.problem, self.movable, self.stop, self.seed = problem, movable, stop, seed
        self.now = solve(problem, stop, seed)
        self.known: dict[int, Nudge | None] = {}

    def move(self, by: int) -> Nudge | None:
        """What a move gives; None when a part would not be left, or without stock."""
        if by not in self.known:
            self.known[by] = self._plan(by)
        return self.known[by]

    def _plan(self, by: int) -> Nudge | None:
        moved = _moved(self.problem, self.movable, by)
        if moved is None:
            return None
        then = solve(moved, self.stop, self.seed)
        if len(then.unplaced) > len(self.now.unplaced):
            return None
        settings = len(self.now.cards) - len(then.cards)
        return Nudge(self.movable.name, by, self.now.cost - then.cost, settings, then)

    def _saved(self, by: int) -> int:
        found = self.move(by)
        return found.saved if found else 0

    def cheaper(self) -> Iterator[Nudge]:
        """For each number of sheets that can be saved the shortest move found for it."""
        best: dict[int, Nudge] = {}
        for limit in (self.movable.least, self.movable.most):
            for target in range(1, self._saved(limit) + 1):
                near, far = 0, limit
                while abs(far - near) > 1:
                    middle = (near + far) // 2
                    near, far = (near, middle) if self._saved(middle) >= target else (middle, far)
                found = self.move(far)
                if found and (target not in best or abs(far) < abs(best[target].by)):
                    best[target] = found
        yield from {nudge.by: nudge for nudge in best.values()}.values()

    def calmer(self) -> Iterator[Nudge]:
        """The shortest move that saves most settings and costs nothing."""
        tries = [self.move(by) for by in _moves(self.problem, self.movable)]
        calmer = [one for one in tries if one and one.saved == 0 and one.settings > 0]
        if calmer:
            yield min(calmer, key=lambda n: (-n.settings, abs(n.by)))


def _moves(problem: Problem, movable: Movable) -> list[int]:
    """Moves at which something can change, the shortest first."""
    sides = {(part.length, part.width) for part in problem.parts if part.id not in movable.grows}
    others = {side for pair in sides for side in pair}
    moves: set[int] = set()
    for part in problem.parts:
        for side, grows in _sides(part, movable):
            marks = {*others, *_shares(problem, side, abs(grows) * _reach(movable))}
            moves |= {_to(mark, side, grows) for mark in marks}
    allowed = [by for by in moves if by and movable.least <= by <= movable.most]
    return sorted(allowed, key=lambda by: (abs(by), by))[:_MOST_TRIES]


def _reach(movable: Movable) -> int:
    return max(abs(movable.least), abs(movable.most))


def _sides(part: PartDemand, movable: Movable) -> Iterator[tuple[int, int]]:
    """Sides of a part that follow the dimension, with how fast."""
    along, across = movable.grows.get(part.id, (0, 0))
    if along:
        yield part.length, along
    if across:
        yield part.width, across


def _shares(problem: Problem, side: int, reach: int) -> Iterator[int]:
    """The greatest sizes near a side of which so many fit into the stock."""
    for item in problem.stock:
        for whole in (item.usable_length, item.usable_width):
            ground = whole + problem.kerf
            high = max(1, side - reach + problem.kerf)
            for count in range(1, ground // high + 1):
                yield ground // count - problem.kerf


def _to(mark: int, side: int, grows: int) -> int:
    """The move that brings a side to a mark, or just short of it where it moves in steps."""
    step, over = divmod(mark - side, grows)
    return step if not over or grows > 0 else step + 1


def _moved(problem: Problem, movable: Movable, by: int) -> Problem | None:
    """The problem after a move; None when a part would be no larger than the blade."""
    parts = []
    for part in problem.parts:
        along, across = movable.grows.get(part.id, (0, 0))
        length, width = part.length + by * along, part.width + by * across
        if min(length, width) < max(1, problem.kerf):
            return None
        parts.append(replace(part, length=length, width=width))
    return replace(problem, parts=tuple(parts))
