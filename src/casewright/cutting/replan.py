"""A plan after something changed: cut sheets stay, and of the others as little moves as may be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import NamedTuple

from casewright.cutting.engine import Stop, solve
from casewright.cutting.outcome import lower_bound, solution_of, sort_out
from casewright.cutting.plain import Plain, is_plain
from casewright.cutting.problem import Fault, Problem, ProblemError
from casewright.cutting.solution import (
    Bound,
    Leaf,
    Node,
    Rect,
    SheetTree,
    Solution,
    Split,
    Status,
    leaves,
)  # fmt: skip
from casewright.cutting.tree import Axis, Cell, divide, leftover
from casewright.cutting.verifier import verify

__all__ = ["Movement", "Replan", "replan"]

_FREED = (0, 1, 2, 3, 5, 8, 13)
"""How many sheets are laid out anew, try after try; the last try takes them all."""


@dataclass(frozen=True, slots=True)
class Movement:
    """How far a plan moved: pieces by what became of them [-].

    Parameters
    ----------
    kept
        Lie where they lay.
    moved
        Lie elsewhere.
    added, dropped
        In the new plan only, in the last one only. A part that changed its size is both.
    """

    kept: int
    moved: int
    added: int
    dropped: int


@dataclass(frozen=True, slots=True)
class Replan:
    """A plan made from another.

    Parameters
    ----------
    solution
        Kept sheets first, in the order of the last plan.
    origins
        For each sheet its number in the last plan; None: laid out anew.
    movement
        How far it moved.
    """

    solution: Solution
    origins: tuple[int | None, ...]
    movement: Movement


def replan(
    problem: Problem,
    last: Solution,
    cut: Collection[int] = (),
    stop: Stop | None = None,
    seed: int = 0,
) -> Replan:
    """Plan a changed problem from the plan that was made before the change.

    What is new goes on sheets of its own, or on as few sheets laid out anew as give the least
    cost that was found; of plans that cost the same the one that moves least is taken.

    Parameters
    ----------
    problem
        What is to be cut now, parts of sheets already cut included.
    last
        The plan before; its parts are known by their ids and sizes.
    cut
        Numbers of sheets of `last` that are cut: they stay. What they hold that is no longer
        wanted is left over.
    stop, seed
        As for `solve`.

    Returns
    -------
    The plan, whose bound counts the cut sheets as given.

    Raises
    ------
    ProblemError
        When a cut sheet cannot stand in the problem: its stock is not there, or has another size;
        or when a part of a match is cut without the others.
    """
    done, stop = frozenset(cut), stop or Stop()
    if is_plain(problem):
        return _Replanning(problem, last, done, stop, seed).run()
    plain = Plain.of_plan(problem, last.tree)
    _refuse_parted(problem, plain, [tree for tree in last.tree if tree.sheet in done])
    within = replace(last, tree=plain.trees_within(last.tree))
    made = _Replanning(plain.inner, within, done, stop, seed).run()
    solution = plain.outer(made.solution)
    return Replan(solution, made.origins, _movement(last, solution, made.origins))


def _refuse_parted(problem: Problem, plain: Plain, done: Sequence[SheetTree]) -> None:
    """Matched parts that are cut already, but not in one piece, can be matched no more."""
    kept = plain.kept(done)
    gone = {leaf.part for tree in done for leaf in leaves(tree.root) if leaf.use == "part"}
    faults = [
        Fault(
            f'match "{match.id}"', "of", "cut already in part, not in one piece",
            "without what is cut",
        )
        for match in problem.matches
        if match.id not in kept and gone.intersection(match.parts)
    ]  # fmt: skip
    if faults:
        raise ProblemError(faults)


@dataclass(frozen=True, slots=True)
class _Kept:
    """A sheet of the last plan: its number there, and its tree without what is not wanted."""

    origin: int
    tree: SheetTree


class _Replanning:
    """One re-planning."""

    def __init__(
        self, problem: Problem, last: Solution, cut: frozenset[int], stop: Stop, seed: int
    ) -> None:
        self.problem, self.last, self.cut = problem, last, cut
        self.stop, self.seed = stop, seed
        self.parts = {part.id: part for part in problem.parts}
        self.sound, self.homeless = sort_out(problem)

    def run(self) -> Replan:
        kept = self._sound_sheets()
        frozen = [sheet for sheet in kept if sheet.origin in self.cut]
        bound = self._bound(frozen)
        loose = [sheet for sheet in kept if sheet.origin not in self.cut]
        loose.sort(key=lambda sheet: (-_unused(sheet.tree), sheet.origin))
        tries = [count for count in _FREED if count < len(loose)] + [len(loose)]
        found: list[Replan] = []
        for count in tries:
            stays = sorted([*frozen, *loose[count:]], key=lambda sheet: sheet.origin)
            found.append(self._laid_out(stays, bound, self.stop.nodes // len(tries)))
            if found[-1].solution.status is Status.PROVED:
                break
        return min(found, key=_rank)

    def _sound_sheets(self) -> list[_Kept]:
        """Sheets of the last plan as far as they can stand; cut ones must."""
        wanted = Counter({part.id: part.count for part in self.problem.parts})
        left = {item.id: item.count for item in self.problem.stock}
        sheets: list[_Kept] = []
        for tree in sorted(
            self.last.tree, key=lambda tree: (tree.sheet not in self.cut, tree.sheet)
        ):
            count = left.get(tree.stock, 0)
            sheet = _Kept(tree.sheet, self._stripped(tree, wanted) if count != 0 else tree)
            if count == 0:
                self._give_up(sheet)
            elif tree.sheet in self.cut or _holds_part(sheet.tree.root):
                left[tree.stock] = None if count is None else count - 1
                sheets.append(sheet)
        trees = tuple(_numbered([sheet.tree for sheet in sheets]))
        alone = solution_of(self.problem, trees, (), Bound(0))
        wrong = {v.sheet for v in verify(self.problem, alone) if v.sheet is not None}
        for number in wrong:
            self._give_up(sheets[number])
        return [sheet for number, sheet in enumerate(sheets) if number not in wrong]

    def _give_up(self, sheet: _Kept) -> None:
        """A sheet that cannot stand is laid out anew, unless it is cut."""
        if sheet.origin in self.cut:
            raise ProblemError([self._misfit(sheet)])

    def _misfit(self, sheet: _Kept) -> Fault:
        return Fault(
            f"sheet {sheet.origin + 1}, cut already", "stock", f'"{sheet.tree.stock}"',
            "in the problem, with the size it had and the kerf it was cut with",
        )  # fmt: skip

    def _stripped(self, tree: SheetTree, wanted: Counter[str]) -> SheetTree:
        """The sheet without parts that are not wanted, or not in that size."""

        def visit(node: Node) -> Node:
            if isinstance(node, Leaf):
                if node.use != "part" or self._is_wanted(node, wanted):
                    return node
                return leftover(node.rect, self.problem.keep)
            pieces = tuple(visit(piece) for piece in node.pieces)
            if pieces == node.pieces or tree.sheet in self.cut:
                return replace(node, pieces=pieces)
            return self._divided(node, [piece for piece in pieces if _holds_part(piece)])

        return replace(tree, root=visit(tree.root))

    def _divided(self, node: Split, pieces: Sequence[Node]) -> Node:
        """A piece of the stock cut into these alone; no cut between what is left over."""
        if not pieces:
            return leftover(node.rect, self.problem.keep)
        axis: Axis = "y" if node.direction == "rip" else "x"
        cells = []
        for piece in pieces:
            x, y, x1, y1 = piece.rect.x, piece.rect.y, piece.rect.x1, piece.rect.y1
            low, high = (y, y1) if axis == "y" else (x, x1)
            cells.append(Cell(low, high, partial(_as_it_is, piece)))
        return divide(node.rect, axis, cells, self.problem.kerf, self.problem.keep)

    def _is_wanted(self, leaf: Leaf, wanted: Counter[str]) -> bool:
        part = self.parts.get(leaf.part)
        if part is None or not wanted[leaf.part]:
            return False
        size, lies = (part.length, part.width), (leaf.rect.length, leaf.rect.width)
        if lies != size and not (part.rotate and lies == size[::-1]):
            return False
        wanted[leaf.part] -= 1
        return True

    def _bound(self, frozen: Sequence[_Kept]) -> Bound:
        """What the cut sheets cost, and what the rest cannot do without."""
        rest = self._rest(frozen)
        bound = lower_bound(self.sound if not rest.parts else rest)
        prices = {item.id: item.price for item in self.problem.stock}
        by_price = bound.measure == "price"
        spent = sum(prices[sheet.tree.stock] if by_price else 1 for sheet in frozen)
        return replace(bound, value=spent + (bound.value if rest.parts else 0))

    def _rest(self, stays: Sequence[_Kept]) -> Problem:
        """What is not on these sheets, and the stock that they leave."""
        laid = Counter(
            leaf.part for sheet in stays for leaf in leaves(sheet.tree.root) if leaf.use == "part"
        )
        used = Counter(sheet.tree.stock for sheet in stays)
        return replace(
            self.sound,
            parts=tuple(
                replace(part, count=part.count - laid[part.id])
                for part in self.sound.parts
                if part.count > laid[part.id]
            ),
            stock=tuple(
                item if item.count is None else replace(item, count=item.count - used[item.id])
                for item in self.sound.stock
            ),
        )

    def _laid_out(self, stays: Sequence[_Kept], bound: Bound, nodes: int) -> Replan:
        rest = self._rest(stays)
        trees = solve(rest, replace(self.stop, nodes=nodes), self.seed).tree
        sheets = tuple(_numbered([*(sheet.tree for sheet in stays), *trees]))
        solution = solution_of(self.problem, sheets, self.homeless, bound)
        origins = (*(sheet.origin for sheet in stays), *(None for _ in trees))
        return Replan(solution, origins, _movement(self.last, solution, origins))


def _rank(made: Replan) -> tuple[int, int, int]:
    """Nothing left over, then the least cost, then the least moved."""
    short = sum(entry.count for entry in made.solution.unplaced)
    return short, made.solution.cost, -made.movement.kept


def _movement(last: Solution, now: Solution, origins: Sequence[int | None]) -> Movement:
    """Pieces of one size under one name are taken for each other."""
    before = Counter(_Spot(placed.part, placed.sheet, placed.rect) for placed in last.placements)
    after = Counter(
        _Spot(placed.part, origins[placed.sheet], placed.rect) for placed in now.placements
    )
    kept = before & after
    old, new = _pieces(before - kept), _pieces(after - kept)
    return Movement(kept.total(), (old & new).total(), (new - old).total(), (old - new).total())


class _Spot(NamedTuple):
    """A part's place: on which sheet of the last plan, where."""

    part: str
    sheet: int | None
    rect: Rect


def _pieces(spots: Counter[_Spot]) -> Counter[tuple[str, int, int]]:
    found: Counter[tuple[str, int, int]] = Counter()
    for spot, count in spots.items():
        sides = spot.rect.length, spot.rect.width
        found[spot.part, min(sides), max(sides)] += count
    return found


def _as_it_is(piece: Node, _: Rect) -> Node:
    return piece


def _holds_part(node: Node) -> bool:
    return any(leaf.use == "part" for leaf in leaves(node))


def _unused(tree: SheetTree) -> int:
    """Area of a sheet that no part lies on [unit squared]."""
    return tree.root.rect.area - sum(
        leaf.rect.area for leaf in leaves(tree.root) if leaf.use == "part"
    )


def _numbered(trees: Sequence[SheetTree]) -> Iterator[SheetTree]:
    """The sheets numbered from 0, and the pieces of each part from 1."""
    copies: Counter[str] = Counter()

    def visit(node: Node) -> Node:
        if isinstance(node, Split):
            return replace(node, pieces=tuple(visit(piece) for piece in node.pieces))
        if node.use != "part":
            return node
        copies[node.part] += 1
        return replace(node, copy=copies[node.part])

    for number, tree in enumerate(trees):
        yield SheetTree(number, tree.stock, visit(tree.root))
