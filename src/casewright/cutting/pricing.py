"""The most valuable way to cut one sheet in three stages, by dynamic programmes in whole numbers.

A row is filled with parts (each no oftener than wanted), a panel with rows, a sheet with panels;
rows and panels may repeat, so that no real sheet is worth more. What is found here is an upper
limit for every sheet, from which lower bounds on their number follow.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from casewright.cutting.shapes import Task

__all__ = ["Column", "Pricing"]

_Ints = npt.NDArray[np.int64]


class Column(NamedTuple):
    """A sheet: which stock, how many parts of each shape."""

    bin: int
    counts: tuple[int, ...]


class _Chunk(NamedTuple):
    """So many parts of one shape at once: their length along u, the row's least height."""

    shape: int
    pieces: int
    length: int
    height: int


class _Raster:
    """Where cuts can lie, and how the tables' cells hang together; the same for all values.

    Lengths that no sum of sizes gives need no cell: the next smaller sum does as well.
    """

    def __init__(self, task: Task) -> None:
        u, v = max(b.du for b in task.bins), max(b.dv for b in task.bins)
        self.task = task
        self.chunks = sorted(_chunks(task, u, v), key=lambda c: (c.height, c.shape, c.length))
        self.ends = np.array([c.height for c in self.chunks], np.int64)
        self.heights = np.unique(self.ends)
        self.us = _sums({c.length // c.pieces for c in self.chunks}, u)
        self.vs = _sums(self.heights.tolist(), v)
        self.below = np.searchsorted(self.vs, self.vs[:, None] - self.heights, "right") - 1
        self.before = [self.at_u(self.us[self.us >= c.length] - c.length) for c in self.chunks]

    @property
    def cells(self) -> int:
        """Cells of all tables."""
        return len(self.us) * (len(self.chunks) + len(self.vs) * len(self.heights))

    def at_u(self, length: _Ints) -> _Ints:
        """Cells of lengths along u."""
        return np.searchsorted(self.us, length, "right") - 1

    def rest(self, at: int, length: int) -> int:
        """The cell that is left of a cell when a length is taken off."""
        return int(np.searchsorted(self.us, self.us[at] - length, "right")) - 1

    def fitting(self, top: int) -> int:
        """How many of the heights a panel's extent has room for."""
        return int(np.searchsorted(self.heights, self.vs[top], "right"))


class Pricing:
    """The best sheets of one task, for whatever values of the parts.

    Parameters
    ----------
    task
        What is cut; defects are overlooked.
    """

    def __init__(self, task: Task) -> None:
        self._raster = _Raster(task)

    @property
    def cells(self) -> int:
        """How much work one call of `best` is."""
        return self._raster.cells

    def best(self, values: Sequence[int]) -> list[tuple[int, Column]]:
        """For each stock the value of its best sheet, and one that has it.

        Parameters
        ----------
        values
            Of one part of each shape; not negative.
        """
        tables = _Tables(self._raster, values)
        return [tables.sheet(index) for index in range(len(self._raster.task.bins))]


class _Tables:
    """The tables for one set of values."""

    def __init__(self, raster: _Raster, values: Sequence[int]) -> None:
        self.raster = raster
        self.values = values
        self.rows = self._fill_rows()
        self.panels = self._fill_panels()

    def _fill_rows(self) -> _Ints:
        """Value of the best row by height and length; a row of a height may hold lower parts."""
        p = self.raster
        rows = np.zeros((len(p.heights), len(p.us)), np.int64)
        row = rows[0].copy()
        self.stages = np.zeros((len(p.chunks) + 1, len(row)), np.int64)
        level = 0
        for stage, (chunk, before) in enumerate(zip(p.chunks, p.before, strict=True), 1):
            while p.heights[level] < chunk.height:
                rows[level] = row
                level += 1
            if len(before):
                value = chunk.pieces * self.values[chunk.shape]
                end = len(row) - len(before)
                row[end:] = np.maximum(row[end:], row[before] + value)
            self.stages[stage] = row
        rows[level:] = row
        return rows

    def _fill_panels(self) -> _Ints:
        """Value of the best panel by its extent along v and u."""
        p = self.raster
        panels = np.zeros((len(p.vs), len(p.us)), np.int64)
        for index in range(1, len(p.vs)):
            fitting = p.fitting(index)
            below = panels[p.below[index, :fitting]]
            below += self.rows[:fitting]
            np.max(below, axis=0, out=panels[index])
            np.maximum(panels[index], panels[index - 1], out=panels[index])
        return panels

    def sheet(self, index: int) -> tuple[int, Column]:
        """The best sheet of one stock."""
        p, b = self.raster, self.raster.task.bins[index]
        top = int(np.searchsorted(p.vs, b.dv, "right")) - 1
        end = int(np.searchsorted(p.us, b.du, "right")) - 1
        panel = self.panels[top]
        counts = [0] * len(self.values)
        if not p.task.panels:
            self._read_panel(top, end, counts)
            return int(panel[end]), Column(index, tuple(counts))
        wider = np.flatnonzero(np.diff(panel[: end + 1])) + 1
        sheet, last = np.zeros(end + 1, np.int64), np.zeros(end + 1, np.int64)
        for at in range(1, end + 1):
            widths = wider[: np.searchsorted(wider, at, "right")]
            rest = p.at_u(p.us[at] - p.us[widths])
            worth = panel[widths] + sheet[rest]
            sheet[at] = sheet[at - 1]
            if len(worth) and worth.max() > sheet[at]:
                best = int(np.argmax(worth))
                sheet[at], last[at] = worth[best], widths[best]
        at = end
        while at > 0:
            width = int(last[at])
            if width:
                self._read_panel(top, width, counts)
                at = p.rest(at, int(p.us[width]))
            else:
                at -= 1
        return int(sheet[end]), Column(index, tuple(counts))

    def _read_panel(self, top: int, width: int, counts: list[int]) -> None:
        panels, p = self.panels, self.raster
        while top > 0 and panels[top, width]:
            if panels[top, width] == panels[top - 1, width]:
                top -= 1
                continue
            fitting = p.fitting(top)
            worth = panels[p.below[top, :fitting], width] + self.rows[:fitting, width]
            level = int(np.argmax(worth))
            self._read_row(level, width, counts)
            top = int(p.below[top, level])

    def _read_row(self, level: int, width: int, counts: list[int]) -> None:
        p, at = self.raster, width
        stage = int(np.searchsorted(p.ends, p.heights[level], "right"))
        while changes := np.flatnonzero(np.diff(self.stages[: stage + 1, at])).tolist():
            stage = changes[-1]
            chunk = p.chunks[stage]
            counts[chunk.shape] += chunk.pieces
            at = p.rest(at, chunk.length)


def _chunks(task: Task, u: int, v: int) -> Iterator[_Chunk]:
    """One, two, four ... parts of a shape, and the rest: every number up to the wanted one."""
    for index, shape in enumerate(task.shapes):
        for du, dv in shape.sides:
            if du > u or dv > v:
                continue
            left, size = min(shape.count, u // du), 1
            while left:
                take = min(size, left)
                yield _Chunk(index, take, take * du, dv)
                left -= take
                size *= 2


def _sums(sizes: Iterable[int], most: int) -> _Ints:
    """All sums of sizes, each as often as wanted, up to a limit, ascending from 0."""
    found, mask = 1, (1 << most + 1) - 1
    for size in sorted(sizes):
        shift = size
        while shift <= most:
            found |= found << shift & mask
            shift *= 2
    return np.array([at for at in range(most + 1) if found >> at & 1], np.int64)
