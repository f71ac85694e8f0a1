"""Sheets as panels of strips of items: a plan in a form that is easy to take apart and repair.

Sizes are grown by one kerf, and so is the usable ground, so that sums need no kerfs. u runs along
the first division of a sheet (into panels), v across it (a panel into strips, a strip again along
u).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import NamedTuple

from casewright.cutting.problem import PartDemand, Problem
from casewright.cutting.solution import Direction, Leaf, Node, Rect, SheetTree, Split, leaves
from casewright.cutting.tree import Axis, Cell, divide, leftover, transpose

__all__ = [
    "TIGHT",
    "Content",
    "Ground",
    "Kind",
    "Oversize",
    "Panel",
    "Pattern",
    "Slot",
    "Space",
    "Strip",
    "cut_apart",
    "divisions",
    "ground_of",
    "inner_divisions",
    "kinds_of",
    "new_pattern",
    "pattern_of",
    "tree_of",
]  # fmt: skip


class Slot(NamedTuple):
    """A part's place in a strip: its kind and its grown sides."""

    kind: int
    du: int
    dv: int


class Oversize(NamedTuple):
    """How much larger than its size a piece is cut at first.

    `each`: the parts of a strip get their width one by one, not the strip before them.
    """

    by: int = 0
    each: bool = False


TIGHT = Oversize()


@dataclass(slots=True)
class Strip:
    """Spots along u, longest first; `dv` is their greatest side along v, `du` the others' sum.

    `over` tells how much wider it is cut at first.
    """

    slots: list[Slot] = field(default_factory=list)
    du: int = 0
    dv: int = 0
    over: Oversize = TIGHT

    def add(self, slot: Slot) -> None:
        """Put one more part to the others."""
        self.slots.append(slot)
        self.slots.sort(key=lambda slot: (-slot.du, -slot.dv, slot.kind))
        self.du += slot.du
        self.dv = max(self.dv, slot.dv)


@dataclass(slots=True)
class Panel:
    """Rows across u, widest first; `du` is the longest, `dv` their sum.

    `over` tells how much longer it is cut at first.
    """

    strips: list[Strip] = field(default_factory=list)
    du: int = 0
    dv: int = 0
    over: Oversize = TIGHT

    def measure(self) -> None:
        """Take the sizes from the strips; empty strips go."""
        self.strips = [strip for strip in self.strips if strip.slots]
        self.strips.sort(key=lambda strip: (-strip.dv, -strip.du))
        self.du = max((strip.du for strip in self.strips), default=0)
        self.dv = sum(strip.dv for strip in self.strips)


Space = tuple[int, int, int, int]
"""Where a part may still go: the largest grown sides, numbers of the panel and of the strip; a
number one past the last is that of a new one."""


@dataclass(slots=True)
class Pattern:
    """One sheet: place of its stock, whether u runs along its width, its panels, longest first.

    `u` and `v` are the grown sides of the usable ground, `du` what the panels take of it; `free`
    is the ground that no part lies on, `spaces` where parts may still go, in the order of panels
    and strips.
    """

    stock: int
    swapped: bool
    u: int
    v: int
    panels: list[Panel] = field(default_factory=list)
    du: int = 0
    free: int = 0
    spaces: list[Space] = field(default_factory=list)

    def measure(self) -> None:
        """Take the sizes from the panels; empty panels go."""
        for panel in self.panels:
            panel.measure()
        self.panels = [panel for panel in self.panels if panel.strips]
        strips = [strip for panel in self.panels for strip in panel.strips]
        laid = sum(slot.du * slot.dv for strip in strips for slot in strip.slots)
        self.free = self.u * self.v - laid
        self._order()

    def turn(self) -> None:
        """Let u run the other way on a sheet that is empty."""
        self.swapped, self.u, self.v = not self.swapped, self.v, self.u

    def lay(self, b: int, r: int, slot: Slot) -> Strip:
        """Lay a part into a strip of a panel, numbers one past the last for a new one."""
        if b == len(self.panels):
            self.panels.append(Panel())
        panel = self.panels[b]
        if r == len(panel.strips):
            panel.strips.append(Strip())
        strip = panel.strips[r]
        strip.add(slot)
        panel.measure()
        self.free -= slot.du * slot.dv
        self._order()
        return strip

    def _order(self) -> None:
        self.panels.sort(key=lambda panel: -panel.du)
        self.du = sum([panel.du for panel in self.panels])
        self.spaces = spaces = []
        spare = self.u - self.du
        for p, panel in enumerate(self.panels):
            above, end = self.v - panel.dv, spare + panel.du
            for s, strip in enumerate(panel.strips):
                spaces.append((end - strip.du, above + strip.dv, p, s))
            spaces.append((end, above, p, len(panel.strips)))
        spaces.append((spare, self.v, len(self.panels), 0))

    def copy(self) -> Pattern:
        """A copy that shares nothing that changes."""
        panels = [
            Panel(
                [
                    Strip(list(strip.slots), strip.du, strip.dv, strip.over)
                    for strip in panel.strips
                ],
                panel.du,
                panel.dv,
                panel.over,
            )
            for panel in self.panels
        ]
        return Pattern(
            self.stock, self.swapped, self.u, self.v, panels, self.du, self.free, self.spaces
        )


@dataclass(frozen=True, slots=True)
class Kind:
    """Parts that can stand for each other: one size, one grain rule, one group.

    Parameters
    ----------
    length, width
        Blank [unit].
    rotate
        Whether they may be turned.
    group
        What they belong to.
    copies
        Each with its part and number.
    """

    length: int
    width: int
    rotate: bool
    group: str | None
    copies: tuple[tuple[str, int], ...]


def kinds_of(parts: Sequence[PartDemand]) -> tuple[Kind, ...]:
    """Parts put together by what they are; in the order of the problem."""
    found: dict[tuple[int, int, bool, str | None], list[tuple[str, int]]] = {}
    for part in parts:
        copies = found.setdefault((part.length, part.width, part.rotate, part.group), [])
        copies += [(part.id, copy) for copy in range(1, part.count + 1)]
    return tuple(Kind(*key, tuple(copies)) for key, copies in found.items())


def new_pattern(problem: Problem, stock: int, *, swapped: bool) -> Pattern:
    """A sheet with nothing on it."""
    item = problem.stock[stock]
    sides = item.usable_length + problem.kerf, item.usable_width + problem.kerf
    u, v = sides[::-1] if swapped else sides
    return Pattern(stock, swapped, u, v, free=u * v)


def pattern_of(problem: Problem, tree: SheetTree, kind: Callable[[str], int]) -> Pattern | None:
    """A sheet in panels and strips, when it can be said so and has no defects.

    Parameters
    ----------
    kind
        Number of the kind of a part.
    """
    stock = next(i for i, item in enumerate(problem.stock) if item.id == tree.stock)
    if problem.stock[stock].defects:
        return None
    is_parted = isinstance(tree.root, Split) and tree.root.direction == "crosscut"
    for swapped in (is_parted, not is_parted):
        pattern = new_pattern(problem, stock, swapped=swapped)
        pattern.panels = _Reader(problem.kerf, swapped, kind).panels(tree.root)
        pattern.measure()
        is_one = problem.stages != 2 or len(pattern.panels) == 1
        if is_one and _is_whole(pattern, tree.root):
            return pattern
    return None


def tree_of(
    problem: Problem, pattern: Pattern, sheet: int, deal: Callable[[int], tuple[str, int]]
) -> SheetTree:
    """The cut tree of a sheet; trims come off with the first cuts along their edge.

    Parameters
    ----------
    sheet
        Its number.
    deal
        Gives the next part of a kind.
    """
    ground = ground_of(problem, pattern)

    def build(content: Content, axis: Axis, rect: Rect) -> Node:
        if isinstance(content, Slot) and axis == "y":
            return Leaf(rect, "part", *deal(content.kind))
        at = rect.x, rect.y
        inner = Ground(*rect[2:], max(0, ground.u0 - rect.x), max(0, ground.v0 - rect.y))
        return cut_apart(problem, inner, inner_divisions(content), build, at)

    root = cut_apart(problem, ground, divisions(problem, pattern), build)
    item = problem.stock[pattern.stock]
    return SheetTree(sheet, item.id, transpose(root) if pattern.swapped else root)


def _is_whole(pattern: Pattern, root: Node) -> bool:
    """Whether every part of the tree is there, and all of it fits."""
    laid = sum(len(strip.slots) for panel in pattern.panels for strip in panel.strips)
    wanted = sum(leaf.use == "part" for leaf in leaves(root))
    return (
        laid == wanted
        and pattern.du <= pattern.u
        and all(panel.dv <= pattern.v for panel in pattern.panels)
    )


@dataclass(frozen=True, slots=True)
class _Reader:
    """Reads a cut tree as panels of strips; parts that lie deeper are left out."""

    kerf: int
    swapped: bool
    kind: Callable[[str], int]

    def panels(self, root: Node) -> list[Panel]:
        return [Panel([self._strip(part) for part in self._v(node)]) for node in self._u(root)]

    def _strip(self, node: Node) -> Strip:
        strip, inner = Strip(), self._v(node)
        for part in self._u(inner[0] if len(inner) == 1 else node):
            inner = self._v(part)
            if len(inner) == 1 and isinstance(inner[0], Leaf):
                strip.add(self._slot(inner[0]))
        return strip

    def _u(self, node: Node) -> list[Node]:
        return _pieces(node, "rip" if self.swapped else "crosscut")

    def _v(self, node: Node) -> list[Node]:
        return _pieces(node, "crosscut" if self.swapped else "rip")

    def _slot(self, leaf: Leaf) -> Slot:
        sides = leaf.rect.length + self.kerf, leaf.rect.width + self.kerf
        return Slot(self.kind(leaf.part), *(sides[::-1] if self.swapped else sides))


def _pieces(node: Node, direction: Direction) -> list[Node]:
    """What is used of a piece cut in a direction; the piece itself when it is cut otherwise."""
    if isinstance(node, Split) and node.direction == direction:
        return [piece for piece in node.pieces if isinstance(piece, Split) or piece.use == "part"]
    return [node]


@dataclass(frozen=True, slots=True)
class Ground:
    """A piece of a sheet in the frame of its pattern: its sides, and what is unusable before it.

    Parameters
    ----------
    du, dv
        Sides of the piece [unit].
    u0, v0
        Trim at its low edges [unit].
    """

    du: int
    dv: int
    u0: int = 0
    v0: int = 0


Content = Panel | Strip | Slot
"""What a piece of a sheet is cut into."""


def ground_of(problem: Problem, pattern: Pattern) -> Ground:
    """The whole sheet of a pattern."""
    item = problem.stock[pattern.stock]
    sides = item.length, item.width, item.trim.left, item.trim.bottom
    return Ground(*((sides[1], sides[0], sides[3], sides[2]) if pattern.swapped else sides))


def divisions(problem: Problem, pattern: Pattern) -> tuple[Axis, list[tuple[int, Content]]]:
    """What a sheet is cut into first: the axis, and the grown size of each piece along it."""
    if len(pattern.panels) == 1 and (problem.stages == 2 or _is_sliver(problem, pattern)):
        return inner_divisions(pattern.panels[0])
    return "x", [(panel.du + panel.over.by, panel) for panel in pattern.panels]


def inner_divisions(content: Content) -> tuple[Axis, list[tuple[int, Content]]]:
    """What a panel, a strip or the ground of a part is cut into."""
    if isinstance(content, Panel):
        return "y", [(strip.dv + strip.over.by, strip) for strip in content.strips]
    if isinstance(content, Strip) and content.over.by and not content.over.each:
        return "y", [(content.dv, Strip(content.slots, content.du, content.dv))]
    if isinstance(content, Strip):
        return "x", [(slot.du, slot) for slot in content.slots]
    return "y", [(content.dv, content)]


def cut_apart(
    problem: Problem,
    ground: Ground,
    divided: tuple[Axis, list[tuple[int, Content]]],
    build: Callable[[Content, Axis, Rect], Node],
    at: tuple[int, int] = (0, 0),
) -> Node:
    """Divide a piece.

    Parameters
    ----------
    ground
        The piece; it lies at `at`.
    divided
        See `divisions`.
    build
        What becomes of each content, cut off along an axis, in its rectangle.
    """
    axis, sized = divided
    low = at[0] + ground.u0 if axis == "x" else at[1] + ground.v0
    cells = []
    for size, content in sized:
        cells.append(Cell(low, low + size - problem.kerf, partial(build, content, axis)))
        low += size
    return divide(Rect(*at, ground.du, ground.dv), axis, cells, problem.kerf, problem.keep)


def _is_sliver(problem: Problem, pattern: Pattern) -> bool:
    """Whether a cut that only takes a sliver off the whole sheet can be saved."""
    usable, rest = pattern.u - problem.kerf, pattern.u - pattern.du - problem.kerf
    left = leftover(Rect(0, 0, max(rest, 0), pattern.v - problem.kerf), problem.keep)
    return rest <= 0 or (4 * rest <= usable and left.use == "waste")
