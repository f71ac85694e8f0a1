"""Ends dressed with an applied frame that matches the doors."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    SLAB,
    Unit,
    case_spec,
    drawer_base,
    given,
    house,
    length,
    one_case,
    plain_style,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.casework.verification import verify
from casewright.findings import Severity


def test_frame_adds_its_thickness_to_the_width() -> None:
    """Two dressed ends make the case wider by two strips; the box stays as it is."""
    case = one_case("in", front=APPLIED, finished=("left", "right"))
    assert case.width.value == length("33")
    assert case.overall_width.value == length("33") + 2 * length("3/16")


def test_plain_ends_add_nothing() -> None:
    """Without dressed ends the overall width is the box's."""
    case = one_case("in", front=APPLIED)
    assert case.overall_width.value == case.width.value


def test_rails_line_up_with_those_of_the_doors() -> None:
    """Inner edges of the frame's rails are at the height of the doors' rails' inner edges."""
    case = one_case("in", front=APPLIED, finished=("left",))
    door = case.doors[0]
    for name in ("rail_bottom", "rail_top"):
        part = case.part(f"upper.end_left.{name}")
        low, wide = part.placed.y.value, part.finished.width.value
        inner = low + wide if name == "rail_bottom" else low
        rail = length("2 1/2")
        top = door.y.value + door.height.value
        assert inner == (door.y.value + rail if name == "rail_bottom" else top - rail)


def test_stacked_case_has_a_middle_rail() -> None:
    """Where doors meet on a divider, the frame has a rail as high as both rails and the gap."""
    case = one_case("in", height="51", divider="36", joint="dado", front=APPLIED,
                    upper_front=GLASS, finished=("right",))  # fmt: skip
    middle = case.part("upper.end_right.rail_middle")
    assert middle.finished.width.value == length("5 1/8")


def test_frame_of_a_base_stops_above_the_toe() -> None:
    """On a base with a toe notch the frame covers the side from the notch up."""
    case = one_case("in", kind="base", toe="notch", height="34 1/2", depth="23 1/4",
                    front=APPLIED, finished=("right",))  # fmt: skip
    stile = case.part("upper.end_right.stile_front")
    assert stile.placed.y.value == length("4")
    assert stile.finished.length.value == length("30 1/2")


def test_stiles_reach_from_edge_to_edge_of_the_side() -> None:
    """Stiles are flush with the side's front and rear edges, rails fill what is between."""
    case = one_case("in", front=APPLIED, finished=("left",))
    rail = case.part("upper.end_left.rail_bottom")
    side = case.part("upper.side_left").finished.width.value
    assert rail.finished.length.value == side - 2 * length("2 1/2")


def test_thin_strips_say_what_they_are_milled_from() -> None:
    """Strips 3/16 in thick come out of the thinnest board that is thick enough."""
    case = one_case("in", front=APPLIED, finished=("left",))
    strips = [p for p in case.parts if p.stock == "strip"]
    assert strips
    assert all(p.milled_from.startswith("board: ") for p in strips)


def test_brads_stay_short_of_the_far_face() -> None:
    """Brads that would come through a slab are not driven: glue and clamps, and a note says so."""
    through = one_case("mm", front=APPLIED)
    faces = [j for j in through.joints if j.form == "face"]
    assert {f.kind for j in faces for f in j.fastenings} == {"glue"}
    (note,) = [f for f in through.findings if f.rule == "brads for strips"]
    assert note.severity is Severity.NOTE
    short = one_case("in", front=APPLIED)
    kinds = {f.kind for j in short.joints if j.form == "face" for f in j.fastenings}
    assert kinds == {"glue", "brad"}


def test_end_too_narrow_for_a_frame_is_stopped() -> None:
    """Stiles of 2 5/8 leave nothing of 5: a stop, the end stays bare; over 1/4 more do."""
    style = plain_style(stile="2 5/8")
    case = one_case("in", depth="5", front=APPLIED, finished=("left",), style=style)
    [told] = [f for f in case.findings if f.rule == "finished end"]
    assert told.severity is Severity.STOP
    assert 'a case more than 1/4" deeper' in told.remedies
    assert not [p for p in case.parts if ".end_left." in p.path]
    for depth, found in (("5 1/4", 1), ("5 9/32", 0)):
        case = one_case("in", depth=depth, front=APPLIED, finished=("left",), style=style)
        assert [f.rule for f in case.findings].count("finished end") == found


def test_doors_are_hung_last() -> None:
    """The frame on an end is on before the doors are hung."""
    case = one_case("in", front=APPLIED, finished=("left",))
    verbs = [step.verb for step in case.assembly]
    assert verbs[-2:] == ["hang", "hang"]
    assert verbs.count("hang") == 2
    assert all("lift_door" in step.cautions for step in case.assembly if step.verb == "hang")


def _on_end(case: Case, hand: str) -> Part:
    return next(p for p in case.parts if p.path.startswith(f"upper.end_{hand}."))


@pytest.mark.parametrize(("unit", "depth", "door"), [("in", "23 1/4", "3/4"), ("mm", "580", "19")])
def test_flush_end_is_as_wide_as_the_case_is_deep_with_its_door(
    unit: Unit, depth: str, door: str
) -> None:
    """Width D + td (common practice), where the doors lie on the box without bumpers."""
    goods = stock(unit)
    slab = replace(goods["mdf"], key="ply_door", thickness=given(door, unit))
    tall = "34 1/2" if unit == "in" else "870"
    case = one_case(unit, kind="base", toe="none", height=tall,
                    depth=depth, front=replace(SLAB, slab="ply_door"),
                    finished=("left", "right"), end="flush", end_stock="ply18",
                    goods=goods | {"ply_door": slab},
                    style=plain_style(unit, bumper="0"))  # fmt: skip
    for hand in ("left", "right"):
        end = _on_end(case, hand)
        assert end.finished.width.value == length(depth, unit) + length(door, unit)
        assert end.finished.length.value == case.height.value


@pytest.mark.parametrize("back", ["rabbeted", "applied", "grooved"])
def test_skin_ends_with_the_case(back: str) -> None:
    """Width D: behind the doors, over the edge of an applied back; its face has no metal."""
    case = one_case("in", front=SLAB, finished=("right",), end="skin", end_stock="ply6", back=back)
    skin = _on_end(case, "right")
    assert skin.finished.width.value == case.depth.value
    assert case.overall_width.value == case.width.value + length("7/32")
    (joint,) = [j for j in case.joints if j.one.part == skin.path]
    assert [held.kind for held in joint.fastenings] == ["glue"]


def test_plain_end_is_the_side_itself() -> None:
    """Nothing is put on; its outer face shows, and no brad goes through it."""
    case = one_case("in", joint="dado", finished=("left",), end="plain")
    side = case.part("upper.side_left")
    assert "t0" in side.shows
    assert case.overall_width.value == case.width.value
    through = [f for j in case.joints for f in j.fastenings if side.path in f.through]
    assert not through


def test_screws_behind_a_flush_end_do_not_reach_its_face() -> None:
    """They come from inside, through the side, and end inside the board."""
    case = one_case("in", front=SLAB, finished=("left",), end="flush", end_stock="ply18")
    (joint,) = [j for j in case.joints if j.path == "upper.end_left.joint"]
    screws = [f for f in joint.fastenings if f.kind == "case screw"]
    assert screws
    assert {f.through for f in screws} == {("upper.side_left",)}
    assert all(f.length and f.length.value < 2 * length("23/32") for f in screws)


@pytest.mark.parametrize("end", ["skin", "flush", "plain"])
@pytest.mark.parametrize("ply", ["17.8", "18.4"])
def test_every_kind_of_end_proves(end: str, ply: str) -> None:
    """Both hands, over drawers and doors, over an applied back, of sheets off the grid."""
    applied = one_case("mm", front=SLAB, finished=("left", "right"), end=end, end_stock="ply6",
                       back="applied", goods=stock("mm", ply=ply, thin="5.7"))  # fmt: skip
    assert verify(applied).failures == ()
    for front in (SLAB, None):
        case = one_case("mm", front=front, finished=("left", "right"), end=end,
                        end_stock="ply18", goods=stock("mm", ply=ply))  # fmt: skip
        assert verify(case).failures == ()
    drawers = one_case("mm", **drawer_base("mm", "drawer", "drawer", finished=("left",), end=end,
                                           end_stock="ply18"))  # fmt: skip
    assert verify(drawers).failures == ()


def test_what_a_hand_feels_at_a_flush_end_is_forecast() -> None:
    """The step between the doors' faces and the edge of the end is a fit of its own."""
    shared = house("in")
    build_case(shared, case_spec("in", front=SLAB, finished=("left",), end="flush",
                                 end_stock="ply18"))  # fmt: skip
    fit = shared.chain.fits["upper.end_left_flush"]
    assert Fraction(0) <= fit.gap.value < length("1/32")
