"""What the search works on: bins, shapes and places, in the frame of the first cut.

u runs across the first cuts (panels follow each other along u), v along them (strips of a panel
follow each other along v). Sizes are grown by one kerf, so that rectangles may touch and the kerf
needs no further thought.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum
from typing import NamedTuple

__all__ = [
    "Action", "Bin", "Found", "Laid", "Shape", "Task", "TaskPart", "places", "slide", "task_part",
]  # fmt: skip


class Action(IntEnum):
    """Where the next part goes; the more it opens, the greater."""

    ONTO_PART = 0
    INTO_STRIP = 1
    NEW_STRIP = 2
    NEW_PANEL = 3
    NEW_SHEET = 4


@dataclass(frozen=True, slots=True)
class Bin:
    """One kind of stock: usable size grown by a kerf, defects as (u0, v0, u1, v1)."""

    index: int
    du: int
    dv: int
    price: int = 1
    count: int | None = None
    defects: tuple[tuple[int, int, int, int], ...] = ()

    @property
    def area(self) -> int:
        """Area grown by a kerf [unit squared]."""
        return self.du * self.dv


@dataclass(frozen=True, slots=True)
class Shape:
    """One size of part: its sides along u and v grown by a kerf; `rotate`: either way round."""

    du: int
    dv: int
    count: int
    rotate: bool

    @property
    def sides(self) -> tuple[tuple[int, int], ...]:
        """The sizes along u and v it may be cut in."""
        if self.rotate and self.du != self.dv:
            return (self.du, self.dv), (self.dv, self.du)
        return ((self.du, self.dv),)


@dataclass(frozen=True, slots=True)
class Task:
    """Shapes to cut from bins.

    `panels` says whether sheets may be split into panels first, `stacks` whether parts may lie
    onto each other within a strip, which takes one stage more.
    """

    bins: tuple[Bin, ...]
    shapes: tuple[Shape, ...]
    kerf: int
    panels: bool
    stacks: bool = False


class Laid(NamedTuple):
    """A part put down: how, in which bin, which shape, its low corner and its grown size."""

    action: Action
    bin: int
    shape: int
    u: int
    v: int
    du: int
    dv: int


class Found(NamedTuple):
    """A plan: parts in the order laid, price of its sheets, whether all parts are in it."""

    laid: tuple[Laid, ...]
    price: int
    complete: bool


class TaskPart(NamedTuple):
    """A part of a task, and what its bins and shapes are in the whole."""

    task: Task
    bins: tuple[int, ...]
    shapes: tuple[int, ...]

    def laid(self, found: Found) -> Iterator[Laid]:
        """The parts of a plan, told of the whole task."""
        for one in found.laid:
            yield one._replace(bin=self.bins[one.bin], shape=self.shapes[one.shape])


def task_part(task: Task, counts: Sequence[int], stock: Sequence[int | None]) -> TaskPart | None:
    """So many of each shape from so much of each bin; None where there is nothing of either."""
    kinds = tuple(n for n, count in enumerate(stock) if count != 0)
    shapes = tuple(n for n, count in enumerate(counts) if count)
    if not kinds or not shapes:
        return None
    bins = tuple(replace(task.bins[n], index=i, count=stock[n]) for i, n in enumerate(kinds))
    few = tuple(replace(task.shapes[n], count=counts[n]) for n in shapes)
    return TaskPart(replace(task, bins=bins, shapes=few), kinds, shapes)


def slide(b: Bin, u: int, v: int, size: tuple[int, int], kerf: int) -> int:
    """The lowest place along u, from `u` on, where the part is clear of every defect."""
    du, dv = size
    moved = True
    while moved:
        moved = False
        for u0, v0, u1, v1 in b.defects:
            if u0 < u + du - kerf and u < u1 and v0 < v + dv - kerf and v < v1:
                u = max(u1, u + kerf)
                moved = True
    return u


def places(
    b: Bin, start: tuple[int, int], size: tuple[int, int], kerf: int
) -> Iterator[tuple[int, int]]:
    """Where the first part of a strip may lie at or beyond `start`, clear of defects."""
    u, v = start
    rows = [v, *sorted({max(top, v + kerf) for *_, top in b.defects if top > v})]
    for row in rows:
        if row + size[1] <= b.dv:
            at = slide(b, u, row, size, kerf)
            if at + size[0] <= b.du:
                yield at, row
