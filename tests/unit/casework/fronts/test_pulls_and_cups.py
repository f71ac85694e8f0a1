"""Holes in doors: pulls where the hand goes, cups with wood under them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    SLAB,
    case_spec,
    given,
    house,
    length,
    one_case,
    plain_style,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Bores
from casewright.casework.specs import Hand
from casewright.findings import Severity


def _pull(case: Case, part: str) -> Bores:
    (found,) = [f for f in case.part(part).features if isinstance(f, Bores) and f.kind == "pull"]
    return found


def test_wall_doors_are_pulled_near_their_bottom() -> None:
    """Two holes 96 apart, right through, from the bottom end and the free edge."""
    pull = _pull(one_case("in", width="18", front=SLAB), "upper.door.slab")
    (low, line), (high, _) = pull.places
    assert (pull.datum_l, pull.datum_w, pull.depth) == ("l0", "w1", None)
    assert low.value == length("2 1/2")
    assert high.value - low.value == 96
    assert line.value == length("1 1/4")


def test_a_usual_pull_sits_4_in_from_the_lower_edge() -> None:
    """Of 3 in from screw to screw, its middle (common practice)."""
    made = house("in")
    three = replace(made.hardware.pull, centres=given("3"))
    made = replace(made, hardware=replace(made.hardware, pull=three))
    low, high = _pull(build_case(made, case_spec("in", width="18", front=SLAB)),
                      "upper.door.slab").places  # fmt: skip
    assert (low[0].value + high[0].value) / 2 == length("4")


def test_base_doors_are_pulled_near_their_top() -> None:
    """The door of a base case is measured from its top end."""
    pull = _pull(one_case("in", kind="base", toe="notch", height="34 1/2", width="18",
                          depth="23 1/4", front=SLAB), "upper.door.slab")  # fmt: skip
    assert pull.datum_l == "l1"
    assert pull.places[0][0].value == length("2 1/2")


def test_tall_doors_are_pulled_in_reach() -> None:
    """On a door as high as a man the pull's upper hole is 42 in above the floor."""
    front = replace(SLAB, slab="ply18")
    case = one_case("in", kind="bookcase", height="84", width="18", front=front, shelves=3)
    pull = _pull(case, "upper.door.slab")
    assert pull.datum_l == "l0"
    assert case.doors[0].y.value + pull.places[-1][0].value == length("42")


def test_upper_doors_of_a_stack_are_pulled_near_their_bottom() -> None:
    """The glass door above a divider is pulled low, clear of its corner joint."""
    case = one_case("in", height="51", divider="36", front=SLAB, upper_front=GLASS, joint="dado")
    pull = _pull(case, "upper.upper_door_left.stile_right")
    assert pull.datum_l == "l0"
    assert pull.places[0][0].value >= length("2 1/2") + pull.diameter.value / 2


def test_pull_of_an_applied_frame_passes_strip_and_slab() -> None:
    """Strip and slab are bored in line, from the same end."""
    case = one_case("in", width="18", front=APPLIED)
    slab, stile = (_pull(case, f"upper.door.{name}") for name in ("slab", "stile_right"))
    assert [a.value for a, _ in slab.places] == [a.value for a, _ in stile.places]
    assert (slab.datum_w, stile.datum_w) == ("w1", "w0")
    assert case.doors[0].pull == stile.path


def test_no_holes_where_no_pull_is_wanted() -> None:
    """A front without a pull is not bored for one."""
    case = one_case("in", width="18", front=replace(SLAB, pull=False))
    assert case.doors[0].pull == ""
    bores = [f for f in case.part("upper.door.slab").features if isinstance(f, Bores)]
    assert {f.kind for f in bores} == {"hinge cup"}


def test_knob_takes_one_hole() -> None:
    """A pull whose sheet gives centres of 0 is a knob."""
    made = house("in")
    knob = replace(made.hardware.pull, centres=given("0"))
    made.hardware = replace(made.hardware, pull=knob)
    pull = _pull(build_case(made, case_spec("in", width="18", front=SLAB)), "upper.door.slab")
    assert len(pull.places) == 1


def test_low_door_has_its_pull_in_the_middle() -> None:
    """Where both ends cannot be kept, the pull sits in the middle of the door's height."""
    case = one_case("in", height="7 1/16", width="18", front=SLAB, shelves=0)
    (low, _), (high, _) = _pull(case, "upper.door.slab").places
    assert low.value + high.value == length("7")


@pytest.mark.parametrize("hinge", ["left", "right"])
def test_cups_read_the_same_in_both_hands(hinge: Hand) -> None:
    """Cup centres are bore distance and half a cup from the datum edge, at the hinges."""
    case = one_case("in", width="18", front=replace(SLAB, hinge=hinge))
    part = case.part("upper.door.slab")
    cups = [f for f in part.features if isinstance(f, Bores) and f.kind == "hinge cup"]
    assert part.hand == hinge
    for cup in cups:
        ((_, line),) = cup.places
        assert (cup.face, cup.datum_w) == ("B", "w0")
        assert line.value == case.doors[0].bore_distance.value + Fraction(35, 2)


def test_thin_slab_under_a_cup_wants_a_look() -> None:
    """A slab of 15 under cups of 12.5 leaves 2.5 where 5 are wanted; a stile over it is enough."""
    bare = one_case("mm", front=SLAB)
    (finding,) = [f for f in bare.findings if f.rule == "wood under the cup"]
    assert finding.severity is Severity.CARE
    framed = one_case("mm", front=APPLIED)
    assert not [f for f in framed.findings if f.rule == "wood under the cup"]


def test_narrow_stile_does_not_count_under_a_cup() -> None:
    """A strip that does not cover the whole cup adds nothing under it."""
    case = one_case("mm", front=APPLIED, style=plain_style("mm", stile="38"))
    assert [f for f in case.findings if f.rule == "wood under the cup"]
