"""An independent check of a plan against its problem.

Written from the contract alone; shares no code with the solvers.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from casewright.cutting.claim_verifier import claim_violations
from casewright.cutting.match_verifier import match_violations
from casewright.cutting.problem import PartDemand, Problem, StockItem
from casewright.cutting.solution import (
    Direction,
    Leaf,
    Placement,
    Reason,
    Rect,
    SettingCard,
    Solution,
    Split,
    Status,
)  # fmt: skip
from casewright.cutting.tree_verifier import tree_violations
from casewright.cutting.violations import Breach, Violation

__all__ = ["verify"]


def verify(problem: Problem, solution: Solution) -> tuple[Violation, ...]:
    """Everything wrong with a plan; nothing when it can be cut as it stands.

    Every part is placed once or listed as unplaced; sizes, grain, edge trims, defects and the
    kerf are kept; no two parts overlap; matched parts lie in their order; the cut trees are
    guillotine cuts in the allowed number of stages and give just the placed parts; stock, cost,
    bound, status and cards add up.
    """
    return (
        *_count_violations(problem, solution),
        *_stock_violations(problem, solution),
        *_sheet_violations(problem, solution),
        *match_violations(problem, solution),
        *_tree_matches(solution),
        *_value_violations(problem, solution),
        *claim_violations(problem, solution),
        *_card_violations(solution),
    )


def _count_violations(problem: Problem, solution: Solution) -> Iterator[Violation]:
    parts = {part.id: part for part in problem.parts}
    copies = Counter((placed.part, placed.copy) for placed in solution.placements)
    dealt = Counter(placed.part for placed in solution.placements)
    for entry in solution.unplaced:
        dealt[entry.part] += entry.count
        if entry.count < 1:
            yield Violation(Breach.REPEATED, f"{entry.count} unplaced", part=entry.part)
    for name in sorted(dealt.keys() - parts.keys()):
        yield Violation(Breach.UNKNOWN_PART, f'there is no part "{name}"', part=name)
    for (name, copy), times in sorted(copies.items()):
        is_known = name not in parts or 1 <= copy <= parts[name].count
        if times > 1 or not is_known:
            yield Violation(Breach.REPEATED, f"piece {copy} is placed {times} times", part=name)
    for name, part in parts.items():
        if dealt[name] != part.count:
            breach = Breach.MISSING if dealt[name] < part.count else Breach.REPEATED
            says = f"{part.count} wanted, {dealt[name]} placed or listed as unplaced"
            yield Violation(breach, says, part=name)


def _stock_violations(problem: Problem, solution: Solution) -> Iterator[Violation]:
    stock = {item.id: item for item in problem.stock}
    for number, tree in enumerate(solution.tree):
        if tree.sheet != number:
            yield Violation(Breach.TREE, f"sheet {number} is numbered {tree.sheet}", number)
        if tree.stock in stock:
            yield from tree_violations(problem, stock[tree.stock], tree)
        else:
            yield Violation(Breach.UNKNOWN_STOCK, f'there is no stock "{tree.stock}"', number)
    for name, used in Counter(tree.stock for tree in solution.tree).items():
        count = stock[name].count if name in stock else None
        if count is not None and used > count:
            yield Violation(Breach.STOCK_COUNT, f'{used} of "{name}" used, there are {count}')


def _sheet_violations(problem: Problem, solution: Solution) -> Iterator[Violation]:
    parts = {part.id: part for part in problem.parts}
    stock = {item.id: item for item in problem.stock}
    on: dict[int, list[Placement]] = {}
    for placed in solution.placements:
        on.setdefault(placed.sheet, []).append(placed)
        if placed.part in parts:
            yield from _part_violations(parts[placed.part], placed)
    for sheet, placements in on.items():
        if not 0 <= sheet < len(solution.tree):
            yield Violation(Breach.PLACEMENT, f"there is no sheet {sheet}", sheet)
            continue
        item = stock.get(solution.tree[sheet].stock)
        if item is not None:
            for placed in placements:
                yield from _ground_violations(item, placed)
        yield from _spacing_violations(placements, problem.kerf)


def _part_violations(part: PartDemand, placed: Placement) -> Iterator[Violation]:
    size = (part.width, part.length) if placed.turned else (part.length, part.width)
    if tuple(placed.rect[2:]) != size:
        lies = placed.rect
        says = f"{lies.length} x {lies.width} on the sheet, wanted {size[0]} x {size[1]}"
        yield Violation(Breach.SIZE, says, placed.sheet, part.id)
    if placed.turned and not part.rotate:
        yield Violation(Breach.GRAIN, "turned", placed.sheet, part.id)


def _ground_violations(item: StockItem, placed: Placement) -> Iterator[Violation]:
    rect, trim = placed.rect, item.trim
    inside = rect.x >= trim.left and rect.x1 <= item.length - trim.right
    inside = inside and rect.y >= trim.bottom and rect.y1 <= item.width - trim.top
    if not inside:
        yield Violation(Breach.OUTSIDE, f"{rect}", placed.sheet, placed.part)
    for spot in item.defects:
        if _apart(rect, Rect(spot.x, spot.y, spot.length, spot.width)) < 0:
            says = f"{rect} on the defect {spot.length} x {spot.width} at {spot.x}, {spot.y}"
            yield Violation(Breach.DEFECT, says, placed.sheet, placed.part)


def _spacing_violations(placements: list[Placement], kerf: int) -> Iterator[Violation]:
    row = sorted(placements, key=lambda placed: placed.rect)
    for index, one in enumerate(row):
        for other in row[index + 1 :]:
            if other.rect.x >= one.rect.x1 + kerf:
                break
            gap = _apart(one.rect, other.rect)
            if gap < kerf:
                breach = Breach.OVERLAP if gap < 0 else Breach.KERF
                says = f"{one.rect} and {other.part} at {other.rect}"
                yield Violation(breach, says, one.sheet, one.part)


def _apart(one: Rect, other: Rect) -> int:
    """The wider of the gaps along x and y; negative when the rectangles share ground."""
    across = max(other.x - one.x1, one.x - other.x1)
    return max(across, other.y - one.y1, one.y - other.y1)


def _tree_matches(solution: Solution) -> Iterator[Violation]:
    cut = Counter(
        (leaf.part, leaf.copy, tree.sheet, leaf.rect)
        for tree in solution.tree
        for leaf in _leaves(tree.root)
        if leaf.use == "part"
    )
    placed = Counter((p.part, p.copy, p.sheet, p.rect) for p in solution.placements)
    for part, copy, sheet, rect in sorted((cut - placed) + (placed - cut)):
        says = f"piece {copy} at {rect} is not in both"
        yield Violation(Breach.PLACEMENT, says, sheet, part)


def _leaves(root: Leaf | Split) -> Iterator[Leaf]:
    waiting = [root]
    while waiting:
        node = waiting.pop()
        if isinstance(node, Leaf):
            yield node
        else:
            waiting += node.pieces


def _value_violations(problem: Problem, solution: Solution) -> Iterator[Violation]:
    prices = {item.id: item.price for item in problem.stock}
    bound = solution.bound
    cost = len(solution.tree)
    if bound.measure == "price":
        cost = sum(prices.get(tree.stock, 0) for tree in solution.tree)
    if cost != solution.cost:
        yield Violation(Breach.COST, f"{solution.cost} is given, the sheets cost {cost}")
    if bound.value > cost:
        yield Violation(Breach.BOUND, f"at least {bound.value} is claimed, {cost} is enough")
    is_short = any(entry.reason is Reason.NO_STOCK for entry in solution.unplaced)
    want = Status.PROVED if cost == bound.value else Status.BOUNDED
    if solution.status is not (Status.SHORT if is_short else want):
        yield Violation(Breach.BOUND, f"the status is {solution.status.value}")


def _card_violations(solution: Solution) -> Iterator[Violation]:
    counts: dict[tuple[Direction, int], Counter[int]] = {}
    for tree in solution.tree:
        waiting: list[Leaf | Split] = [tree.root]
        while waiting:
            node = waiting.pop()
            if isinstance(node, Split):
                waiting += node.pieces
                for piece in node.pieces:
                    if isinstance(piece, Split) or piece.use == "part":
                        size = piece.rect.width if node.direction == "rip" else piece.rect.length
                        counts.setdefault((node.direction, size), Counter())[tree.sheet] += 1
    cards = tuple(
        SettingCard(*key, pieces=counts[key].total(), sheets=tuple(sorted(counts[key])))
        for key in sorted(counts, key=lambda key: (key[0] != "rip", -key[1]))
    )
    if cards != solution.cards:
        yield Violation(Breach.CARDS, f"the trees give {cards}")
