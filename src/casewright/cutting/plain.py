"""Problems as the searches take them: matched parts as one part, sound edges of the stock low.

The searches lay parts from the lower left corner on, and know nothing of matches. A problem is
made plain for them, and what they find is told of the real one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

from casewright.cutting.mirror import Mirror, mirror_of, mirrored_item, mirrored_node
from casewright.cutting.outcome import solution_of
from casewright.cutting.problem import Match, PartDemand, Problem
from casewright.cutting.solution import (
    Bound,
    Leaf,
    Node,
    Reason,
    Rect,
    SheetTree,
    Solution,
    Split,
    Unplaced,
    leaves,
)  # fmt: skip
from casewright.cutting.tree import Axis, Cell, divide

__all__ = ["Plain", "is_plain", "plain_ways"]

_SPARE = 2
"""How much wider than its parts the piece of a match may be, in kerfs: then one setting gives all
of them their size, the last one too."""


@dataclass(frozen=True, slots=True)
class Plain:
    """One way to make a problem plain.

    Parameters
    ----------
    problem
        The real one.
    roomy
        Ids of matches whose piece is cut a little wider than its parts.
    """

    problem: Problem
    roomy: frozenset[str] = frozenset()
    _names: Mapping[str, Match] = field(init=False)
    _mirrors: Mapping[str, Mirror] = field(init=False)
    _sized: Mapping[tuple[int, int], list[str]] = field(init=False)
    inner: Problem = field(init=False)

    def __post_init__(self) -> None:
        taken = {part.id for part in self.problem.parts}
        names = {_unlike(match.id, taken): match for match in self.problem.matches}
        mirrors = {item.id: mirror_of(item.trim) for item in self.problem.stock}
        object.__setattr__(self, "_names", names)
        object.__setattr__(self, "_mirrors", mirrors)
        object.__setattr__(self, "inner", self._inner())
        sized: dict[tuple[int, int], list[str]] = {}
        for part in self.inner.parts:
            if part.id in names:
                sized.setdefault((part.length, part.width), []).append(part.id)
        object.__setattr__(self, "_sized", sized)

    def _inner(self) -> Problem:
        parts = {part.id: part for part in self.problem.parts}
        matched = {part for match in self.problem.matches for part in match.parts}
        return replace(
            self.problem,
            stock=tuple(
                mirrored_item(item, self._mirrors[item.id]) for item in self.problem.stock
            ),
            parts=(
                *(part for part in self.problem.parts if part.id not in matched),
                *(PartDemand(name, *self._size(m, parts)) for name, m in self._names.items()),
            ),
            matches=(),
        )

    def _size(self, match: Match, parts: Mapping[str, PartDemand]) -> tuple[int, int]:
        kerf = self.problem.kerf
        length, width = match.size(parts, kerf)
        spare = _SPARE * kerf if match.id in self.roomy else 0
        return (length, width + spare) if match.way == "across" else (length + spare, width)

    def outer(self, solution: Solution, bound: Bound | None = None) -> Solution:
        """A plan for the plain problem, told of the real one; with another bound if given."""
        trees = tuple(self._outer_tree(tree) for tree in solution.tree)
        unplaced = tuple(self._left_over(solution.unplaced))
        return solution_of(self.problem, trees, unplaced, bound or solution.bound)

    def _left_over(self, unplaced: Iterable[Unplaced]) -> Iterator[Unplaced]:
        counts = {part.id: part.count for part in self.problem.parts}
        for entry in unplaced:
            if entry.reason is Reason.NO_STOCK:
                continue
            if entry.part not in self._names:
                yield entry
                continue
            for part in self._names[entry.part].parts:
                yield Unplaced(part, counts[part], Reason.MATCHED)

    def _outer_tree(self, tree: SheetTree) -> SheetTree:
        return replace(tree, root=self._apart(self._mirrored(tree)))

    def _mirrored(self, tree: SheetTree) -> Node:
        mirror = self._mirrors.get(tree.stock, Mirror(False, False))
        return mirrored_node(tree.root, tree.root.rect, mirror, self.problem.kerf)

    def _apart(self, node: Node) -> Node:
        """Matched parts cut out of the piece that stands for them."""
        if isinstance(node, Split):
            return replace(node, pieces=tuple(self._apart(piece) for piece in node.pieces))
        match = self._names.get(node.part) if node.use == "part" else None
        if match is None:
            return node
        return self._divided(match, iter(_copies(match, self.problem)), node.rect)

    def _divided(self, match: Match, copies: Iterator[tuple[str, int]], rect: Rect) -> Node:
        parts = {part.id: part for part in self.problem.parts}
        axis: Axis = "y" if match.way == "across" else "x"
        at = rect.y if axis == "y" else rect.x
        cells: list[Cell] = []
        for one in match.of:
            if isinstance(one, Match):
                sizes, count = one.size(parts, self.problem.kerf), 1
                build = partial(self._divided, one, copies)
            else:
                sizes, count = (parts[one].length, parts[one].width), parts[one].count
                build = partial(self._part, copies, sizes)
            for _ in range(count):
                end = at + sizes[axis == "y"]
                cells.append(Cell(at, end, build))
                at = end + self.problem.kerf
        return divide(rect, axis, cells, self.problem.kerf, self.problem.keep)

    def _part(self, copies: Iterator[tuple[str, int]], size: tuple[int, int], rect: Rect) -> Node:
        """A part, cut to size where its neighbours are longer."""
        kerf, keep = self.problem.kerf, self.problem.keep
        if rect.length > size[0]:
            cell = Cell(rect.x, rect.x + size[0], partial(self._part, copies, size))
            return divide(rect, "x", [cell], kerf, keep)
        if rect.width > size[1]:
            cell = Cell(rect.y, rect.y + size[1], partial(self._part, copies, size))
            return divide(rect, "y", [cell], kerf, keep)
        return Leaf(rect, "part", *next(copies))

    def within(self, solution: Solution) -> Solution:
        """A plan for the real problem, told of the plain one."""
        known = {part.id for part in self.inner.parts}
        unplaced = tuple(entry for entry in solution.unplaced if entry.part in known)
        trees = self.trees_within(solution.tree)
        return solution_of(self.inner, trees, unplaced, solution.bound)

    def trees_within(self, trees: Iterable[SheetTree]) -> tuple[SheetTree, ...]:
        """Cut sheets of the real problem, or of one like it, told of the plain one."""
        together = (replace(tree, root=self._together(tree.root)) for tree in trees)
        return tuple(replace(tree, root=self._mirrored(tree)) for tree in together)

    def _together(self, node: Node) -> Node:
        """Pieces of matches as one part each."""
        for name in self._sized.get((node.rect.length, node.rect.width), ()):
            held = {leaf.part for leaf in leaves(node) if leaf.use == "part"}
            if held == set(self._names[name].parts):
                return Leaf(node.rect, "part", name, 1)
        if isinstance(node, Leaf):
            return node
        return replace(node, pieces=tuple(self._together(piece) for piece in node.pieces))

    @classmethod
    def of_plan(cls, problem: Problem, trees: Sequence[SheetTree]) -> Plain:
        """The way that a plan was made in."""
        roomy = cls(problem, frozenset(match.id for match in problem.matches))
        kept = roomy.kept(trees)
        return cls(problem, kept)

    def kept(self, trees: Iterable[SheetTree]) -> frozenset[str]:
        """Ids of matches that are cut out of one piece there."""
        found = {leaf.part for tree in trees for leaf in leaves(self._together(tree.root))}
        return frozenset(match.id for name, match in self._names.items() if name in found)


def is_plain(problem: Problem) -> bool:
    """Whether the searches can take a problem as it is."""
    return not problem.matches and not any(any(mirror_of(item.trim)) for item in problem.stock)


def plain_ways(problem: Problem) -> tuple[Plain, ...]:
    """Ways to make a problem plain; the first, the tightest, has a bound that holds for all."""
    parts = {part.id: part for part in problem.parts}
    roomy = frozenset(match.id for match in problem.matches if _has_like_parts(match, parts))
    tight = Plain(problem)
    return (tight, Plain(problem, roomy)) if roomy and problem.kerf else (tight,)


def _has_like_parts(match: Match, parts: Mapping[str, PartDemand]) -> bool:
    """Whether some parts of a row are of one size."""
    if not all(isinstance(one, str) for one in match.of):
        return False
    members = [parts[one] for one in match.parts for _ in range(parts[one].count)]
    sizes = [part.width if match.way == "across" else part.length for part in members]
    return len(set(sizes)) < len(sizes)


def _copies(match: Match, problem: Problem) -> Iterator[tuple[str, int]]:
    """The pieces of a match, in order."""
    counts = {part.id: part.count for part in problem.parts}
    for part in match.parts:
        yield from ((part, copy) for copy in range(1, counts[part] + 1))


def _unlike(name: str, taken: set[str]) -> str:
    """A name that no part has."""
    name = f"match {name}"
    while name in taken:
        name += "'"
    taken.add(name)
    return name
