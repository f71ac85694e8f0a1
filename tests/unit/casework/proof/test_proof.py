"""Proof of whole cases with one thing plainly wrong: what it says and where."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import APPLIED, GLASS, SLAB, hardware, one_case, plain_style
from tests.perturbation import moved, with_part

from casewright.casework.cases import Case
from casewright.casework.features import Bores, Cut
from casewright.casework.parts import Part
from casewright.casework.proof import Failure, Proof, as_findings, prove
from casewright.dims import Chain, Dim, Measure, Origin, parts_of
from casewright.findings import Severity

INCH = Fraction(127, 5)


def _changed(case: Case, path: str, change: Callable[[Part], Part]) -> Case:
    return with_part(case, change(case.part(path)))


def _longer(by: Fraction) -> Callable[[Part], Part]:
    def change(part: Part) -> Part:
        size = replace(part.finished, length=moved(part.finished.length, by))
        return replace(part, finished=size, blank=size)

    return change


def _shifted(**by: Fraction) -> Callable[[Part], Part]:
    def change(part: Part) -> Part:
        at: Any = {axis: moved(getattr(part.placed, axis), far) for axis, far in by.items()}
        return replace(part, placed=replace(part.placed, **at))

    return change


def _with_bores(part: Part, name: str, **change: Any) -> Part:
    features = tuple(
        replace(f, **change) if f.path.endswith(name) else f for f in part.features
    )  # fmt: skip
    return replace(part, features=features)


def _failures(case: Case, check: str) -> list[Failure]:
    return [f for f in prove(case, hardware=hardware()).failures if f.check == check]


def test_a_case_without_parts() -> None:
    """Nothing to build is a failure of its own, not a proof."""
    empty = replace(one_case(), parts=(), joints=(), assembly=())
    assert [f.says for f in prove(empty).failures] == ["the case has no parts"]


def test_two_parts_of_one_name() -> None:
    """Two pieces that could not be told apart are named."""
    case = one_case()
    twice = replace(case, parts=(*case.parts, case.parts[0]))
    assert "two parts have the same name" in [f.says for f in prove(twice).failures]


def test_a_bottom_too_long_runs_into_the_side() -> None:
    """A bottom 1/8 in too long stands 1/8 in inside the right side."""
    case = _changed(one_case(), "upper.bottom", _longer(INCH / 8))
    (overlap,) = _failures(case, "overlap")
    assert overlap.paths == ("upper.side_right", "upper.bottom")
    assert overlap.amount == INCH / 8


def test_a_bottom_too_short_leaves_a_gap() -> None:
    """A bottom 1/8 in short does not meet the right side, and the joint says so."""
    case = _changed(one_case(), "upper.bottom", _longer(-INCH / 8))
    gaps = _failures(case, "joints")
    assert {f.paths[0] for f in gaps} == {"upper.joint_bottom_right"}
    assert {f.amount for f in gaps} == {INCH / 8}


def test_surfaces_that_do_not_face_each_other() -> None:
    """A joint that names a board's wrong end is found whatever the distance."""
    case = one_case()
    wrong = replace(case.joints[0], one=replace(case.joints[0].one, plane="w0"))
    found = _failures(replace(case, joints=(wrong, *case.joints[1:])), "joints")
    assert [f.says for f in found] == ["the two surfaces do not face each other"]


def test_a_joint_with_a_wall_that_is_not_there() -> None:
    """A joint into a cut the side does not have is found."""
    case = one_case(joint="dado", divider="20", shelves=0)
    name = "upper.joint_divider_left"
    joints = tuple(
        replace(j, other=replace(j.other, cut="upper.side_left.nothing")) if j.path == name else j
        for j in case.joints
    )
    found = _failures(replace(case, joints=joints), "joints")
    assert [(f.paths[0], f.says) for f in found] == [
        (name, "one of the two surfaces does not exist")
    ]


def test_surfaces_in_one_plane_but_beside_each_other() -> None:
    """A shelf moved up out of its case still faces the sides, but meets them nowhere."""
    case = _changed(one_case(fixed_shelves=("14",), shelves=0), "upper.fixed_shelf.1",
                    _shifted(y=INCH * 40))  # fmt: skip
    assert "the two surfaces lie beside each other" in [f.says for f in _failures(case, "joints")]


def test_the_width_that_results_is_not_the_one_asked_for() -> None:
    """A case 1/2 in off what was asked for is found; 1/32 in of rounding is not."""
    case = one_case()
    width, height, depth = case.wanted

    def asked(off: Fraction) -> Case:
        return replace(case, wanted=(moved(width, off), height, depth))

    assert _failures(asked(INCH / 32), "size") == []
    (found,) = _failures(asked(INCH / 2), "size")
    assert (found.says, found.amount) == ("the width is not the one asked for", INCH / 2)
    assert prove(asked(INCH / 2), grid=INCH).holds


def test_a_door_that_laps_its_neighbour() -> None:
    """A pair whose left leaf is 1/4 in too wide is found by the sum and by the solids."""
    case = one_case(front=SLAB)
    left = case.doors[0]
    wide = replace(left, width=moved(left.width, INCH / 4))
    case = replace(case, fronts=(wide, *case.doors[1:]))
    says = [f.says for f in _failures(case, "fronts")]
    assert "the parts of left door do not fill the leaf" in says
    assert "right door is not where reveal, leaves and gaps put it" in says


def test_stacked_faces_that_do_not_meet() -> None:
    """Doors that part 1/8 in above the middle of the divider are found."""
    case = one_case(front=SLAB, upper_front=SLAB, divider="20", joint="dado", shelves=0)
    lower, upper = case.faces
    moved_up = replace(lower, y1=moved(lower.y1, INCH / 8), top=moved(lower.top, INCH / 8))
    says = {f.says for f in _failures(replace(case, faces=(moved_up, upper)), "fronts")}
    assert says == {
        "the lower and the upper face do not meet",
        "the fronts do not meet on the middle of the divider",
    }


def test_pin_holes_without_a_partner() -> None:
    """A row bored from the wrong end has no holes across from it, and its shelves tip."""
    case = _changed(
        one_case(), "upper.side_left", lambda p: _with_bores(p, "pins_main_front", datum_l="l1")
    )
    says = {f.says for f in _failures(case, "pins")}
    assert "pin holes have none across from them at the same height and depth" in says
    assert "pin holes in front and behind are not level" in says


def test_a_shelf_off_its_pins() -> None:
    """A shelf drawn between two pin heights is found, with how far it hangs in the air."""
    case = _changed(one_case(), "upper.shelf.1", _shifted(y=Fraction(10)))
    (found,) = _failures(case, "pins")
    assert (found.paths, found.amount) == (("upper.shelf.1",), Fraction(10))


def test_a_cup_that_is_not_level_with_its_plate() -> None:
    """A cup 3 mm too high does not meet its plate."""
    case = one_case(front=SLAB)
    hinge = case.doors[0].hinges[0]
    part = next(p for p in case.parts if any(f.path == hinge.cup for f in p.features))
    cup = next(f for f in part.features if f.path == hinge.cup)
    assert isinstance(cup, Bores)
    ((along, across),) = cup.places
    places = ((moved(along, Fraction(3)), across),)
    case = with_part(case, _with_bores(part, hinge.cup, places=places))
    found = [f for f in _failures(case, "hinges") if "level" in f.says]
    assert [(f.paths[0], f.amount) for f in found] == [(hinge.path, Fraction(3))]


@pytest.mark.parametrize("off", [Fraction(2), Fraction(3)])
def test_a_door_hung_farther_than_its_side_screw_reaches(off: Fraction) -> None:
    """The hinge's side screw gives 2 mm either way by its sheet; a door 3 mm off stays off."""
    case = one_case(front=SLAB)
    front = case.doors[0]
    real = case.part("upper.side_left").finished.thickness.value - front.x.value
    overlay = Dim("", (), real + off)
    case = replace(case, fronts=(replace(front, overlay=overlay), *case.doors[1:]))
    says = {f.says for f in _failures(case, "hinges")}
    assert ("the hinge's side screw cannot bring the door to its place" in says) is (off > 2)
    assert "the overlay is not the one the hinge gives" in says


def test_pockets_that_come_out_where_nothing_is() -> None:
    """Pockets bored toward the front edge of a bottom hold nothing."""
    case = _changed(
        one_case(),
        "upper.bottom",
        lambda p: _with_bores(p, "pockets_left", toward="w0", datum_l="l0", datum_w="w0"),
    )
    says = {f.says for f in _failures(case, "pockets")}
    assert "a pocket's screw comes out where nothing is joined" in says


@pytest.mark.parametrize(
    ("length", "says"),
    [
        ("15", "a pocket's screws are too short to reach what they hold"),
        ("64", "a pocket's screw does not stay inside upper.side_left"),
    ],
)
def test_pocket_screws_of_a_wrong_length(length: str, says: str) -> None:
    """Screws shorter than their board, and 64 mm ones in an 18 mm side, are found."""
    case = one_case()
    first = case.joints[0]
    screws = replace(first.fastenings[0], length=Dim("", (), Fraction(length)))
    joint = replace(first, fastenings=(screws, *first.fastenings[1:]))
    found = _failures(replace(case, joints=(joint, *case.joints[1:])), "pockets")
    assert {f.says for f in found} == {says}


def test_screws_without_pockets() -> None:
    """A screw list longer than the pockets bored is found."""
    case = one_case()
    first = case.joints[0]
    more = replace(first.fastenings[0], count=first.fastenings[0].count + 1)
    joint = replace(first, fastenings=(more, *first.fastenings[1:]))
    found = _failures(replace(case, joints=(joint, *case.joints[1:])), "pockets")
    assert [f.says for f in found] == ["4 pocket screws are listed for 3 pockets"]


@pytest.mark.parametrize(
    ("length", "says"),
    [("5", "a brad is too short to reach what it holds"),
     ("400", "a brad comes out on the far side")],
)  # fmt: skip
def test_brads_of_a_wrong_length(length: str, says: str) -> None:
    """Brads that end inside a 7/32 in back, or come out of the front, are found."""
    case = one_case()
    joints = []
    for joint in case.joints:
        if joint.path == "upper.joint_back_left":
            brads = replace(joint.fastenings[0], length=Dim("", (), Fraction(length)))
            joints.append(replace(joint, fastenings=(brads,)))
        else:
            joints.append(joint)
    found = _failures(replace(case, joints=tuple(joints)), "fasteners")
    assert [f.says for f in found] == [says]


def test_a_left_side_made_as_a_right_one() -> None:
    """A side in the frame of the other hand is found before it is cut."""
    case = _changed(one_case(), "upper.side_left", lambda p: replace(p, hand="right"))
    assert "left side lies in the frame of the other hand" in {
        f.says for f in _failures(case, "hands")
    }


def test_a_board_that_could_be_turned_end_for_end() -> None:
    """A bottom with pockets at one end only is not the same from both ends."""
    case = _changed(one_case(), "upper.bottom",
                    lambda p: replace(p, features=p.features[:1]))  # fmt: skip
    assert [f.paths for f in _failures(case, "hands")] == [("upper.bottom",)]


def test_a_blank_that_forgets_its_band() -> None:
    """A side cut to its finished width before banding comes out a band too wide."""
    case = _changed(one_case(edge="band"), "upper.side_left",
                    lambda p: replace(p, blank=p.finished))  # fmt: skip
    (found,) = _failures(case, "edges")
    assert found.amount == INCH / 32


def test_a_banded_face() -> None:
    """A treatment of a face is not a treatment of an edge."""
    case = one_case(edge="painted")
    part = case.part("upper.bottom")
    edge = replace(part.edges[0], edge="t1")
    case = with_part(case, replace(part, edges=(edge,)))
    assert "t1 of bottom is a face, not an edge" in {f.says for f in _failures(case, "edges")}


def test_a_dado_that_nothing_sits_in() -> None:
    """A dado cut for a shelf that is not there is found."""
    case = one_case(joint="dado", divider="20", shelves=0)
    parts = tuple(p for p in case.parts if p.role != "divider")
    found = _failures(replace(case, parts=parts), "joints")
    assert {f.paths[0] for f in found if f.says == "nothing sits in the dado"} == {
        "upper.side_left.dado_divider", "upper.side_right.dado_divider",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("radius", "passes"),
    [("16", True), ("10.5", True), ("10.4", False), ("0", False)],
)
def test_a_panes_corner_in_a_round_rebate(radius: str, passes: bool) -> None:
    """In a corner left round by a 5/8 in radius, 1/16 in of air passes corners over 10.455 mm.

    By hand: both arcs lie on the diagonal, where the pane's may reach (1 - 1/sqrt 2)(R - r)
    into the corner, so that r = R - air / 0.29289 = 15.875 - 1.5875 / 0.29289.
    """
    case = one_case(front=GLASS, style=plain_style(cut_step="0"))
    panes = [p for p in case.parts if p.role == "pane"]
    for pane in panes:
        case = with_part(case, replace(pane, corner_radius=Dim("", (), Fraction(radius))))
    found = [f for f in _failures(case, "joints") if "round corner" in f.says]
    assert (not found) is passes


def test_a_set_up_that_makes_another_cut() -> None:
    """A fence set 1/16 in off its dado is found by the card's own number."""
    case = one_case(joint="dado", divider="20", shelves=0)
    part = case.part("upper.side_left")
    name = "upper.side_left.dado_divider"
    cut = next(f for f in part.features if f.path == name)
    assert isinstance(cut, Cut)
    setup = replace(cut.setup, fence=moved(cut.at, INCH / 16))
    case = with_part(case, _with_bores(part, "dado_divider", setup=setup))
    (found,) = _failures(case, "set-up")
    assert (found.paths[0], found.amount) == (name, INCH / 16)


def test_an_end_frame_that_stands_off_its_sides_edge() -> None:
    """A stile of a finished end moved 1/8 in is no longer flush."""
    case = _changed(one_case(front=APPLIED, finished=("left",)), "upper.end_left.stile_front",
                    _shifted(z=-INCH / 8))  # fmt: skip
    assert "the frame is not flush with the edges of left side" in {
        f.says for f in _failures(case, "fronts")
    }


def test_failures_on_real_sizes_are_findings() -> None:
    """As built, a hair of a gap is a note, a wide one wants care, a wrong hand stops."""
    proof = Proof(
        (
            Failure("joints", ("a",), "the two are too far apart", Fraction(2, 5)),
            Failure("joints", ("b",), "the two are too far apart", Fraction(3)),
            Failure("hands", ("c",), "lies in the frame of the other hand"),
        )
    )
    found = as_findings(proof, unit="mm")
    assert [(f.path, f.severity) for f in found] == [
        ("a", Severity.NOTE), ("b", Severity.CARE), ("c", Severity.STOP),
    ]  # fmt: skip
    assert found[1].measured == "3"
    assert found[1].says == "as built, the two are too far apart, by 3"


def test_how_far_a_thing_is_off_rests_on_the_sizes_that_meet() -> None:
    """Where the numbers of the job are at hand, each place that is off has one of its own."""
    case = Chain().place("b")
    wide = case.enter("width", Fraction(300), Origin("measured", "tape"))
    off = Failure("size", ("b",), "its width is not what was asked for", Fraction(3))
    found = as_findings(Proof((off, off)), unit="mm", nodes={wide.path: wide})
    numbers = [number for each in found for number in each.numbers]
    assert [number.path for number in numbers] == ["proof.size.b.off", "proof.size.b.2.off"]
    for each, number in zip(found, numbers, strict=True):
        (told,) = (part for part in parts_of(each.says) if isinstance(part, Measure))
        assert (told.path, told.value) == (number.path, Fraction(3))
        assert number.args == (wide,)
