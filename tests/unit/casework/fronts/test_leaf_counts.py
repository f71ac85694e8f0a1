"""One door or two, by the box as built; leaves that cannot be made or want a second look."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Literal

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    INCH,
    SLAB,
    Unit,
    case_spec,
    given,
    house,
    length,
    one_case,
)
from tests.unit.checks.rooms import room_of

from casewright.casework.build import build_case
from casewright.casework.specs import DoorKind, FrontSpec
from casewright.checks import check
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity


def _built(value: Fraction) -> Fact:
    return Fact(Origin("measured", "tape across the front"), built=value)


@pytest.mark.parametrize(
    ("read", "count"), [("21 31/32", 1), ("22", 1), ("22 1/32", 2), ("22 1/16", 2)]
)
def test_the_width_as_built_decides(read: str, count: int) -> None:
    """A case cut to 22 gets one door; read a hair wider it gets two, with the right play."""
    width = length(read)
    case = one_case("in", width="22", front=SLAB, facts={"upper.width": _built(width)})
    (face,) = case.faces
    assert len(case.fronts) == count
    leaves = sum((front.width.value for front in case.doors), Fraction(0))
    gaps = sum((gap.value for gap in face.gaps), Fraction(0))
    assert face.left.value + leaves + gaps + face.right.value == width
    step = length("1/32")
    if count == 2:
        assert length("1/8") <= gaps < length("1/8") + 2 * step
    else:
        assert length("1/16") <= face.right.value < length("1/16") + step


def test_why_there_are_two() -> None:
    """The decision names the two numbers it hung on."""
    made = house("in")
    build_case(made, case_spec("in", front=SLAB))
    (branch,) = [b for b in made.chain.branches if b.place == "upper.face" and "two" in b.because]
    assert (branch.left.path, branch.right.path) == ("upper.width", "style.widest_single_door")
    assert branch.over


@pytest.mark.parametrize("leaves", [1, 2])
def test_the_person_decides_when_asked_for(leaves: Literal[1, 2]) -> None:
    """A number of leaves in the job file is kept, whatever the width."""
    case = one_case("in", width="30", front=replace(SLAB, leaves=leaves))
    assert len(case.fronts) == leaves


def test_single_door_hangs_where_asked() -> None:
    """A door hinged right has its plates in the right side and its rest at the left."""
    case = one_case("in", width="18 1/64", front=replace(SLAB, hinge="right"))
    (front,) = case.doors
    (face,) = case.faces
    assert {hinge.plate.rpartition(".")[0] for hinge in front.hinges} == {"upper.side_right"}
    assert face.right.value == length("1/16")
    assert face.left.value >= face.right.value


def test_remainders_go_into_the_gap_and_above() -> None:
    """What rounding down takes from the leaves is in the gap between them and over them."""
    case = one_case("in", width="33 1/32", height="39 1/64", front=SLAB)
    (face,) = case.faces
    step = length("1/32")
    assert all(front.width.value % step == 0 for front in case.doors)
    assert face.left.value == face.right.value == length("1/16")
    assert case.width.value == face.left.value + face.right.value + face.gaps[0].value + sum(
        front.width.value for front in case.doors
    )
    assert face.top.value >= length("1/16")
    assert face.bottom.value == 0


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_gaps_are_fits_with_a_band(unit: Unit) -> None:
    """The gap between doors may stray by 1/16 in or 1.5 mm; as designed every fit holds."""
    made = house(unit)
    build_case(made, case_spec(unit, front=SLAB, edge="band"))
    gap = made.chain.fits["upper.face.gap_1_fit"]
    assert gap.high - gap.low == 2 * length("1/16" if unit == "in" else "1.5", unit)
    fits = [f for path, f in made.chain.fits.items() if "door" in path or "face" in path]
    assert len(fits) >= 4
    assert all(fit.holds for fit in fits)


def test_a_leaf_cut_wrong_breaks_the_fit_and_nothing_else() -> None:
    """A leaf that came out 3 mm wide is a fit that no longer holds; its gap tells by how much."""
    made = house("mm", facts={"upper.door_left.width": _built(Fraction(425))})
    case = build_case(made, case_spec("mm", front=SLAB))
    fit = made.chain.fits["upper.face.gap_1_fit"]
    assert not fit.holds
    assert fit.gap.value == case.width.value - 3 - 425 - case.doors[1].width.value


@pytest.mark.parametrize("construction", ["slab", "applied frame", "glass frame"])
@pytest.mark.parametrize(("width", "height"), [("2", "30"), ("3", "4"), ("12", "3")])
def test_no_room_for_a_door_is_stopped(construction: DoorKind, width: str, height: str) -> None:
    """A case too small for its door gets a stop that says the least size, and no door."""
    front = {"slab": SLAB, "applied frame": APPLIED, "glass frame": GLASS}[construction]
    case = one_case("in", width=width, height=height, front=front, shelves=0)
    assert not case.fronts
    assert not case.faces
    found = [f for f in case.findings if f.rule == "door size"]
    assert found
    assert all(f.severity is Severity.STOP and f.measured and f.limit for f in found)


@pytest.mark.parametrize(
    ("width", "height", "leaves", "word"),
    [("11", "30", 2, "pinched"), ("26", "30", 1, "swings far out"), ("18", "82", 1, "stays flat")],
)
def test_odd_sizes_want_a_second_look(
    width: str, height: str, leaves: Literal[1, 2], word: str
) -> None:
    """Narrow, wide and tall leaves are made, with one finding for the opening."""
    room = room_of(width=width, height=height, shelves=0, depth="24",
                   front=replace(SLAB, leaves=leaves, slab="ply18"))  # fmt: skip
    [case] = room.cases
    assert len(case.fronts) == leaves
    told = [each for each in (*case.findings, *check(room)) if "leaf s" in each.rule]
    assert [(each.rule, each.severity, word in each.says) for each in told] == [
        ("leaf size", Severity.CARE, True)
    ]


def test_a_remedy_can_be_followed() -> None:
    """A limit from the hinge is told in the job's unit."""
    case = one_case("in", width="11", shelves=0, front=replace(APPLIED, leaves=2))
    (small,) = {finding for finding in case.findings if finding.rule == "door size"}
    assert "an applied frame door" in small.says
    assert small.limit.endswith('"')


def test_too_many_shelves_are_told_how_many_have_room() -> None:
    """With so many the finding is gone; with one more it is there; so it is as tall as told."""
    told = one_case("in", shelves=20, height="30", front=None).findings
    (remedies,) = [f.remedies for f in told if f.rule == "shelf room"]
    most = int(remedies[0].removeprefix("set shelves = "))
    taller = length("30") + length(remedies[1].removeprefix("a case ").removesuffix('" taller'))
    case = one_case("in", shelves=20, height=str(taller / INCH), front=None)
    assert not [f for f in case.findings if f.rule == "shelf room"]
    for shelves, found in ((most, 0), (most + 1, 1)):
        case = one_case("in", shelves=shelves, height="30", front=None)
        assert [finding.rule for finding in case.findings].count("shelf room") == found


def _narrow_frame() -> FrontSpec:
    return replace(GLASS, leaves=1)


def test_cup_that_would_meet_the_rebate_is_stopped() -> None:
    """Stiles too narrow for cup and rebate side by side give a stop with the width needed."""
    narrow = {"stile": given("1 3/4")}
    case = one_case("in", width="18", front=_narrow_frame(), overrides=narrow)
    (finding,) = [f for f in case.findings if f.rule == "cup and rebate"]
    assert finding.severity is Severity.STOP
    assert not case.fronts


def test_cup_moves_out_where_the_stile_is_narrow() -> None:
    """With stiles of 54 mm the bore distance is kept small enough to leave wood at the rebate."""
    narrow = {"stile": given("54", "mm")}
    case = one_case("mm", width="450", front=_narrow_frame(), overrides=narrow)
    (front,) = case.doors
    assert front.bore_distance.value + 35 + 5 <= 54 - 10
