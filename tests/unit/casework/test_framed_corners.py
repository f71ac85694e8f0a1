"""Diagonal corners behind a face frame, its stiles bevelled to those beside it.

Source of the sizes: plane geometry, worked here without the program's own numbers; that such
stiles are bevelled at 45 degrees is common practice.
"""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import INCH, SLAB, Unit, hardware, length
from tests.jobs import AROUND_A_CORNER
from tests.unit.casework.test_diagonal_corners import corner

from casewright.buying.wall import seam_screw
from casewright.casework.features import Cut
from casewright.casework.proof import prove
from casewright.casework.verification import verify
from casewright.errors import JobFileError
from casewright.job.load import read_job
from casewright.job.worked import work_out

FRAMED: dict[Unit, dict[str, str]] = {
    "in": {"A": "24", "D": "13", "f": "3/4"},
    "mm": {"A": "610", "D": "350", "f": "19"},
}


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_frame_across_the_corner_closes_against_those_beside_it(unit: Unit, hand: str) -> None:
    """(A - D) sqrt(2) from arris to arris, 2 f more behind, before sides D - f sqrt(2) deep.

    Long points of the bevels lie on the planes of the neighbours' sides; the face meets theirs.
    """
    at = {key: float(length(text, "mm")) for key, text in FRAMED[unit].items()}
    case = corner(
        unit, hand, A=FRAMED[unit]["A"], d=FRAMED[unit]["D"], face="face frame",
        face_stock="board", front=replace(SLAB, leaves=1, overlay="partial"),
    )  # fmt: skip
    scale = float(INCH) if unit == "in" else 1.0
    frame, mouth = case.frame, case.mouth
    assert frame is not None
    assert mouth is not None
    root = math.sqrt(2)
    assert float(mouth.side.value) / scale == pytest.approx(at["D"] - at["f"] * root, rel=1e-6)
    wide = float(frame.width.value) / scale
    assert wide == pytest.approx((at["A"] - at["D"]) * root + 2 * at["f"], rel=1e-6)
    # From the corner of the walls, along the wall of its run: half of what both distances make.
    reach, middle = float(mouth.reach.value), float(mouth.width.value) / 2
    behind = float(frame.x.value + frame.width.value) - middle
    point = (reach + behind * root) / 2 / scale
    assert point == pytest.approx(at["A"], rel=1e-6)
    assert point <= at["A"]
    front = (reach + float(frame.thickness.value) * root) / scale
    assert front == pytest.approx(at["A"] + at["D"], rel=1e-6)
    for side in ("left", "right"):
        [bevel] = case.part(f"upper.frame.stile_{side}").features
        assert bevel.kind == "bevel"
        assert isinstance(bevel, Cut)
        assert float(bevel.width.value) / scale == pytest.approx(at["f"])
    assert verify(case, hardware=hardware(unit)).failures == ()


def test_a_frame_that_is_not_bevelled_stands_before_its_neighbours() -> None:
    """Its square edges would be in the place of the frames beside it."""
    case = corner("in", "left", step="1/32", d="13", face="face frame", face_stock="board",
                  front=replace(SLAB, leaves=1, overlay="partial"))  # fmt: skip
    square = replace(case, parts=tuple(
        replace(p, features=()) if p.role == "frame stile" else p for p in case.parts
    ))  # fmt: skip
    says = {failure.says for failure in prove(square).failures}
    assert "left stile of the face frame is not bevelled along its outer edge" in says
    assert "left stile of the face frame does not end at the edge of the frame beside it" in says


@settings(max_examples=20, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    base=st.booleans(),
    legs=st.tuples(st.integers(14, 40), st.integers(0, 31), st.integers(12, 26)),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
    board=st.sampled_from(("3/4", "13/16", "47/64", "1")),
    leaves=st.sampled_from((1, 2)),
    overlay=st.sampled_from(("full", "partial", "inset")),
    joint=st.sampled_from(("pocket screws", "tenons")),
    edge=st.sampled_from(("painted", "band")),
)
def test_any_framed_corner_proves(
    unit: Unit, hand: str, base: bool, legs: tuple[int, int, int], ply: str, board: str,
    leaves: Any, overlay: Any, joint: str, edge: str,
) -> None:  # fmt: skip
    """Over its legs, depths, sheets and boards, both hands, every overlay and joint."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    more, part, deep = legs
    case = corner(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        board=board if unit == "in" else "20.3",
        A=str((deep + more + Fraction(part, 32)) * per), d=str(deep * per), H=str(30 * per),
        kind="base" if base else "wall", toe="notch" if base else "none", edge=edge,
        face="face frame", face_stock="board", face_joint=joint, bumper=str(per / 16),
        front=replace(SLAB, leaves=leaves, overlay=overlay), shelves=0 if deep < 14 else 1,
    )  # fmt: skip
    if not any(finding.severity.value == "stop" for finding in case.findings):
        assert verify(case, hardware=hardware(unit)).failures == ()


FACE = 'diagonal = "left"\nface = "face frame"'


@pytest.mark.parametrize(
    ("kind", "lines", "word"),
    [
        ("wall", 'width = 24\ndiagonal = "left"\nface = "strips"', "no face strips"),
        ("wall", f'width = 24\n{FACE}\nbottom = "under"', "hidden by its rail"),
        ("base", f'width = 40\n{FACE}\ntoe = "plinth"', "no seat on a plinth"),
        ("base", f"width = 44\n{FACE}\nsink = true", "no corner blocks"),
        ("wall", f"width = 20\n{FACE}", "20 5/8"),
        ("wall", f"width = 24\n{FACE}\n[style]\nface_stile = 1", "for face_stile"),
        ("wall", f"width = 24\n{FACE}\nmullion = true", "mullion"),
    ],
)
def test_what_has_no_place_behind_such_a_frame_is_refused(
    kind: str, lines: str, word: str
) -> None:
    """In its line, each with what would be right."""
    with pytest.raises(JobFileError) as told:
        read_job(f'format = 1\nunit = "in"\n[case.a]\nkind = "{kind}"\n{lines}\n', "job.toml")
    assert word in str(told.value)


ROOM = AROUND_A_CORNER.replace("[wall.north]", '[boxes]\nface = "face frame"\n[wall.north]')


def test_its_neighbours_have_frames_as_deep() -> None:
    """Both runs prove; a neighbour that is not as deep over its frame is told."""
    worked = work_out(read_job(ROOM, "room.toml"))
    assert worked.failures == ()
    assert "corner depth" not in {finding.rule for finding in worked.findings}
    deeper = ROOM.replace("[case.round]", "[case.round]\ndepth = 14")
    other = work_out(read_job(deeper, "room.toml"))
    assert "corner depth" in {finding.rule for finding in other.findings}


def test_a_light_rail_does_not_turn_across_it() -> None:
    """It is told in its line, with what would be right."""
    railed = ROOM.replace("[run.north]", "[run.north]\nlight_rail = true")
    with pytest.raises(JobFileError) as told:
        read_job(railed, "room.toml")
    assert "turns across corner" in str(told.value)


def test_its_seams_are_screwed_through_the_sides() -> None:
    """Both sides, the frame's overhang of packing between, less 1/8 in: common practice.

    A screw through the neighbour's stile would leave the bevel behind, half its boards' thickness
    in.
    """
    room = work_out(read_job(ROOM, "room.toml")).room
    cases = {case.key: case for case in room.cases}
    screw = seam_screw(cases["one"], cases["corner"], "in")
    side = cases["one"].part("one.side_right").finished.thickness.value
    overhang = room.chain.nodes["style.face_overhang"].value
    assert not screw.in_frames
    assert 0 <= 2 * side + overhang - length("1/8") - screw.length < length("1/4") + length("1/32")
