"""A problem seen in the frame of its first cut, and plans turned back into sheets and trees."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from casewright.cutting.arrangement import LaidPiece, UsedBin, arrange
from casewright.cutting.problem import PartDemand, Problem, StockItem
from casewright.cutting.shapes import Bin, Laid, Shape, Task, places
from casewright.cutting.solution import Direction, Leaf, Node, Rect, SheetTree
from casewright.cutting.tree import Axis, Cell, divide, leftover, transpose

__all__ = ["Frame", "fits", "trees_of"]

_Names = dict[tuple[int, int, bool], list[tuple[str, int]]]
_Sides = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Frame:
    """A problem seen along its first cut.

    Parameters
    ----------
    problem
        Its stock has pieces left, and each of its parts fits on some of them.
    first
        Direction of the first cut.
    panels
        Whether the first cuts part the sheet into panels; else the first cuts make strips, along
        the other direction.
    stacks
        Whether parts may lie onto each other within a strip: one stage more.
    """

    problem: Problem
    first: Direction
    panels: bool
    stacks: bool = False

    @property
    def is_swapped(self) -> bool:
        """Whether u runs along the stock's width."""
        return self.first == "rip"

    def task(self) -> Task:
        """What the search has to do."""
        kerf = self.problem.kerf
        prices = {item.price for item in self.problem.stock}
        bins = (
            self._bin(index, item, item.price if len(prices) > 1 else 1)
            for index, item in enumerate(self.problem.stock)
        )
        shapes = (
            Shape(*self._shape_sides(length, width, rotate=rotate), len(names), rotate)
            for (length, width, rotate), names in self.names().items()
        )
        return Task(tuple(bins), tuple(shapes), kerf, self.panels, self.stacks)

    def _shape_sides(self, length: int, width: int, *, rotate: bool) -> _Sides:
        """Grown by a kerf; of what may turn the longer first, so that mirrored tasks are equal."""
        long, wide = self._sides(length + self.problem.kerf, width + self.problem.kerf)
        return (max(long, wide), min(long, wide)) if rotate else (long, wide)

    def names(self) -> _Names:
        """Parts of each shape, in the order of the shapes; those of a group side by side."""
        names: _Names = {}
        for part in sorted(self.problem.parts, key=lambda part: part.group or ""):
            copies = names.setdefault(_size(part), [])
            copies += [(part.id, copy) for copy in range(1, part.count + 1)]
        return names

    def _sides(self, length: int, width: int) -> _Sides:
        return (width, length) if self.is_swapped else (length, width)

    def _bin(self, index: int, item: StockItem, price: int) -> Bin:
        kerf = self.problem.kerf
        du, dv = self._sides(item.usable_length + kerf, item.usable_width + kerf)
        defects = []
        for spot in item.defects:
            u, v = self._sides(spot.x - item.trim.left, spot.y - item.trim.bottom)
            long, wide = self._sides(spot.length, spot.width)
            defects.append((u, v, u + long, v + wide))
        return Bin(index, du, dv, price, item.count, tuple(sorted(defects)))

    def tree(
        self, number: int, used: UsedBin, deal: Callable[[int], tuple[str, int]]
    ) -> SheetTree:
        """The cut tree of one sheet; `deal` gives the next part of a shape."""
        item = self.problem.stock[used.bin]
        sheet = Rect(0, 0, *self._sides(item.length, item.width))
        origin = self._sides(item.trim.left, item.trim.bottom)
        builder = _Builder(self.problem, origin, deal)
        if self._is_one_panel(used, item):
            root = builder.divided(used.panels[0].inner, "y", sheet)
        else:
            root = builder.divided(used.panels, "x", sheet)
        return SheetTree(number, item.id, transpose(root) if self.is_swapped else root)

    def _is_one_panel(self, used: UsedBin, item: StockItem) -> bool:
        """Whether a cut that only takes a sliver off the whole sheet can be saved."""
        if not self.panels or len(used.panels) > 1:
            return not self.panels
        usable, across = self._sides(item.usable_length, item.usable_width)
        rest = usable - used.panels[0].end - self.problem.kerf
        sliver = leftover(Rect(0, 0, rest, across), self.problem.keep)
        return rest <= 0 or (4 * rest <= usable and sliver.use == "waste")


def trees_of(layers: Sequence[tuple[Frame, Sequence[Laid]]]) -> tuple[SheetTree, ...]:
    """The cut tree of each sheet of a plan, whose sheets may lie in several frames."""
    dealt = [iter(copies) for copies in layers[0][0].names().values()] if layers else []
    tasks = {id(frame): frame.task() for frame, _ in layers}
    sheets = [(frame, used) for frame, laid in layers for used in arrange(laid, tasks[id(frame)])]
    return tuple(
        frame.tree(number, used, lambda shape: next(dealt[shape]))
        for number, (frame, used) in enumerate(sheets)
    )


@dataclass(frozen=True, slots=True)
class _Builder:
    """Builds the tree of one sheet; trims come off with the first cuts along their edge."""

    problem: Problem
    origin: _Sides
    deal: Callable[[int], tuple[str, int]]

    def divided(self, pieces: Sequence[LaidPiece], axis: Axis, rect: Rect) -> Node:
        """A piece cut into pieces that follow each other along an axis."""
        at = self.origin[axis == "y"]
        cells = [Cell(at + p.low, at + p.end, partial(self._piece, p, axis)) for p in pieces]
        return divide(rect, axis, cells, self.problem.kerf, self.problem.keep)

    def _piece(self, piece: LaidPiece, axis: Axis, rect: Rect) -> Node:
        if not piece.inner:
            return Leaf(rect, "part", *self.deal(piece.shape))
        return self.divided(piece.inner, "y" if axis == "x" else "x", rect)


def fits(item: StockItem, part: PartDemand, kerf: int, *, turned: bool = False) -> bool:
    """Whether one part can be cut from a piece of stock, clear of its trims and defects."""
    frame = Frame(Problem("", kerf, None, (item,), ()), "crosscut", panels=True)
    size = (part.width, part.length) if turned else (part.length, part.width)
    grown = (size[0] + kerf, size[1] + kerf)
    return any(True for _ in places(frame.task().bins[0], (0, 0), grown, kerf))


def _size(part: PartDemand) -> tuple[int, int, bool]:
    if not part.rotate:
        return part.length, part.width, False
    return max(part.length, part.width), min(part.length, part.width), True
