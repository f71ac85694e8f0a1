"""The verifier catches every kind of corruption of a good plan."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.cutting_problems import sheet_problem, two_cases

from casewright.cutting import (
    Bound,
    Breach,
    Defect,
    Leaf,
    PartDemand,
    Placement,
    Problem,
    Reason,
    Rect,
    SheetTree,
    Solution,
    Split,
    Status,
    StockItem,
    Stop,
    Trim,
    Unplaced,
    Violation,
    solve,
    verify,
)

PROBLEM = two_cases()
GOOD = solve(PROBLEM, Stop(2_000))

Change = Callable[[Solution], Solution]


def _moved(index: int, **changes: object) -> Change:
    """A plan in which one placement, and the leaf of the tree with it, is changed."""

    def change(solution: Solution) -> Solution:
        old = solution.placements[index]
        new = replace(old, **changes)  # type: ignore[arg-type]
        placements = list(solution.placements)
        placements[index] = new
        trees = [
            replace(tree, root=_swapped(tree.root, old, new)) if tree.sheet == old.sheet else tree
            for tree in solution.tree
        ]
        return replace(solution, placements=tuple(placements), tree=tuple(trees))

    return change


def _swapped(node: Leaf | Split, old: Placement, new: Placement) -> Leaf | Split:
    if isinstance(node, Split):
        return replace(node, pieces=tuple(_swapped(p, old, new) for p in node.pieces))
    if (node.part, node.copy) == (old.part, old.copy):
        return Leaf(new.rect, "part", new.part, new.copy)
    return node


def _at(rect: Rect, x: int, y: int) -> Rect:
    return rect._replace(x=rect.x + x, y=rect.y + y)


FIRST = GOOD.placements[0]
SECOND = GOOD.placements[1]


def _without_first(solution: Solution) -> Solution:
    return replace(solution, placements=solution.placements[1:])


def _first_twice(solution: Solution) -> Solution:
    return replace(solution, placements=(*solution.placements, solution.placements[0]))


def _listed(count: int) -> Change:
    entry = Unplaced(FIRST.part, count, Reason.TOO_LARGE)
    return lambda solution: replace(solution, unplaced=(entry,))


def _tree(**changes: object) -> Change:
    """A plan in which the first sheet's tree is changed."""

    def change(solution: Solution) -> Solution:
        first = replace(solution.tree[0], **changes)  # type: ignore[arg-type]
        return replace(solution, tree=(first, *solution.tree[1:]))

    return change


def _root(**changes: object) -> Change:
    return lambda solution: _tree(root=replace(solution.tree[0].root, **changes))(solution)  # type: ignore[arg-type]


ROOT = GOOD.tree[0].root
assert isinstance(ROOT, Split)

CORRUPTIONS: list[tuple[str, Change, Breach]] = [
    ("a part is lost", _without_first, Breach.MISSING),
    ("a part is placed twice", _first_twice, Breach.REPEATED),
    ("a placed part is listed as unplaced", _listed(1), Breach.REPEATED),
    ("a negative count hides a repetition", _listed(-1), Breach.REPEATED),
    ("a copy that was not ordered", _moved(0, copy=99), Breach.REPEATED),
    ("a part nobody asked for", _moved(0, part="cornice"), Breach.UNKNOWN_PART),
    ("a part too long", _moved(0, rect=FIRST.rect._replace(length=9)), Breach.SIZE),
    (
        "a part said to be turned that is not",
        _moved(0, turned=True),
        Breach.SIZE,
    ),
    (
        "a part against its grain",
        _moved(
            0, turned=True, rect=Rect(FIRST.rect.x, FIRST.rect.y, *FIRST.rect[:1:-1])
        ),
        Breach.GRAIN,
    ),
    ("a part over the edge", _moved(0, rect=_at(FIRST.rect, -1, 0)), Breach.OUTSIDE),
    ("a part on another", _moved(0, rect=_at(SECOND.rect, 5, 5)), Breach.OVERLAP),
    ("a part on a sheet that is not there", _moved(0, sheet=7), Breach.PLACEMENT),
    (
        "a placement that the tree does not cut",
        lambda s: replace(s, placements=(replace(FIRST, copy=2), *s.placements[1:])),
        Breach.PLACEMENT,
    ),
    ("stock that does not exist", _tree(stock="oak"), Breach.UNKNOWN_STOCK),
    ("sheets numbered wrongly", _tree(sheet=5), Breach.TREE),
    ("a tree that is not of the whole sheet", _root(rect=Rect(0, 0, 9, 9)), Breach.TREE),
    ("a cut moved by one", _root(cuts=(ROOT.cuts[0] + 1, *ROOT.cuts[1:])), Breach.TREE),
    ("a cut forgotten", _root(cuts=ROOT.cuts[1:]), Breach.TREE),
    ("no cut at all", _root(cuts=()), Breach.TREE),
    ("a cut through the air", _root(cuts=(*ROOT.cuts, 99_999)), Breach.TREE),
    ("cuts out of order", _root(cuts=(*ROOT.cuts, ROOT.cuts[0])), Breach.TREE),
    ("a piece lost on the way", _root(pieces=ROOT.pieces[1:]), Breach.TREE),
    ("a piece from nowhere", _root(pieces=(*ROOT.pieces, ROOT.pieces[0])), Breach.TREE),
    ("a sheet for nothing", lambda s: replace(s, cost=s.cost - 1), Breach.COST),
    (
        "a bound above the plan",
        lambda s: replace(s, bound=Bound(s.cost + 1)),
        Breach.BOUND,
    ),
    (
        "a proof that is none",
        lambda s: replace(s, bound=Bound(s.cost - 1), status=Status.PROVED),
        Breach.BOUND,
    ),
    ("a card lost", lambda s: replace(s, cards=s.cards[1:]), Breach.CARDS),
    (
        "a card that counts one too many",
        lambda s: replace(s, cards=(replace(s.cards[0], pieces=99), *s.cards[1:])),
        Breach.CARDS,
    ),
]  # fmt: skip


def test_the_plan_is_good_before_it_is_spoiled() -> None:
    """Else the corruptions below would prove nothing."""
    assert verify(PROBLEM, GOOD) == ()


@pytest.mark.parametrize(
    ("change", "breach"),
    [case[1:] for case in CORRUPTIONS],
    ids=[case[0] for case in CORRUPTIONS],
)
def test_a_spoiled_plan_is_caught(change: Change, breach: Breach) -> None:
    """The breach is named for what it is."""
    assert breach in {violation.breach for violation in verify(PROBLEM, change(GOOD))}


THREE_STAGES = Problem(
    "mm", 0, 3, (StockItem("s", 100, 100),),
    (
        PartDemand("a", 30, 60, 2), PartDemand("b", 20, 40, 3), PartDemand("c", 20, 30, 2),
        PartDemand("d", 40, 70),
    ),
)  # fmt: skip
"""One sheet, filled: panels of 60 and 40, strips in each, parts in the strips."""


@pytest.mark.parametrize(
    ("change", "breach"), [({"kerf": 1}, Breach.KERF), ({"stages": 2}, Breach.STAGES)]
)
def test_a_plan_for_other_saws_is_caught(change: dict[str, int], breach: Breach) -> None:
    """A wider blade or fewer stages than it was made for."""
    solution = solve(THREE_STAGES)
    assert solution.cost == 1
    assert verify(THREE_STAGES, solution) == ()
    spoiled = verify(replace(THREE_STAGES, **change), solution)  # type: ignore[arg-type]
    assert breach in {violation.breach for violation in spoiled}


@pytest.mark.parametrize(
    ("change", "breach"),
    [
        ({"trim": Trim(left=1)}, Breach.OUTSIDE),
        ({"trim": Trim(bottom=1)}, Breach.OUTSIDE),
        ({"defects": (Defect(10, 10, 1, 1),)}, Breach.DEFECT),
        ({"count": 1}, Breach.STOCK_COUNT),
    ],
)
def test_a_plan_for_other_sheets_is_caught(change: dict[str, object], breach: Breach) -> None:
    """Edges that must come off, a knot under a part, a pile that is too small."""
    item = replace(PROBLEM.stock[0], **change)  # type: ignore[arg-type]
    spoiled = verify(replace(PROBLEM, stock=(item,)), GOOD)
    assert breach in {violation.breach for violation in spoiled}


def _pinwheel() -> tuple[Problem, Solution]:
    """Four parts round a fifth: they do not overlap, but no cut goes through."""
    problem = Problem(
        "mm", 0, None, (sheet_problem().stock[0],), tuple(
            PartDemand(name, length, width)
            for name, length, width in (
                ("a", 2048, 512), ("b", 1024, 1024), ("c", 2048, 512), ("d", 1024, 1024),
                ("e", 1024, 512),
            )
        ),
    )  # fmt: skip
    corners = {"a": (0, 0), "b": (2048, 0), "c": (1024, 1024), "d": (0, 512), "e": (1024, 512)}
    leaves = tuple(
        Leaf(Rect(*corners[part.id], part.length, part.width), "part", part.id, 1)
        for part in problem.parts
    )
    placements = tuple(Placement(leaf.part, 1, 0, leaf.rect) for leaf in leaves)
    root = Split(Rect(0, 0, 3072, 1536), "rip", (512, 1024), leaves)
    tree = (SheetTree(0, "ply", root),)
    return problem, Solution(placements, tree, (), 1, Bound(1), Status.PROVED)


def test_a_layout_without_a_through_cut_is_caught() -> None:
    """A pinwheel packs well and cannot be sawn from edge to edge."""
    breaches = {violation.breach for violation in verify(*_pinwheel())}
    assert Breach.TREE in breaches
    assert not breaches & {Breach.OVERLAP, Breach.OUTSIDE, Breach.SIZE, Breach.MISSING}


def test_a_violation_says_where() -> None:
    """Sheet, part and words."""
    found = verify(PROBLEM, _moved(0, rect=_at(FIRST.rect, -1, 0))(GOOD))
    outside = next(v for v in found if v.breach is Breach.OUTSIDE)
    assert isinstance(outside, Violation)
    assert (outside.sheet, outside.part) == (FIRST.sheet, FIRST.part)


def test_a_final_trim_and_the_trimming_of_edges_are_no_stages() -> None:
    """Two stages with both: rips that take the edges off too, crosscuts, and a trim to size."""
    sheet = replace(sheet_problem().stock[0], trim=Trim(4, 4, 4, 4))
    problem = sheet_problem(
        PartDemand("wide", 1_500, 600, 2), PartDemand("less wide", 1_500, 580, 2),
        stages=2, sheet=sheet,
    )  # fmt: skip
    assert verify(problem, solve(problem)) == ()
