"""Ends dressed with an applied frame that matches the doors."""

from __future__ import annotations

from tests.builders import APPLIED, GLASS, length, one_case

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
    """Stiles wider than half the side leave no frame: a stop, and the end stays bare."""
    case = one_case("in", depth="5", front=APPLIED, finished=("left",))
    assert [f.severity for f in case.findings if f.rule == "finished end"] == [Severity.STOP]
    assert not [p for p in case.parts if ".end_left." in p.path]


def test_doors_are_hung_last() -> None:
    """The frame on an end is on before the doors are hung."""
    case = one_case("in", front=APPLIED, finished=("left",))
    verbs = [step.verb for step in case.assembly]
    assert verbs[-2:] == ["hang", "hang"]
    assert verbs.count("hang") == 2
    assert all("lift_door" in step.cautions for step in case.assembly if step.verb == "hang")
