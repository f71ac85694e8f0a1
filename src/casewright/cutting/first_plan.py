"""A first plan for any number of parts: batch by batch, and on shelves when asked to hurry."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from math import isqrt

from casewright.cutting.searches import AnySearch, search_for
from casewright.cutting.shapes import Action, Bin, Found, Laid, Task, places, slide, task_part

__all__ = ["first_plan"]

_AT_ONCE = 400_000
"""Parts times shapes of one batch: some tenths of a second."""

_OPEN = 16
"""Shelves, and sheets, that are looked at for a part: so many of the last ones."""


def first_plan(search: AnySearch, is_asked: Callable[[], bool]) -> Found:
    """A plan by the narrowest search, in batches of parts where they are many.

    Parameters
    ----------
    search
        For the whole task; it is run itself where one batch is enough.
    is_asked
        Whether someone waits for a plan: of many parts those that are left then go onto shelves,
        which takes no time to speak of.

    Returns
    -------
    A full plan; where the stock runs out, one of what could be laid.
    """
    task = search.task
    pieces = sum(shape.count for shape in task.shapes)
    batches = -(-pieces // max(isqrt(_AT_ONCE), _AT_ONCE // len(task.shapes)))
    if batches == 1:
        return _run(search)
    left, stock = [shape.count for shape in task.shapes], [b.count for b in task.bins]
    laid: list[Laid] = []
    for number in range(batches):
        hurries = is_asked()
        some = task_part(task, left if hurries else _batch(task, number, batches), stock)
        if some is None:
            continue
        found = _on_shelves(some.task) if hurries else _run(search_for(some.task, is_asked))
        for one in some.laid(found):
            laid.append(one)
            left[one.shape] -= 1
            count = stock[one.bin]
            if one.action == Action.NEW_SHEET and count is not None:
                stock[one.bin] = count - 1
        if hurries:
            break
    price = sum(task.bins[one.bin].price for one in laid if one.action == Action.NEW_SHEET)
    return Found(tuple(laid), price, not any(left))


def _run(search: AnySearch) -> Found:
    return search.run(1, finish=True) or Found((), 0, complete=False)


def _batch(task: Task, number: int, batches: int) -> list[int]:
    """How many of each shape belong to a batch, so that large and small parts are in each."""
    counts = [0] * len(task.shapes)
    at = -number
    for n in sorted(range(len(counts)), key=lambda n: task.shapes[n].du * task.shapes[n].dv):
        end = at + task.shapes[n].count
        counts[n] = -(-end // batches) - -(-at // batches)
        at = end
    return counts


@dataclass(slots=True)
class _Shelf:
    """Parts in a row across a sheet: the place of the sheet, extent along v, end of the row."""

    sheet: int
    v: int
    dv: int
    u: int
    laid: list[Laid] = field(default_factory=list)


@dataclass(slots=True)
class _Sheet:
    """A sheet in use: its stock, where its last shelf ends, its shelves."""

    bin: int
    top: int = 0
    shelves: list[_Shelf] = field(default_factory=list)


def _on_shelves(task: Task) -> Found:
    """The highest parts first, each on the first shelf of the last ones that it fits on."""
    shelving = _Shelving(task)
    sizes = sorted(
        (-min(dv for _, dv in shape.sides), -shape.du, n) for n, shape in enumerate(task.shapes)
    )
    complete = True
    for *_, n in sizes:
        for _ in range(task.shapes[n].count):
            complete &= shelving.put(n)
    return Found(tuple(shelving.laid()), shelving.price, complete)


class _Shelving:
    """Sheets that are filled shelf by shelf."""

    def __init__(self, task: Task) -> None:
        self.task = task
        self.price = 0
        self._sheets: list[_Sheet] = []
        self._shelves: list[_Shelf] = []
        self._stock = [b.count for b in task.bins]
        self._bins = sorted(range(len(task.bins)), key=lambda n: _dearness(task.bins[n]))

    def put(self, shape: int) -> bool:
        """Lay one part; False where nothing holds it."""
        ways = sorted(self.task.shapes[shape].sides, key=lambda sides: sides[1])
        return (
            any(self._onto_shelf(shape, sides) for sides in ways)
            or any(self._new_shelf(shape, sides, self._open()) for sides in ways)
            or any(self._new_sheet(shape, sides) for sides in ways)
        )

    def laid(self) -> Iterator[Laid]:
        """The parts sheet by sheet."""
        for sheet in self._sheets:
            for shelf in sheet.shelves:
                yield from shelf.laid

    def _open(self) -> range:
        return range(max(0, len(self._sheets) - _OPEN), len(self._sheets))

    def _onto_shelf(self, shape: int, sides: tuple[int, int]) -> bool:
        for shelf in self._shelves[-_OPEN:]:
            index = self._sheets[shelf.sheet].bin
            b = self.task.bins[index]
            if sides[1] > shelf.dv or shelf.u + sides[0] > b.du:
                continue
            u = slide(b, shelf.u, shelf.v, sides, self.task.kerf)
            if u + sides[0] <= b.du:
                shelf.laid.append(Laid(Action.INTO_STRIP, index, shape, u, shelf.v, *sides))
                shelf.u = u + sides[0]
                return True
        return False

    def _new_shelf(self, shape: int, sides: tuple[int, int], sheets: range) -> bool:
        for number in sheets:
            sheet = self._sheets[number]
            b = self.task.bins[sheet.bin]
            for u, v in places(b, (0, sheet.top), sides, self.task.kerf):
                how = Action.NEW_STRIP if sheet.shelves else Action.NEW_SHEET
                part = Laid(how, sheet.bin, shape, u, v, *sides)
                shelf = _Shelf(number, v, sides[1], u + sides[0], [part])
                sheet.shelves.append(shelf)
                self._shelves.append(shelf)
                sheet.top = v + sides[1]
                return True
        return False

    def _new_sheet(self, shape: int, sides: tuple[int, int]) -> bool:
        for index in self._bins:
            count = self._stock[index]
            if count == 0:
                continue
            self._sheets.append(_Sheet(index))
            if self._new_shelf(shape, sides, range(len(self._sheets) - 1, len(self._sheets))):
                self._stock[index] = None if count is None else count - 1
                self.price += self.task.bins[index].price
                return True
            self._sheets.pop()
        return False


def _dearness(b: Bin) -> tuple[int, int]:
    """By the price of the area, in whole numbers; of the same the largest first."""
    return (b.price << 40) // b.area, -b.area
