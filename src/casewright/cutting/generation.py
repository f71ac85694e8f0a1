"""Half-made plans by the thousand, as columns of one table, and all ways to go on with them.

Every plan of a generation holds as many parts as the others, so that they can be compared by what
they have used up. Whole numbers of 64 bits; sheets have no defects here.
"""

from __future__ import annotations

import random  # noqa: TID251 - seeded with a constant, for salt
from collections.abc import Iterable, Iterator
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from casewright.cutting.shapes import Action, Laid, Task

__all__ = ["Expander", "Generation", "Ints", "Mask", "Ways", "is_countable"]

Ints = npt.NDArray[np.int64]
Mask = npt.NDArray[np.bool_]

_ROOM = 56
"""Bits for any sum of weighted areas; scores multiply them by less than 64."""

_ONTO_PART, _INTO_STRIP, _NEW_STRIP, _NEW_PANEL, _NEW_SHEET = (int(action) for action in Action)
"""Plain numbers are looked up quicker."""

_ANY = -(1 << 62)
"""A key that any move may follow."""

_FINEST, _COARSEST = 20, 8
"""Bits of the weights by which the areas of stock of several prices are told apart."""


class Generation(NamedTuple):
    """Half-made plans, one row each.

    Parameters
    ----------
    bin
        Stock of the sheet in work; -1 before the first.
    u0, u1, v0, v1, u
        Bounds of the panel and of the strip in work, and where the strip's last part ends.
    key
        The least key of a move that may follow in the strip.
    side, top, onto
        Where the strip's last column begins along u, where its last part ends along v, and the
        least key of a move that may lie onto that.
    grows
        Whether the panel's width is still open.
    closed
        Weighted area of the sheets before the one in work.
    placed, price, hash
        Area laid, price of the sheets, sum of the salts of what was laid.
    left, used
        Parts left of each shape and sheets used of each stock, one column each.
    """

    bin: Ints
    u0: Ints
    u1: Ints
    v0: Ints
    v1: Ints
    u: Ints
    key: Ints
    side: Ints
    top: Ints
    onto: Ints
    grows: Mask
    closed: Ints
    placed: Ints
    price: Ints
    hash: Ints
    left: Ints
    used: Ints


class Ways(NamedTuple):
    """Ways to go on: which plan, which move, how, and the weighted area then used up.

    An action from `Action.NEW_SHEET` on opens a sheet of that stock, counted from there.
    """

    row: Ints
    move: Ints
    action: Ints
    used: Ints


class Expander:
    """What a task has to offer: moves (a shape and how it is turned) and stock, in arrays.

    Parameters
    ----------
    task
        What to cut, from stock without defects, with numbers that `is_countable`.
    """

    def __init__(self, task: Task) -> None:
        turns = [(i, *sides) for i, s in enumerate(task.shapes) for sides in s.sides]
        turns.sort(key=lambda turn: (-turn[1] * turn[2], turn))
        self.task = task
        self.shape, self.du, self.dv = (np.array(c, np.int64) for c in zip(*turns, strict=True))
        self.area: Ints = self.du * self.dv
        self.key: Ints = self.shape - self.dv * len(task.shapes)
        self.count = np.array([s.count for s in task.shapes], np.int64)
        self.bdu = np.array([b.du for b in task.bins], np.int64)
        self.bdv = np.array([b.dv for b in task.bins], np.int64)
        self.price = np.array([b.price for b in task.bins], np.int64)
        pieces = int(self.count.sum())
        counts = [pieces if b.count is None else min(b.count, pieces) for b in task.bins]
        self.stock = np.array(counts, np.int64)
        self.total = sum(s.du * s.dv * s.count for s in task.shapes)
        self.mean = max(1, self.total // pieces)
        rates = _rates(task)
        self.rate = np.array(rates, np.int64)
        self.par = min((r for r, b in zip(rates, task.bins, strict=True) if b.price), default=1)
        salt = random.Random(pieces)  # noqa: S311 - spreads hashes
        self.salt = np.array([salt.getrandbits(62) for _ in task.shapes], np.int64)
        self.mix = [salt.getrandbits(62) | 1 for _ in range(10)]

    def root(self) -> Generation:
        """The one plan with nothing in it."""
        zero = np.zeros(1, np.int64)
        return Generation(
            zero - 1, zero, zero, zero, zero, zero, zero, zero, zero, zero, np.zeros(1, bool),
            zero, zero, zero, zero, self.count[None, :], np.zeros((1, len(self.stock)), np.int64),
        )  # fmt: skip

    def ways(self, g: Generation, limit: int | None) -> Ways:
        """All ways to lay one more part; a new sheet only where none fits on the one in work.

        Parameters
        ----------
        limit
            Price that no plan may pass; None: no limit.
        """
        free = (g.left > 0)[:, self.shape]
        if g.bin[0] < 0:
            found = self._sheets(g, np.zeros(1, np.int64), free, limit)
        else:
            found = self._on_sheet(g, free)
            full = np.ones(len(g.bin), bool)
            for ways in found:
                full[ways.row] = False
            if full.any():
                found += self._sheets(g, full.nonzero()[0], free, limit)
        found = [way for way in found if len(way.row)] or found[:1]
        ways = found[0]
        if len(found) > 1:
            ways = Ways(*(np.concatenate(column) for column in zip(*found, strict=True)))
        if limit is None or len(self.stock) > 1:
            return ways
        slack = limit // max(1, int(self.price[0])) * int(self.bdu[0] * self.bdv[0]) - self.total
        keep = ways.used - self.placed(g, ways) <= slack
        return Ways(*(column[keep] for column in ways))

    def placed(self, g: Generation, ways: Ways) -> Ints:
        """Area laid after each way."""
        placed: Ints = g.placed[ways.row] + self.area[ways.move]
        return placed

    def _on_sheet(self, g: Generation, free: Mask) -> list[Ways]:
        bdu, bdv, rate = self.bdu[g.bin], self.bdv[g.bin], self.rate[g.bin]
        high, span = g.v1 - g.v0, g.u1 - g.u0
        room = np.where(g.grows, bdu, g.u1) - g.u
        into = free & (self.du <= room[:, None]) & (self.dv <= high[:, None])
        into &= self.key >= g.key[:, None]
        row, move = into.nonzero()
        depth = np.where(g.grows, g.v1, high)
        below = g.u0 * bdv + np.where(g.grows, 0, span * g.v0)
        base = g.closed + rate * (below + (g.u - g.u0) * depth)
        if self.task.stacks:
            found = [self._first(_INTO_STRIP, into, base, rate)]
            sides = g.closed + rate * (below + (g.side - g.u0) * depth)
            found.append(self._onto(g, free, sides, rate * (g.u - g.side)))
        else:
            used = base[row] + (rate * depth)[row] * self.du[move]
            found = [Ways(row, move, np.full(len(row), _INTO_STRIP), used)]
        strip = free & (self.du <= span[:, None]) & (self.dv <= (bdv - g.v1)[:, None])
        base = g.closed + rate * (g.u0 * bdv + span * g.v1)
        found.append(self._first(_NEW_STRIP, strip, base, rate))
        if self.task.panels:
            panel = free & (self.du <= (bdu - g.u1)[:, None]) & (self.dv <= bdv[:, None])
            base = g.closed + rate * g.u1 * bdv
            found.append(self._first(_NEW_PANEL, panel, base, rate))
        return found

    def _onto(self, g: Generation, free: Mask, base: Ints, across: Ints) -> Ways:
        """Parts onto the last one; in the first column the strip grows with them.

        `base` is the weighted area used up beside the column, `across` the weighted width of it.
        """
        room = np.where(g.side == g.u0, self.bdv[g.bin], g.v1) - g.top
        onto = free & (self.du <= (g.u - g.side)[:, None]) & (self.key >= g.onto[:, None])
        row, move = np.nonzero(onto & (self.dv <= room[:, None]))
        used = (base + across * (g.top - g.v0))[row] + across[row] * self.dv[move]
        return Ways(row, move, np.full_like(row, _ONTO_PART), used)

    def _first(self, action: int, mask: Mask, base: Ints, rate: Ints) -> Ways:
        row, move = mask.nonzero()
        used = base[row] + rate[row] * self.area[move]
        return Ways(row, move, np.full(len(row), action), used)

    def _sheets(self, g: Generation, rows: Ints, free: Mask, limit: int | None) -> list[Ways]:
        closed = self._closed(g, rows)
        found = []
        for i, b in enumerate(self.task.bins):
            may = g.used[rows, i] < self.stock[i]
            if limit is not None:
                may &= g.price[rows] + b.price <= limit
            mask = free[rows] & may[:, None] & ((self.du <= b.du) & (self.dv <= b.dv))
            ways = self._first(_NEW_SHEET + i, mask, closed, self.rate[i] + 0 * closed)
            found.append(ways._replace(row=rows[ways.row]))
        return found

    def _closed(self, g: Generation, rows: Ints) -> Ints:
        """Weighted area of all sheets, that in work too."""
        last = g.bin[rows]
        whole = np.where(last < 0, 0, self.bdu[last] * self.bdv[last] * self.rate[last])
        closed: Ints = g.closed[rows] + whole
        return closed

    def hashes(self, g: Generation, ways: Ways) -> Ints:
        """Numbers that are equal where two ways lead to plans with the same future."""
        if not self.task.stacks:
            return self._plain_hashes(g, ways)
        row, move, action, _ = ways
        fresh, into = action >= _NEW_SHEET, action == _INTO_STRIP
        panel, onto = action == _NEW_PANEL, action == _ONTO_PART
        stays = into | onto
        mix = self.mix
        u0 = np.where(fresh, 0, np.where(panel, g.u1[row], g.u0[row]))
        end = np.where(onto, g.u[row], np.where(into, g.u[row], u0) + self.du[move])
        low = np.where(stays, g.v0[row], np.where(action == _NEW_STRIP, g.v1[row], 0))
        top = np.where(onto, g.top[row], low) + self.dv[move]
        key = self._key(g, ways)
        code: Ints = g.hash[row] + self.salt[self.shape[move]] + key * mix[0]
        code += end * mix[1] + low * mix[2] + u0 * mix[3]
        code += np.where(stays, np.maximum(g.v1[row], top), top) * mix[4]
        code += np.where(fresh, action, _NEW_SHEET + g.bin[row]) * mix[5]
        fixed = (action == _NEW_STRIP) | (stays & ~g.grows[row])
        code += np.where(fixed, g.u1[row], 0) * mix[6]
        code += np.where(onto, g.side[row], end - self.du[move]) * mix[7]
        code += top * mix[8]
        code += np.where(onto, self.key[move], 0) * mix[9]
        return code

    def _plain_hashes(self, g: Generation, ways: Ways) -> Ints:
        """`hashes` where nothing lies onto another part."""
        row, move, action, _ = ways
        mix, u1, v1 = self.mix, g.u1[row], g.v1[row]
        fresh, into = action >= _NEW_SHEET, action == _INTO_STRIP
        u0 = np.where(action == _NEW_PANEL, u1, g.u0[row])
        u0[fresh] = 0
        strip = action == _NEW_STRIP
        low = np.where(into, g.v0[row], np.where(strip, v1, 0))
        top = low + self.dv[move]
        code: Ints = g.hash[row] + self.salt[self.shape[move]] + self.key[move] * mix[0]
        code += (np.where(into, g.u[row], u0) + self.du[move]) * mix[1] + low * mix[2]
        code += u0 * mix[3] + np.where(into, np.maximum(v1, top), top) * mix[4]
        code += np.where(fresh, action, _NEW_SHEET + g.bin[row]) * mix[5]
        code += np.where(strip | (into & ~g.grows[row]), u1, 0) * mix[6]
        return code

    def _key(self, g: Generation, ways: Ways) -> Ints:
        """The least key of a move that may begin the next column; any after a pile that leads."""
        row, move, action, _ = ways
        onto = np.where(g.side[row] == g.u0[row], _ANY, g.key[row])
        key: Ints = np.where(action == _ONTO_PART, onto, self.key[move])
        return key

    def after(self, g: Generation, ways: Ways) -> Generation:
        """The next generation, one plan for each way."""
        if not self.task.stacks:
            return self._plainly_after(g, ways)
        row, move, action, _ = ways
        fresh, panel = action >= _NEW_SHEET, action == _NEW_PANEL
        into, onto = action == _INTO_STRIP, action == _ONTO_PART
        opens, stays = fresh | panel, into | onto
        bins = np.where(fresh, action - _NEW_SHEET, g.bin[row])
        u0 = np.where(fresh, 0, np.where(panel, g.u1[row], g.u0[row]))
        side = np.where(onto, g.side[row], np.where(into, g.u[row], u0))
        end = np.where(onto, g.u[row], side + self.du[move])
        u1, grows = g.u1[row], g.grows[row]
        if self.task.panels:
            u1 = np.where(opens, end, np.where(into & grows, np.maximum(u1, end), u1))
            grows = opens | (stays & grows)
        else:
            u1 = np.where(fresh, self.bdu[bins], u1)
        v0 = np.where(stays, g.v0[row], np.where(opens, 0, g.v1[row]))
        top = np.where(onto, g.top[row], v0) + self.dv[move]
        v1 = np.where(stays, np.maximum(g.v1[row], top), top)
        left, used = g.left[row], g.used[row]
        index = np.arange(len(row))
        left[index, self.shape[move]] -= 1
        used[index[fresh], bins[fresh]] += 1
        closed = np.where(fresh, self._closed(g, row), g.closed[row])
        price = g.price[row] + np.where(fresh, self.price[bins], 0)
        return Generation(
            bins, u0, u1, v0, v1, end, self._key(g, ways), side, top,
            np.where(onto, self.key[move], _ANY), grows, closed, self.placed(g, ways), price,
            g.hash[row] + self.salt[self.shape[move]], left, used,
        )  # fmt: skip

    def _plainly_after(self, g: Generation, ways: Ways) -> Generation:
        """`after` where nothing lies onto another part: side, top and onto tell nothing."""
        row, move, action, _ = ways
        du, dv, shape, key = self.du[move], self.dv[move], self.shape[move], self.key[move]
        fresh, panel, into = action >= _NEW_SHEET, action == _NEW_PANEL, action == _INTO_STRIP
        opens, any_fresh = fresh | panel, bool(fresh.any())
        bins, u1, v1, grows, closed = g.bin[row], g.u1[row], g.v1[row], g.grows[row], g.closed[row]
        left, used, price = g.left[row], g.used[row], g.price[row]
        left[np.arange(len(row)), shape] -= 1
        u0 = np.where(panel, u1, g.u0[row])
        if any_fresh:
            closed = np.where(fresh, self._closed(g, row), closed)
            bins = np.where(fresh, action - _NEW_SHEET, bins)
            u0[fresh] = 0
            used[fresh.nonzero()[0], bins[fresh]] += 1
            price += np.where(fresh, self.price[bins], 0)
        end = np.where(into, g.u[row], u0) + du
        if self.task.panels:
            u1 = np.where(opens, end, np.where(into & grows, np.maximum(u1, end), u1))
            grows = opens | (into & grows)
        elif any_fresh:
            u1 = np.where(fresh, self.bdu[bins], u1)
        v0 = np.where(into, g.v0[row], np.where(opens, 0, v1))
        top = v0 + dv
        return Generation(
            bins, u0, u1, v0, np.where(into, np.maximum(v1, top), top), end, key, u0, top, key,
            grows, closed, g.placed[row] + self.area[move], price, g.hash[row] + self.salt[shape],
            left, used,
        )  # fmt: skip

    def laid(self, path: Iterable[tuple[int, int]]) -> Iterator[Laid]:
        """The parts put down by moves, each with its action, from the first on."""
        index = u0 = u1 = v0 = v1 = u = v = end = top = 0
        for move, action in path:
            du, dv = int(self.du[move]), int(self.dv[move])
            if action == _ONTO_PART:
                v = top
            elif action == _INTO_STRIP:
                u, v, end = end, v0, end + du
                u1 = max(u1, end)
            else:
                if action >= _NEW_SHEET:
                    index, u0 = action - _NEW_SHEET, 0
                    u1 = 0 if self.task.panels else self.task.bins[index].du
                u0 = u1 if action == _NEW_PANEL else u0
                v0 = v1 if action == _NEW_STRIP else 0
                u, v, end, v1 = u0, v0, u0 + du, v0 + dv
                u1 = max(u1, end)
            top = v + dv
            v1 = max(v1, top)
            how = Action(min(action, _NEW_SHEET))
            yield Laid(how, index, int(self.shape[move]), u, v, du, dv)


def is_countable(task: Task) -> bool:
    """Whether no defect matters and all sums keep within whole numbers of 64 bits."""
    if any(b.defects for b in task.bins) or sum(b.price for b in task.bins) >= 1 << 31:
        return False
    return _spare_bits(task) >= (_COARSEST if len(task.bins) > 1 else 0)


def _spare_bits(task: Task) -> int:
    pieces = sum(s.count for s in task.shapes)
    return _ROOM - (pieces * max(b.area for b in task.bins)).bit_length()


def _rates(task: Task) -> list[int]:
    """Weights of the area of each stock, by its price; free stock counts a little."""
    if len(task.bins) == 1:
        return [1]
    finest = 1 << min(_FINEST, _spare_bits(task))
    dearest = max(task.bins, key=lambda b: b.price * max(o.area for o in task.bins) // b.area)
    if dearest.price == 0:
        return [1] * len(task.bins)
    rates = [b.price * dearest.area * finest // (b.area * dearest.price) for b in task.bins]
    least = min((rate for rate in rates if rate), default=1)
    return [max(1, rate, least // 8) for rate in rates]
