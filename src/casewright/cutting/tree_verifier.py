"""Checks of cut trees: real cuts, whole pieces, few enough stages.

Written from the contract alone; shares no code with what makes the trees.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from casewright.cutting.problem import Match, Problem, StockItem
from casewright.cutting.solution import Leaf, Node, Rect, SheetTree, Split
from casewright.cutting.violations import Breach, Violation

__all__ = ["tree_violations"]

_Path = tuple[Split, ...]


def tree_violations(problem: Problem, item: StockItem, tree: SheetTree) -> Iterator[Violation]:
    """What is wrong with the cut tree of one piece of stock."""
    whole = Rect(0, 0, item.length, item.width)
    if tree.root.rect != whole:
        says = f"the tree begins with {tree.root.rect}, the stock is {whole}"
        yield Violation(Breach.TREE, says, tree.sheet)
    matched = {part: match for match in problem.matches for part in match.parts}
    for path, leaf in _paths(tree.root):
        stages = _stages(*_to_match(path, leaf, matched.get(leaf.part)), item)
        if problem.stages is not None and stages > problem.stages:
            says = f"{leaf.part or leaf.use} takes {stages} stages, allowed are {problem.stages}"
            yield Violation(Breach.STAGES, says, tree.sheet, leaf.part)
    for split in _all_splits(tree.root):
        for says in _split_faults(split, problem.kerf):
            yield Violation(Breach.TREE, says, tree.sheet)


def _paths(root: Node) -> Iterator[tuple[_Path, Leaf]]:
    """Every part with the splits that lead to it."""
    waiting: list[tuple[_Path, Node]] = [((), root)]
    while waiting:
        path, node = waiting.pop()
        if isinstance(node, Split):
            waiting += [((*path, node), piece) for piece in node.pieces]
        elif node.use == "part":
            yield path, node


def _all_splits(root: Node) -> Iterator[Split]:
    waiting: list[Node] = [root]
    while waiting:
        node = waiting.pop()
        if isinstance(node, Split):
            yield node
            waiting += node.pieces


def _split_faults(split: Split, kerf: int) -> Iterator[str]:
    """Walk along the piece: blade, piece, blade; nothing may be left over or missing."""
    rect = split.rect
    rip = split.direction == "rip"
    start, end = (rect.y, rect.y1) if rip else (rect.x, rect.x1)
    at = start
    pieces = list(split.pieces)
    if not split.cuts:
        yield f"{rect} is divided by no cut"
    if list(split.cuts) != sorted(set(split.cuts)):
        yield f"the cuts {split.cuts} of {rect} do not ascend"
    for cut in split.cuts:
        if cut >= end or cut + kerf <= start:
            yield f"the cut at {cut} misses {rect}"
    for cut in (*split.cuts, end):
        if cut > at:
            low, high = at, cut
            want = (
                Rect(rect.x, low, rect.length, high - low)
                if rip
                else Rect(low, rect.y, high - low, rect.width)
            )
            found = pieces.pop(0).rect if pieces else None
            if found != want:
                yield f"between the cuts of {rect} lies {want}, the tree has {found}"
        at = max(at, cut + kerf)
    if pieces:
        yield f"{rect} has pieces that no cut leaves: {'; '.join(str(p.rect) for p in pieces)}"


def _to_match(path: _Path, leaf: Leaf, match: Match | None) -> tuple[_Path, Node]:
    """The way to a part; of a matched one to the piece that its match is cut out of."""
    if match is None:
        return path, leaf
    for depth in range(len(path) - 1, -1, -1):
        held = [end.part for _, end in _paths(path[depth])]
        if not set(held) <= set(match.parts):
            break
        if set(held) == set(match.parts):
            return path[:depth], path[depth]
    return path, leaf


def _stages(path: _Path, leaf: Node, item: StockItem) -> int:
    """Changes of direction on the way to a part, plus one.

    Not counted: cuts that only take off the stock's trims, and a last trim to size.
    """
    counted = [split for split in path if not _trims_edges(split, item)]
    runs = [list(run) for _, run in groupby(counted, key=lambda split: split.direction)]
    is_trim = bool(runs) and len(runs[-1]) == 1 and _trims_to_size(runs[-1][0], leaf)
    return len(runs) - is_trim


def _trims_to_size(split: Split, part: Node) -> bool:
    others = [piece for piece in split.pieces if piece is not part]
    return len(others) < len(split.pieces) and all(
        isinstance(piece, Leaf) and piece.use != "part" for piece in others
    )


def _trims_edges(split: Split, item: StockItem) -> bool:
    trim = item.trim
    if split.direction == "rip":
        low, high = trim.bottom, item.width - trim.top
        spans = [(piece.rect.y, piece.rect.y1) for piece in split.pieces]
    else:
        low, high = trim.left, item.length - trim.right
        spans = [(piece.rect.x, piece.rect.x1) for piece in split.pieces]
    kept = [span for span in spans if span[1] > low and span[0] < high]
    return kept == [(low, high)]
