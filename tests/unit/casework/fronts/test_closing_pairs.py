"""A pair of doors of which one is cut already: the other one closes the front."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import APPLIED, GLASS, INCH, SLAB, case_spec, house, length, stock

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import FrontSpec
from casewright.dims import Origin
from casewright.facts import Fact

_CUT = {"slab": "slab.width", "applied frame": "slab.width", "glass frame": "rail_bottom.length"}
_STEP = INCH / 32


def _made(front: FrontSpec, hand: str = "", off: Fraction = Fraction(0)) -> tuple[House, Case]:
    """A pair, one leaf of it cut wider than planned."""
    facts = {}
    if hand:
        name = f"upper.door_{hand}.{_CUT[front.construction]}"
        plain = house()
        build_case(plain, case_spec(front=front))
        cut = plain.chain.nodes[name].value + off
        facts = {name: Fact(Origin("measured", "tape"), cut=cut)}
    own = house(facts=facts)
    return own, build_case(own, case_spec(front=front))


@pytest.mark.parametrize("off", ["-3/8", "1/4"])
@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("front", [SLAB, APPLIED, GLASS], ids=lambda f: f.construction)
def test_the_other_leaf_takes_what_is_left(front: FrontSpec, hand: str, off: str) -> None:
    """A leaf cut 3/8 narrow or 1/4 wide: its twin changes by as much, the gap stays 1/8."""
    stray = Fraction(off) * INCH
    _, plain = _made(front)
    own, case = _made(front, hand, stray)
    was = {leaf.hinge_side: leaf.width.value for leaf in plain.doors}
    now = {leaf.hinge_side: leaf.width.value for leaf in case.doors}
    other = "left" if hand == "right" else "right"
    assert now[hand] == was[hand] + stray  # type: ignore[index]
    assert abs(now[other] - (was[other] - stray)) < _STEP  # type: ignore[index]
    [gap] = case.faces[0].gaps
    assert INCH / 8 <= gap.value < INCH / 8 + _STEP
    assert all(fit.holds for fit in own.chain.fits.values())


def test_a_leaf_cut_as_planned_leaves_its_twin_alone() -> None:
    """Recording what was planned anyway changes nothing."""
    _, plain = _made(SLAB)
    _, case = _made(SLAB, "left")
    assert [leaf.width.value for leaf in case.doors] == [leaf.width.value for leaf in plain.doors]


def test_why_of_the_other_leaf_leads_to_the_one_that_was_cut() -> None:
    """The cause of the change stands in its formula."""
    own, _ = _made(SLAB, "left", -INCH / 4)
    named, todo = set(), [own.chain.nodes["upper.door_right.width"]]
    while todo:
        dim = todo.pop()
        named.add(dim.path)
        todo.extend(arg for arg in dim.args if not isinstance(arg, Fraction))
    assert "upper.door_left.slab.width" in named


@pytest.mark.parametrize("front", [SLAB, APPLIED, GLASS], ids=lambda f: f.construction)
@pytest.mark.parametrize(
    ("thickness", "wide", "leaf", "gap"),
    [
        ("0.703", "33", "16 3/8", "0.12475"),
        ("0.713", "33", "16 3/8", "0.1135"),
        ("0.708", "33", "16 3/8", "0.13475"),
        ("0.703", "33 1/32", "16 3/8", "0.156"),
    ],
)
def test_a_leaf_does_not_give_up_a_step_for_a_hair(
    front: FrontSpec, thickness: str, wide: str, leaf: str, gap: str
) -> None:
    """A case of 33: leaves of (33 - 1/8 - 1/8) / 2 = 16 3/8, less or more by the box as cut.

    Worked by hand. Sides of 0.703 and a bottom of 31 19/32 make 32.99975: leaves of 16.374875,
    a hair under 16 3/8, are cut 16 3/8 and the gap is 0.12475. Of a case of 33 1/32 the leaves
    would be 16 3/8 and half of 1/32: they go down.
    """
    own = house(goods=stock(ply=thickness))
    case = build_case(own, case_spec(front=front, width=wide))
    assert [door.width.value for door in case.doors] == [length(leaf)] * 2
    [between] = case.faces[0].gaps
    assert between.value == Fraction(gap) * INCH
