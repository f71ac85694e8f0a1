"""Drawers: how long their slides are, what their boxes are bored for, what stops them, and why."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    SLAB,
    Unit,
    case_spec,
    drawer_base,
    given,
    hardware,
    house,
    length,
    one_case,
    plain_style,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Bores
from casewright.casework.house import House
from casewright.casework.specs import DrawerJoint, SlideKind
from casewright.casework.verification import verify
from casewright.dims import Dim, Measure, Origin, parts_of
from casewright.facts import Fact
from casewright.findings import Severity

_JOINTS: tuple[DrawerJoint, ...] = ("butt", "rabbet", "dado", "box joint")
_SLIDES: tuple[SlideKind, ...] = ("side-mount", "undermount")


def _made(unit: Unit = "in", **asked: Any) -> tuple[House, Case]:
    made = house(unit)
    return made, build_case(made, case_spec(unit, **asked))


@pytest.mark.parametrize("joint", _JOINTS)
@pytest.mark.parametrize("slides", _SLIDES)
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_every_joint_on_either_slides_goes_together(
    unit: Unit, slides: SlideKind, joint: DrawerJoint
) -> None:
    """Two drawers proved and put together; every declared fit holds as designed."""
    made, case = _made(unit, **drawer_base(unit, "drawer", "drawer", joint=joint, slides=slides))
    assert len(case.drawers) == 2
    assert verify(case, hardware=hardware(unit)).failures == ()
    fits = [fit for path, fit in made.chain.fits.items() if ".drawer_" in path]
    assert {fit.path.rpartition(".")[2] for fit in fits} >= {
        "slide_fit", "bottom_side_fit", "bottom_end_fit"
    }  # fmt: skip
    assert all(fit.holds for fit in fits)


@pytest.mark.parametrize(
    ("depth", "longest"), [("19 1/4", "16"), ("21", "18"), ("23 1/4", "20"), ("24", "22")]
)
def test_slides_are_the_longest_that_fit(depth: str, longest: str) -> None:
    """From 16, 18, 20 and 22: what the depth leaves before the nailer, a hand's room behind."""
    case = one_case("in", **drawer_base("in", "drawer", "drawer", depth=depth))
    assert {drawer.slide_length.value for drawer in case.drawers} == {length(longest)}
    kept = length("7/32") + length("23/32") + 3 + length("1/2")
    assert length(longest) <= length(depth) - kept
    longer = [length(each) for each in ("18", "20", "22") if length(each) > length(longest)]
    assert all(each > length(depth) - kept for each in longer)


def test_no_slides_are_short_enough() -> None:
    """A case 14 deep takes none of 16: it is told with how much deeper it would have to be."""
    case = one_case("in", **drawer_base("in", "drawer", "drawer", depth="14"))
    assert not case.drawers
    [finding] = [each for each in case.findings if each.rule == "slide length"]
    assert finding.severity is Severity.STOP
    assert "deeper" in finding.remedies[0]
    (deeper,) = (part for part in parts_of(finding.remedies[0]) if isinstance(part, Measure))
    (number,) = (own for own in finding.numbers if own.path == deeper.path)
    kept = length("7/32") + length("23/32") + 3 + length("1/2")
    assert deeper.value == number.value == length("16") - (length("14") - kept)


def test_a_row_too_low_for_a_drawer_is_told() -> None:
    """A front of 2 1/2 leaves a box of 1: the finding says how much higher the row must be."""
    case = one_case("in", **drawer_base("in", "drawer 2 1/2", "drawer"))
    assert [drawer.opening for drawer in case.drawers] == ["drawer_2"]
    [finding] = [each for each in case.findings if each.rule == "drawer height"]
    assert finding.severity is Severity.STOP


def test_sides_too_thick_for_concealed_slides_are_told() -> None:
    """Sides of 3/4 where the slides take 16 mm."""
    goods = stock("in", drawer="3/4")
    case = one_case("in", goods=goods, **drawer_base("in", "drawer", slides="undermount"))
    assert not case.drawers
    assert any(each.rule == "drawer side" for each in case.findings)


def test_hooks_of_concealed_slides_want_wood_over_the_bottom() -> None:
    """Holes of 6 mm, 24 up, begin at 21; the groove begins 1/2 in up: 8.3 mm are left, about 5/16.

    A bottom of 1/2 in is told with that; one of 7/32 goes in.
    """
    asked = drawer_base("in", "drawer", slides="undermount")
    thin = one_case("in", **asked)
    assert not [each for each in thin.findings if each.rule == "hole in the groove"]
    asked["drawer"] = replace(asked["drawer"], bottom_stock="drawer_ply")
    thick = one_case("in", **asked)
    [finding] = [each for each in thick.findings if each.rule == "hole in the groove"]
    assert finding.severity is Severity.STOP
    assert "at most" in finding.remedies[0]
    assert '5/16"' in finding.remedies[0]


@pytest.mark.parametrize("joint", ["rabbet", "dado"])
def test_a_hole_of_the_sheet_that_comes_out_in_a_corner_is_left_out(joint: DrawerJoint) -> None:
    """A first hole 1/4 in from the end of a box whose front is 1/2 thick: the others are bored."""
    slide = hardware("in").slide
    sheet = replace(slide, box_holes=tuple(given(each) for each in ("1/4", "3", "7")))
    made = house("in")
    made = replace(made, hardware=replace(made.hardware, slide=sheet))
    case = build_case(made, case_spec("in", **drawer_base("in", "drawer", joint=joint)))
    assert verify(case, hardware=made.hardware).failures == ()
    bored = [f for part in case.parts if part.role == "drawer side" for f in part.features
             if isinstance(f, Bores) and f.kind == "slide"]  # fmt: skip
    assert [len(each.places) for each in bored] == [2, 2]


def test_a_box_is_lower_than_its_opening_and_its_front() -> None:
    """Common practice: 1 less than the opening, 1 1/2 less than the front, whichever is less."""
    case = one_case("in", **drawer_base("in", "drawer 7", "drawer", "drawer"))
    fronts = {front.opening: front for front in case.fronts}
    for drawer in case.drawers:
        front = fronts[drawer.opening].height.value
        assert drawer.height.value <= front - length("1 1/2")
        assert drawer.height.value > front - length("2")


def test_why_a_drawer_is_as_wide_as_it_is() -> None:
    """The account goes from the length of its ends to the sheet of the slides."""
    made, _ = _made(**drawer_base("in", "drawer", "drawer"))
    found = _behind(made.chain.nodes["base.drawer_1.front_end.length"])
    assert {"hardware.slide.air", "base.clear_width", "stock.drawer_ply.thickness"} <= found
    found = _behind(made.chain.nodes["base.drawer_1.side_left.width"])
    assert {"style.drawer_room", "style.drawer_behind_front"} <= found
    reasons = {branch.because for branch in made.chain.branches}
    assert "slides of this length are too long for the case" in reasons


def _behind(dim: Dim) -> set[str]:
    """Paths of everything that a number rests on."""
    found, stack = set(), [dim]
    while stack:
        node = stack.pop()
        if node.path:
            found.add(node.path)
        stack += [each for each in node.args if isinstance(each, Dim)]
    return found


@pytest.mark.parametrize(("width", "pulls"), [("30", 1), ("30 1/8", 1), ("30 5/32", 2), ("33", 2)])
def test_a_front_over_30_wide_gets_two_pulls(width: str, pulls: int) -> None:
    """Common practice; the front is 1/8 narrower than its case."""
    case = one_case("in", **drawer_base("in", "drawer", "drawer", width=width))
    slab = case.part("base.drawer_1.front.slab")
    [bores] = [f for f in slab.features if isinstance(f, Bores) and f.kind == "pull"]
    assert len(bores.places) == 2 * pulls
    middles = sorted(across.value for _, across in bores.places)
    width_of_front = case.fronts[0].width.value
    assert middles[0] + middles[-1] == width_of_front
    assert {along.value for along, _ in bores.places} == {case.fronts[0].height.value / 2}


def test_screws_of_a_front_end_inside_it() -> None:
    """Through 1/2 of the box into 5/8 of front: 1 is sold, and leaves 1/8 before the face."""
    case = one_case("in", **drawer_base("in", "drawer", "drawer"))
    [held] = [
        fastening
        for joint in case.joints
        for fastening in joint.fastenings
        if joint.path == "base.drawer_1.front.joint"
    ]
    assert held.kind == "front screw"
    assert held.count == 4
    assert held.length is not None
    assert held.length.value == length("1")


def test_a_drawer_follows_the_case_as_it_was_built() -> None:
    """A case glued up a sixteenth narrow: its drawers are a sixteenth narrower, the air stays."""
    asked = drawer_base("in", "drawer", "drawer")
    tape = Origin("measured", "tape between the sides")
    clear = length("22 1/2")
    plain = one_case("in", **asked)
    made = house("in", facts={"base.clear_width": Fact(tape, built=clear)})
    case = build_case(made, case_spec("in", **asked))
    assert plain.drawers[0].width.value - case.drawers[0].width.value == length("1/16")
    assert made.chain.fits["base.drawer_1.slide_fit"].holds


def test_rows_by_their_heights_close_exactly_whatever_was_built() -> None:
    """All heights given: the lowest front takes what the case, as built, leaves."""
    asked = drawer_base("in", "drawer 7", "drawer 11 9/16", "drawer 11 9/16")
    origin = Origin("measured", "tape")
    tall = Fact(origin, built=length("34 17/32"))
    for facts in ({}, {"base.height": tall}):
        case = one_case("in", facts=facts, **asked)
        face = case.height.value - length("4")
        fronts = sum((front.height.value for front in case.fronts), Fraction(0))
        assert face - fronts == length("3/8")


def test_roll_outs_keep_clear_of_the_hinges_of_their_doors() -> None:
    """Pads lie no nearer to a plate than style hinge_clear, whatever the doors' hinges are."""
    for height in ("24", "34 1/2", "60"):
        case = one_case("in", **drawer_base("in", height=height, roll_outs=2))
        assert len(case.drawers) == 2
        pads = [part for part in case.parts if part.role == "pad"]
        assert len(pads) == 4
        for door in case.doors:
            for hinge in door.hinges:
                for pad in pads:
                    low, high = pad.placed.y.value, pad.placed.y.value + length("2")
                    assert hinge.height.value + 32 <= low or high <= hinge.height.value - 32
        assert verify(case, hardware=hardware("in")).failures == ()


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_roll_outs_behind_face_strips_begin_behind_the_box(unit: Unit) -> None:
    """Strips end with the inside of the sides, so that slides lie as on a frameless box."""
    bare = one_case(unit, **drawer_base(unit, roll_outs=2))
    case = one_case(unit, **drawer_base(unit, roll_outs=2), face="strips", face_stock="board")
    assert verify(case, hardware=hardware(unit)).holds
    for one, other in zip(bare.drawers, case.drawers, strict=True):
        assert one.width.value == other.width.value
        assert bare.depth.value - one.z.value == case.depth.value - other.z.value


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_roll_outs_behind_inset_doors_of_a_bare_box(unit: Unit) -> None:
    """They begin behind the doors, farther in by td, and clear these when they are open.

    A door turned by 90 degrees stands in by td - stand_off + gap, past the side (plane geometry).
    """
    front = replace(SLAB, overlay="inset")
    case = one_case(unit, **drawer_base(unit, roll_outs=2, front=front))
    assert verify(case, hardware=hardware(unit)).holds
    door = case.doors[0].thickness.value
    drawer = case.drawers[0]
    ahead = hardware(unit).slide.front.value
    assert case.depth.value - drawer.z.value - drawer.depth.value == door + ahead
    pad = [p for p in case.parts if p.path.startswith("base.roll_out_1.pad_left")]
    gap = length("3/32" if unit == "in" else "2.5", unit)
    thick = sum(p.finished.thickness.value for p in pad)
    assert thick >= door - hardware(unit).hinge.stand_off.value + gap


def test_too_many_roll_outs_are_told() -> None:
    """Nine of 4 behind doors of 30: the finding says how much is missing; none is built."""
    case = one_case("in", **drawer_base("in", roll_outs=9))
    assert not case.drawers
    assert [each.severity for each in case.findings if each.rule == "roll-out room"] == [
        Severity.STOP
    ]


def test_rails_and_open_rows_have_their_boards() -> None:
    """A rail parts two drawers where it is wanted; a whole board closes an open row."""
    asked = drawer_base("in", "drawer", "drawer", "open 8", row_rails=True)
    case = one_case("in", **asked)
    roles = {path: case.part(f"base.row_board.{path}").role for path in (1, 2)}
    assert roles == {1: "stretcher", 2: "fixed shelf"}
    assert verify(case, hardware=hardware("in")).failures == ()
    plain = one_case("in", **drawer_base("in", "drawer", "drawer"))
    assert not any(".row_board." in part.path for part in plain.parts)


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("ply", ["0.688", "0.72", "0.79"])
def test_several_thicknesses_of_the_box_and_of_the_drawers(unit: Unit, ply: str) -> None:
    """Sheets from 17.5 to 20 mm, drawers of 11.5 to 13.2 mm: proved on both kinds of slides."""
    box = length(ply)
    drawers = box * Fraction(2, 3)
    goods = dict(stock(unit))
    for key, size in (("ply18", box), ("drawer_ply", drawers)):
        goods[key] = replace(goods[key], thickness=given(size, "mm"))
    for slides in _SLIDES:
        asked = drawer_base(unit, "drawer", "doors", slides=slides, joint="dado")
        case = one_case(unit, goods=goods, style=plain_style(unit), **asked)
        assert verify(case, hardware=hardware(unit)).failures == ()
        assert len(case.drawers) == 1
