"""The most valuable way to cut one sheet in three stages, by dynamic programmes in whole numbers.

A row is filled with parts, a panel with rows, a sheet with panels. The highest part of a row leads
it, and the highest row a panel: no part leads oftener than it is wanted, nor lies in a row oftener
than that. What follows a leader may repeat from row to row, so that no real sheet is worth more.
What is found here is an upper limit for every sheet, from which lower bounds follow.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from casewright.cutting.shapes import Task

__all__ = ["Column", "Pricing"]

_Ints = npt.NDArray[np.int64]

_NONE = -(1 << 60)
"""Value of what cannot be."""

_MATRIX = 2_000
"""Most cells for which what is left of each by each is held in one table."""

_BLOCK = 64
"""Widths of a panel that are tried at once."""

_AT_HAND = 150_000
"""Cells of panels that are filled at once: so many stay near the processor (measured)."""


class _GivenUpError(Exception):
    """Someone wants to wait no longer."""


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

    Lengths that no sum of sizes gives need no cell: the next smaller sum does as well. Chunks of
    one height make a level, lowest first; `rows` tells how many rows of a panel each may lead,
    `panels` how many panels of a sheet.
    """

    def __init__(self, task: Task) -> None:
        u, v = max(b.du for b in task.bins), max(b.dv for b in task.bins)
        self.task = task
        self.chunks = sorted(_chunks(task, u, v), key=lambda c: (c.height, c.shape, c.length))
        ends = np.array([c.height for c in self.chunks], np.int64)
        self.heights: list[int] = np.unique(ends).tolist()
        self.starts = np.searchsorted(ends, [*self.heights, v + 1]).tolist()
        self.us = _sums({c.length // c.pieces for c in self.chunks}, u)
        self.vs = _sums(self.heights, v)
        wanted: Counter[int] = Counter()
        shortest: dict[int, int] = {}
        for shape in task.shapes:
            for du, dv in shape.sides:
                wanted[dv] += shape.count
                shortest[dv] = min(du, shortest.get(dv, du))
        self.rows = [min(v // height, wanted[height]) for height in self.heights]
        self.panels = [min(u // shortest[height], wanted[height]) for height in self.heights]

    @cached_property
    def before(self) -> list[_Ints]:
        """For each chunk the cells left when its length is taken off, where it can be."""
        return [self.at_u(self.us[self.us >= c.length] - c.length) for c in self.chunks]

    @property
    def cells(self) -> int:
        """Cells of all tables."""
        return len(self.us) * (2 * len(self.chunks) + len(self.vs) * int(sum(self.rows)))

    def at_u(self, length: _Ints) -> _Ints:
        """Cells of lengths along u; -1 for less than nothing."""
        return np.searchsorted(self.us, length, "right") - 1

    @cached_property
    def _rests(self) -> npt.NDArray[np.int32]:
        """The cell left of each cell, a column each, when one, a row each, is taken off; or -1."""
        return self.at_u(self.us[None, :] - self.us[:, None]).astype(np.int32)

    def rests(self, off: _Ints, start: int, end: int) -> npt.NDArray[np.int32]:
        """The cells left of the cells from start to end when others are taken off; or -1."""
        if len(self.us) <= _MATRIX:
            return self._rests[off, start:end]
        return self.at_u(self.us[None, start:end] - self.us[off][:, None]).astype(np.int32)

    def rest(self, at: int, length: int) -> int:
        """The cell that is left of a cell when a length is taken off."""
        return int(np.searchsorted(self.us, self.us[at] - length, "right")) - 1

    @cached_property
    def below(self) -> list[list[_Ints]]:
        """For each height, taken off a panel once, twice ...: the cells left, where it can be."""
        return [
            [
                np.searchsorted(self.vs, self.vs[self.vs >= off] - off, "right") - 1
                for off in range(height, height * most + 1, height)
            ]
            for height, most in zip(self.heights, self.rows, strict=True)
        ]


class Pricing:
    """The best sheets of one task, for whatever values of the parts.

    Parameters
    ----------
    task
        What is cut; defects are overlooked.
    is_over
        Whether to give up; asked now and then, as large tables take their time.
    """

    def __init__(self, task: Task, is_over: Callable[[], bool] = lambda: False) -> None:
        self._raster = _Raster(task)
        self._is_over = is_over

    @property
    def cells(self) -> int:
        """How much work one call of `best` is."""
        return self._raster.cells

    def best(self, values: Sequence[int]) -> list[tuple[int, Column]]:
        """For each stock the value of its best sheet, and one that has it; nothing if given up.

        Parameters
        ----------
        values
            Of one part of each shape; not negative.
        """
        try:
            tables = _Tables(self._raster, values, self._is_over)
            return [tables.sheet(index) for index in range(len(self._raster.task.bins))]
        except _GivenUpError:
            return []


class _Tables:
    """The tables for one set of values."""

    def __init__(
        self, raster: _Raster, values: Sequence[int], is_over: Callable[[], bool]
    ) -> None:
        self.raster = raster
        self.values = values
        self._is_over = is_over
        shape = (len(raster.chunks) + 1, len(raster.us))
        self.plain = np.zeros(shape, np.int64)
        self.led = np.full(shape, _NONE, np.int64)
        self._fill_rows()
        tops = {int(np.searchsorted(raster.vs, b.dv, "right")) - 1 for b in raster.task.bins}
        self.panels = self._fill_panels(sorted(tops))

    def _fill_rows(self) -> None:
        """Values of the best rows by length, chunk after chunk.

        `plain` holds rows of the chunks so far, `led` rows with at least one of the level.
        """
        p, start = self.raster, 0
        for stage, (chunk, before) in enumerate(zip(p.chunks, p.before, strict=True), 1):
            if p.chunks[start].height < chunk.height:
                start = stage - 1
            plain, led = self.plain[stage], self.led[stage]
            plain[:] = self.plain[stage - 1]
            if start < stage - 1:
                led[:] = self.led[stage - 1]
            if len(before):
                value = chunk.pieces * self.values[chunk.shape]
                end = len(plain) - len(before)
                with_more = self.plain[stage - 1][before] + value
                np.maximum(plain[end:], with_more, out=plain[end:])
                base = np.maximum(led, self.plain[start])[before] + value
                np.maximum(led[end:], base, out=led[end:])

    def _look_up(self) -> None:
        if self._is_over():
            raise _GivenUpError

    def row(self, level: int) -> _Ints:
        """Values of the best rows led by parts of one height, by length."""
        led: _Ints = self.led[self.raster.starts[level + 1]]
        return led

    def _fill_panels(self, tops: Sequence[int]) -> dict[int, _Ints]:
        """Values of the best panels of some extents along v.

        By the level of their highest row and by their length.
        """
        p = self.raster
        found = {top: np.full((len(p.heights), len(p.us)), _NONE, np.int64) for top in tops}
        wide = max(1, _AT_HAND // len(p.vs))
        for left in range(0, len(p.us), wide):
            self._fill_lengths(slice(left, left + wide), found)
        return found

    def _fill_lengths(self, lengths: slice, found: Mapping[int, _Ints]) -> None:
        """Values of the best panels of some lengths, which hang on no others."""
        p = self.raster
        panels = np.zeros((len(p.vs), len(p.us[lengths])), np.int64)
        for level, cells in enumerate(p.below):
            self._look_up()
            lower, row = panels, self.row(level)[lengths]
            first = int(np.searchsorted(row, 0))  # a row that fits somewhere fits further on
            row, panels = row[first:], lower.copy()
            for count, below in enumerate(cells, 1):
                start = len(p.vs) - len(below)
                higher = lower[below, first:]
                higher += count * row
                np.maximum(panels[start:, first:], higher, out=panels[start:, first:])
                for top, its in found.items():
                    if top >= start:
                        own = its[level, lengths][first:]
                        np.maximum(own, higher[top - start], out=own)

    def sheet(self, index: int) -> tuple[int, Column]:
        """The best sheet of one stock."""
        p, b = self.raster, self.raster.task.bins[index]
        top = int(np.searchsorted(p.vs, b.dv, "right")) - 1
        end = int(np.searchsorted(p.us, b.du, "right")) - 1
        counts = [0] * len(self.values)
        panels = self.panels[top]
        if not p.task.panels:
            level = int(np.argmax(panels[:, end]))
            if panels[level, end] > 0:
                self._read_panel(top, level, end, counts)
            return max(0, int(panels[level, end])), Column(index, tuple(counts))
        sheet = np.zeros(end + 1, np.int64)
        steps: list[tuple[int, _Ints, _Ints, _Ints]] = []
        for level, most in enumerate(p.panels):
            widths, values = _rises(panels[level, : end + 1])
            for _ in range(most if len(widths) else 0):
                self._look_up()
                longer = self._add_panel(sheet, widths, values)
                if not (longer > sheet).any():
                    break
                steps.append((level, sheet, widths, values))
                sheet = longer
        at, worth = end, int(sheet[end])
        for level, before, widths, values in reversed(steps):
            if before[at] == worth:
                continue
            for width, value in zip(widths.tolist(), values.tolist(), strict=True):
                rest = p.rest(at, int(p.us[width]))
                if rest >= 0 and before[rest] + value == worth:
                    self._read_panel(top, level, width, counts)
                    at, worth = rest, worth - value
                    break
        return int(sheet[end]), Column(index, tuple(counts))

    def _add_panel(self, sheet: _Ints, widths: _Ints, values: _Ints) -> _Ints:
        """Values of sheets with one more panel, where that is better."""
        longer, end = sheet.copy(), len(sheet)
        padded = np.append(sheet, _NONE)
        for start in range(0, len(widths), _BLOCK):
            some = slice(start, start + _BLOCK)
            first = int(widths[start])
            worth = padded[self.raster.rests(widths[some], first, end)]
            worth += values[some, None]
            np.maximum(longer[first:], worth.max(axis=0), out=longer[first:])
        return longer

    def _read_panel(self, top: int, level: int, width: int, counts: list[int]) -> None:
        """Count the parts of a panel, by a table for its length alone."""
        p = self.raster
        tables = [np.zeros(top + 1, np.int64)]
        for lower in range(level + 1):
            table = tables[-1].copy() if lower < level else np.full(top + 1, _NONE, np.int64)
            value = int(self.row(lower)[width])
            for count, cells in enumerate(p.below[lower] if value >= 0 else (), 1):
                start = len(p.vs) - len(cells)
                if start > top:
                    break
                more = tables[-1][cells[: top + 1 - start]] + count * value
                np.maximum(table[start:], more, out=table[start:])
            tables.append(table)
        for lower in range(level, -1, -1):
            value = int(self.row(lower)[width])
            for count in range(p.rows[lower] + 1):
                if p.vs[top] < count * p.heights[lower] or (lower == level and not count):
                    continue
                rest = int(np.searchsorted(p.vs, p.vs[top] - count * p.heights[lower], "right"))
                if tables[lower][rest - 1] + count * value == tables[lower + 1][top]:
                    for _ in range(count):
                        self._read_row(lower, width, counts)
                    top = rest - 1
                    break

    def _read_row(self, level: int, width: int, counts: list[int]) -> None:
        p, at = self.raster, width
        start = p.starts[level]
        stage, table = p.starts[level + 1], self.led
        while stage > 0:
            worth = table[stage, at]
            chunk = p.chunks[stage - 1]
            is_first = table is self.led and stage - 1 == start
            if not is_first and table[stage - 1, at] == worth:
                stage -= 1
                continue
            if table is self.plain and not worth:
                break
            counts[chunk.shape] += chunk.pieces
            at = p.rest(at, chunk.length)
            worth -= chunk.pieces * self.values[chunk.shape]
            stage -= 1
            if table is self.led and (stage == start or self.led[stage, at] != worth):
                stage, table = start, self.plain


def _rises(values: _Ints) -> tuple[_Ints, _Ints]:
    """Where values rise above all before, and these values; nothing below zero counts."""
    highest = np.maximum.accumulate(np.maximum(values, 0))
    at = np.flatnonzero(np.diff(highest)) + 1
    return at, highest[at]


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
    size = most // 8 + 1
    bits = np.frombuffer(found.to_bytes(size, "little"), np.uint8)
    return np.flatnonzero(np.unpackbits(bits, bitorder="little"))
