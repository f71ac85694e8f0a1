"""The optimisation model of an island: where it stands, how long it is, what it keeps clear of.

Every obstacle lies before one of its four sides, at least as far off as is asked for there. That
is a little more than the aisles ask for: what lies round a corner of it keeps clear as well.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.layout.island_tasks import (
    WAYS,
    IslandAnswer,
    IslandPose,
    IslandRow,
    IslandTask,
    TakenFloor,
)
from casewright.layout.programme import LayoutProgramme, ProgrammeSolution

__all__ = ["IslandDemand", "IslandModel", "lay_out_island"]

_LENGTH, _CENTRE, _OFF, _SHORT = 3, 8, 1, 10_000
"""Points for each step that it is shorter than it may be, for each half step off centre, for each
step farther off than it must be, and for each step that an aisle lacks. Own judgement, editable: a
long island first, before its window or range, near the run that it is worked with."""

_Terms = dict[int, int]


@dataclass(frozen=True, slots=True)
class IslandDemand:
    """What is insisted on beside the task, so that answers differ in kind.

    Parameters
    ----------
    on_centre
        True: its middle stands before what it is to stand before. False: that matters little.
    length
        As long as it may be, or as short.
    """

    on_centre: bool | None = None
    length: Literal["long", "short"] | None = None


class IslandModel:
    """The programme of one task in one pose.

    Parameters
    ----------
    soft
        Whether aisles may be short, at a high cost: to tell by how much.
    """

    def __init__(
        self, task: IslandTask, pose: IslandPose, demand: IslandDemand, *, soft: bool = False
    ) -> None:
        self.task, self.pose, self.demand = task, pose, demand
        self.programme = LayoutProgramme()
        along, out = task.reach
        low, high = (0, along) if task.along is None else (task.along, task.along)
        self.left = self.programme.number(low, high)
        first, last = self._near()
        self.near = self.programme.number(0 if soft else first, last, cost=_OFF)
        way = -1 if demand.length == "short" else 1
        self.boxes = self.programme.number(*task.length, cost=-_LENGTH * way)
        self.shares = [self._row(row) for row in task.rows]
        most = max(max(pair) for pair in pose.clear.values()) + max(along, out)
        self.short = {way: self.programme.number(0, most if soft else 0, cost=_SHORT)
                      for way in WAYS}  # fmt: skip
        if soft:
            self.programme.require({self.near: 1, self.short["near"]: 1}, low=first)
        self.centred: int | None = None

    def _near(self) -> tuple[int, int]:
        """Least and greatest distance from the wall."""
        off = self.task.off
        if off is None:
            return self.task.base, self.task.reach[1]
        return self.task.base + off[0], min(self.task.base + off[1], self.task.reach[1])

    def _row(self, row: IslandRow) -> int:
        """Given widths and equal shares make up the length of the boxes."""
        share = self.programme.number(row.low, row.high) if row.free else self._nothing()
        self.programme.require(
            {self.boxes: 1, share: -max(row.free, 1)}, low=row.given, high=row.given
        )
        return share

    def _nothing(self) -> int:
        return self.programme.number(0, 0)

    def _far_edges(self) -> tuple[tuple[_Terms, int], tuple[_Terms, int]]:
        """Its right and its far edge: terms, and a number on top."""
        right: _Terms = {self.left: 1}
        far: _Terms = {self.near: 1}
        (far if self.pose.is_turned else right)[self.boxes] = 1
        more, depth = self.task.more, self.task.depth
        return (right, depth if self.pose.is_turned else more), (
            far, more if self.pose.is_turned else depth,
        )  # fmt: skip

    def solved(self) -> ProgrammeSolution | None:
        """The solution of the programme."""
        (right, wide), (far, deep) = self._far_edges()
        along, out = self.task.reach
        self.programme.require(right, high=along - wide)
        self.programme.require(far, high=out - deep)
        for each in self.task.obstacles:
            self._kept_off(each)
        self._centre(right, wide)
        return self.programme.solve()

    def _kept_off(self, each: TakenFloor) -> None:
        (right, wide), (far, deep) = self._far_edges()
        choices = {}
        for way in WAYS:
            clear, short = self.task.wanted(self.pose, each, way), self.short[way]
            choice = self.programme.choice()
            choices[choice] = 1
            reach = 2 * max(*self.task.reach, abs(each.right), abs(each.far)) + 2 * clear + wide
            reach += deep + abs(each.left) + abs(each.near)
            if way == "near":
                terms, low = {self.near: 1}, each.far + clear
            elif way == "left":
                terms, low = {self.left: 1}, each.right + clear
            elif way == "far":
                terms, low = {key: -n for key, n in far.items()}, clear + deep - each.near
            else:
                terms, low = {key: -n for key, n in right.items()}, clear + wide - each.left
            self.programme.require_if(choice, {**terms, short: 1}, low=low, reach=reach)
            bare = low - max(clear, 0)  # short or not, nothing stands in another
            self.programme.require_if(choice, terms, low=bare, reach=reach)
        self.programme.require(choices, low=1)

    def _centre(self, right: _Terms, wide: int) -> None:
        centre = self.task.centre
        if centre is None:
            return
        terms = dict(right)
        terms[self.left] = 2
        cost = 1 if self.demand.on_centre is False else _CENTRE
        reach = 2 * self.task.reach[0] + abs(centre)
        off = self.programme.distance(terms, centre - wide, reach, cost=cost)
        if self.demand.on_centre:
            self.programme.require({off: 1}, high=1)

    def read(self, solved: ProgrammeSolution) -> IslandAnswer:
        """The answer that a solution means, with what it costs where nothing is insisted on."""
        values, task = solved.values, self.task
        shares = tuple(
            values[share] if row.free else 0
            for share, row in zip(self.shares, task.rows, strict=True)
        )
        short = tuple((way, values[at]) for way, at in self.short.items() if values[at])
        left, near, boxes = (values[at] for at in (self.left, self.near, self.boxes))
        cost = self._cost(left, near, boxes)
        plain = self.demand == IslandDemand() and not short
        known = solved.bound + _LENGTH * task.length[1] - _OFF * self._near()[0]
        if plain and cost != solved.cost + _LENGTH * task.length[1] - _OFF * self._near()[0]:
            msg = f"the model's cost has another meaning than {cost}"
            raise ValueError(msg)
        return IslandAnswer(
            task, self.pose, left, near, boxes, shares, cost, known if plain else 0, short
        )

    def _cost(self, left: int, near: int, boxes: int) -> int:
        """By the meaning of the preferences [points]."""
        task = self.task
        wide = task.depth if self.pose.is_turned else boxes + task.more
        off = 0 if task.centre is None else abs(2 * left + wide - task.centre)
        return _LENGTH * (task.length[1] - boxes) + _CENTRE * off + _OFF * (near - self._near()[0])


def lay_out_island(
    task: IslandTask, pose: IslandPose, demand: IslandDemand | None = None, *, soft: bool = False
) -> IslandAnswer | None:
    """The best answer in one pose; None when nothing fits."""
    model = IslandModel(task, pose, demand or IslandDemand(), soft=soft)
    found = model.solved()
    return None if found is None else model.read(found)
