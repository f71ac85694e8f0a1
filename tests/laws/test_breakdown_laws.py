"""Laws of breaking a job down and of buying for it, over cases of many kinds and sizes."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.builders import APPLIED, GLASS, INCH, SLAB, Unit, case_spec, job, stock

from casewright.breakdown import break_down
from casewright.buying import buy_list
from casewright.buying.edges import edges
from casewright.casework.specs import CaseSpec
from casewright.cutting.engine import Stop
from casewright.cutting.solution import leaves
from casewright.dims import Given, Origin
from casewright.facts import Fact
from casewright.room.build import build
from casewright.room.model import Room
from casewright.stock import Glazing

_CHOSEN = Origin("chosen", "test")
_SHORT = Stop(300)


def _size(unit: Unit, least: int, most: int) -> st.SearchStrategy[Given]:
    """Sizes between two numbers of inches, on the grid of the unit's tape."""
    if unit == "in":
        steps = st.integers(least * 32, most * 32)
        return steps.map(lambda n: Given(Fraction(n, 32) * INCH, _CHOSEN))
    return st.integers(least * 50, most * 50).map(lambda n: Given(Fraction(n, 2), _CHOSEN))


@st.composite
def _case(draw: st.DrawFn, unit: Unit, key: str) -> CaseSpec:
    kind = draw(st.sampled_from(["wall", "base", "bookcase"]))
    front = None if kind == "bookcase" else draw(st.sampled_from([None, SLAB, APPLIED, GLASS]))
    return case_spec(
        unit,
        key=key,
        kind=kind,
        width=draw(_size(unit, 14, 44)),
        height=draw(_size(unit, 28, 46)),
        depth=draw(_size(unit, 10, 24)),
        toe="none" if kind != "base" else draw(st.sampled_from(["notch", "plinth"])),
        joint=draw(st.sampled_from(["pocket screws", "dado", "rabbet"])),
        back=draw(st.sampled_from(["rabbeted", "grooved", "applied", "inset"])),
        edge=draw(st.sampled_from(["painted", "band", "lip"])),
        shelves=draw(st.integers(0, 3)),
        front=front,
    )


@st.composite
def _rooms(draw: st.DrawFn) -> Room:
    unit: Unit = draw(st.sampled_from(["in", "mm"]))
    cases = [draw(_case(unit, f"case{n}")) for n in range(draw(st.integers(1, 3)))]
    facts = {
        f"stock.{key}.thickness": Fact(Origin("measured", "calliper"), built=item.thickness.value)
        for key, item in stock(unit).items()
        if key != "band" and draw(st.booleans())
    }
    return build(job(*cases, unit=unit), facts)


_LAW = settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow], deadline=None)


@_LAW
@given(_rooms())
def test_nothing_is_lost_from_parts_to_problems_and_back(room: Room) -> None:
    """Every part of wood is cut once, or waits, or is reported as too large; none twice."""
    breakdown = break_down(room, stop=_SHORT)
    parts = [part for part in room.parts if not isinstance(room.spec.stock[part.stock], Glazing)]
    for plans, held in (
        (breakdown.plans, {entry.part for entry in breakdown.waiting}),
        (breakdown.wanted, set()),
    ):
        cut = Counter(place.part for plan in plans for place in plan.solution.placements)
        left = {entry.part for plan in plans for entry in plan.solution.unplaced}
        assert all(count == 1 for count in cut.values())
        assert not cut.keys() & (held | left)
        assert {part.path for part in parts} <= cut.keys() | held | left


@_LAW
@given(_rooms())
def test_area_is_conserved(room: Room) -> None:
    """What lies on the sheets is exactly the area of the pieces that were asked for.

    Parts, offcuts, waste and saw dust make up all of every sheet, board and strip. No cut takes
    more than the blade does; less where less than that is left beside it.
    """
    for plan in break_down(room, stop=_SHORT).wanted:
        left = {entry.part for entry in plan.solution.unplaced}
        asked = sum(
            (p.length * p.width for p in plan.pieces.values() if p.id not in left), Fraction(0)
        )
        laid = sum(
            leaf.rect.area
            for tree in plan.solution.tree
            for leaf in leaves(tree.root)
            if leaf.use == "part"
        )
        assert laid * plan.unit.step**2 == asked
        for tree in plan.solution.tree:
            dust = 0
            for step in plan.order.on_sheet(tree.sheet):
                piece = step.piece.rect
                taken = piece.area - sum(leaf.rect.area for leaf in step.leaves)
                along = piece.length if step.direction == "rip" else piece.width
                assert 0 <= taken <= plan.problem.kerf * along
                dust += taken
            assert tree.root.rect.area == sum(leaf.rect.area for leaf in leaves(tree.root)) + dust


@_LAW
@given(_rooms())
def test_the_buy_list_covers_everything(room: Room) -> None:
    """Whole packs hold need and spares; every stock a part or an edge names is bought.

    What the plans use of a stock stands on the list once.
    """
    breakdown = break_down(room, stop=_SHORT)
    lines = buy_list(room, breakdown)
    for line in lines:
        assert (line.count - 1) * line.pack < line.need + line.spare <= line.count * line.pack
    for plan in breakdown.wanted:
        if plan.kind != "strips":
            assert sum(line.need for line in lines if line.key == plan.stock) == plan.count
    bought = {line.key for line in lines}
    made_of = {plan.stock for plan in breakdown.wanted if plan.kind == "strips"}
    used = {part.stock for part in room.parts}
    used |= {edge.stock for part in room.parts for edge in part.edges if edge.stock}
    assert used - made_of <= bought
    screws = [f for c in room.cases for j in c.joints for f in j.fastenings if f.length]
    kinds = {f.kind.replace(" ", "_") for f in screws}
    assert kinds <= bought


@_LAW
@given(_rooms())
def test_every_banded_edge_is_on_one_line(room: Room) -> None:
    """Counted anew on the parts: all edges with their tails, fifteen in a hundred more."""
    banded: dict[str, list[Fraction]] = {}
    for part in room.parts:
        for edge in part.edges:
            across = edge.edge in ("l0", "l1")
            size = part.finished.width if across else part.finished.length
            if edge.kind == "band":
                banded.setdefault(edge.stock, []).append(size.value)
    lines = list(edges(room))
    assert sorted(line.key for line in lines) == sorted(banded)
    tail = room.spec.style["band_tail"].value
    for line in lines:
        own = banded[line.key]
        assert line.need == sum(own)
        assert line.need + line.spare >= sum(own) * Fraction(115, 100) + len(own) * tail
