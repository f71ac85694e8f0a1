"""Blind corner bases: pulled off the corner wall, one door beside what the other run hides.

Source of the sizes: a set of trade constructions whose formulas were re-derived by placing the
parts in space; common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import (
    INCH,
    SLAB,
    Unit,
    case_spec,
    given,
    hardware,
    length,
    plain_style,
    shop,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import OverlayKind
from casewright.casework.verification import verify
from casewright.dims import Chain
from casewright.errors import JobFileError
from casewright.facts import NO_FACTS
from casewright.hardware import HardwareList
from casewright.job.load import read_job
from casewright.job.worked import work_out

WORKED: dict[Unit, dict[str, str]] = {
    "in": {"W": "42", "q": "3", "D2": "23 1/4", "td": "3/4", "bp": "1/16", "P2": "1 3/8",
           "cl": "1/4", "H": "34 1/2"},
    "mm": {"W": "1050", "q": "80", "D2": "580", "td": "19", "bp": "2", "P2": "35", "cl": "6",
           "H": "870"},
}  # fmt: skip
EXPECTED: dict[Unit, dict[str, str]] = {
    "in": {"filler": "1 5/8", "door": "19 1/8", "X0": "25 11/16", "panel": "21 31/32",
           "mouth": "18 19/32", "front": "24 1/16"},
    "mm": {"filler": "41", "door": "483.5", "X0": "642", "panel": "544.2", "mouth": "470.2",
           "front": "601"},
}  # fmt: skip


def sheets(unit: Unit, pull: str) -> HardwareList:
    """Data sheets with a pull of that projection."""
    usual = hardware(unit)
    return replace(usual, pull=replace(usual.pull, projection=given(pull, unit)))


FRAMED: dict[Unit, dict[str, str]] = {
    # From the worked X0 and D2: the stile X0 - D2 wide, a stile (1 1/2, 40) behind the run round
    # the corner and an overlay (1/2, 12) under the door more; the door q + W - X0 wide, less what
    # is bare of the far stile.
    "in": {"X0": "25 11/16", "stile": "4 7/16", "door": "18 5/16", "behind": "21 3/4"},
    "mm": {"X0": "642", "stile": "114", "door": "460", "behind": "540"},
}  # fmt: skip


FRAMELESS: dict[str, Any] = {"face": "frameless", "face_stock": ""}


def corner(
    unit: Unit,
    hand: str,
    *,
    ply: str | None = None,
    step: str = "0",
    overlay: OverlayKind | None = None,
    asked: dict[str, Any] | None = None,
    **by: str,
) -> Case:
    """The worked corner, or one with other numbers; with an overlay it has a face frame.

    Unless `asked` says that it has none.
    """
    at = WORKED[unit] | by
    goods = stock(unit, ply=ply)
    goods["slab"] = replace(goods["mdf"], key="slab", thickness=given(at["td"], unit))
    style = plain_style(unit, cut_step=step, bumper=at["bp"], corner_clear=at["cl"],
                        blind_pull_off=at["q"])  # fmt: skip
    house = House(Chain(NO_FACTS), style, goods, sheets(unit, at["P2"]), shop(unit), unit)
    hinge: Any = "right" if hand == "left" else "left"
    front = replace(SLAB, slab="slab", leaves=1, hinge=hinge, overlay=overlay or "full")
    frame: dict[str, Any] = {"face": "face frame", "face_stock": "board"} if overlay else {}
    spec = case_spec(
        unit, kind="base", toe="notch", height=at["H"], depth=at["D2"], width=at["W"], shelves=1,
        front=front, blind=hand, corner_depth=given(at["D2"], unit), **frame | (asked or {}),
    )  # fmt: skip
    return build_case(house, spec)


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_door_filler_and_panel_of_a_blind_corner(unit: Unit, hand: str) -> None:
    """Sizes of both hands; the wall they take together is q + W."""
    case, at = corner(unit, hand), EXPECTED[unit]
    scale = INCH if unit == "in" else Fraction(1)

    def part(name: str) -> Any:
        return case.part(f"upper.{name}")

    assert part("blind_filler").finished.width.value / scale == length(at["filler"], "mm")
    assert part("blind").finished.width.value / scale == length(at["panel"], "mm")
    [door] = case.doors
    assert door.width.value / scale == length(at["door"], "mm")
    assert door.hinge_side != hand
    panel, side = part("blind"), part(f"side_{'right' if hand == 'left' else 'left'}")
    mouth = (
        panel.placed.x.value
        if hand == "left"
        else case.width.value - (panel.placed.x.value - panel.finished.width.value)
    )
    clear = case.width.value - mouth - side.finished.thickness.value
    assert clear / scale == length(at["mouth"], "mm")
    first = mouth / scale + length(WORKED[unit]["q"], "mm")
    assert first == length(at["X0"], "mm")
    # The run round it stands so far out from the corner's wall, its depth, bumper and door.
    pull = length(WORKED[unit]["P2"], "mm") + length(WORKED[unit]["cl"], "mm")
    assert first - pull == length(at["front"], "mm")
    assert verify(case, hardware=sheets(unit, WORKED[unit]["P2"])).failures == ()


def test_shelves_lie_before_the_blind_panel_closes_the_front() -> None:
    """No shelf passes the mouth: the panel comes in after the last of them."""
    order = [step.part for step in corner("in", "left").assembly]
    assert order.index("upper.shelf.1") < order.index("upper.blind")


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_framed_blind_corner(unit: Unit, hand: str) -> None:
    """Its door begins X0 out of the corner, on a stile that begins behind the other run's frame.

    Source: the same worked corner; that the stile begins behind that frame by the width of one is
    common practice.
    """
    case, at = corner(unit, hand, overlay="partial"), FRAMED[unit]
    scale = INCH if unit == "in" else Fraction(1)
    stile, [door] = case.part("upper.frame.blind_stile"), case.doors
    assert case.frame is not None
    off, left = length(WORKED[unit]["q"], "mm"), case.frame.x.value
    right = left + case.frame.width.value

    def out(low: Fraction, wide: Fraction) -> Fraction:
        """How far a part begins out of the corner's wall."""
        return off + (low - left if hand == "left" else right - low - wide) / scale

    wide = stile.finished.width.value
    assert wide / scale == length(at["stile"], "mm")
    assert out(stile.placed.x.value - wide, wide) == length(at["behind"], "mm")
    assert out(door.x.value, door.width.value) == length(at["X0"], "mm")
    assert door.width.value / scale == length(at["door"], "mm")
    assert not any(part.role == "blind filler" for part in case.parts)
    assert verify(case, hardware=sheets(unit, WORKED[unit]["P2"])).failures == ()


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_inset_doors_of_the_other_run_stand_out_nowhere(unit: Unit) -> None:
    """Doors inside their frames take neither bumper nor thickness: D2 + P2 + cl, common practice.

    The stile shows P2 + cl wide, as the filler of a frameless corner does.
    """
    case, scale = corner(unit, "left", overlay="inset"), INCH if unit == "in" else Fraction(1)
    wide = case.part("upper.frame.blind_stile").finished.width.value / scale
    behind = length("1 1/2" if unit == "in" else "40", "mm")
    assert wide - behind == length(EXPECTED[unit]["filler"], "mm")
    assert verify(case, hardware=sheets(unit, WORKED[unit]["P2"])).failures == ()


@settings(max_examples=20, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    overlay=st.sampled_from(("partial", "inset", "full")),
    fixing=st.sampled_from(("pocket screws", "brads")),
    sizes=st.tuples(st.integers(44, 60), st.integers(18, 26), st.integers(0, 8)),
    shown=st.booleans(),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
)
def test_any_framed_blind_corner_proves(
    unit: Unit, hand: str, overlay: OverlayKind, fixing: str, sizes: tuple[int, int, int],
    shown: bool, ply: str,
) -> None:  # fmt: skip
    """Over its widths, depths, pull-offs and sheets, both hands, fixings and every overlay."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    wide, deep, off = (str(size * per) for size in sizes)
    far = ("right" if hand == "left" else "left",)
    case = corner(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        overlay=overlay, asked={"face_fixing": fixing, "finished": far if shown else ()},
        W=wide, D2=deep, q=off,
    )  # fmt: skip
    held = verify(case, hardware=sheets(unit, WORKED[unit]["P2"]))
    # A hinge that lies 13 mm over cannot carry a door over the whole of a stile, and says so.
    stopped = any(finding.rule == "hinge overlay" for finding in case.findings)
    assert overlay == "full" or not stopped
    assert stopped or held.failures == ()


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_an_inset_door_hangs_beside_the_panel(unit: Unit, hand: str) -> None:
    """Its mouth begins D2 + P2 + cl out of the corner; no filler, the panel is flush with it.

    W + q - D2 - P2 - cl - t - 2 g wide, g the gap beside an inset door: plane geometry.
    """
    case, at = corner(unit, hand, overlay="inset", asked=FRAMELESS), WORKED[unit]
    scale = INCH if unit == "in" else Fraction(1)
    behind = sum(length(at[key], "mm") for key in ("D2", "P2", "cl"))
    thick = case.part("upper.blind").finished.thickness.value / scale
    gap = length("3/32" if unit == "in" else "2.5", "mm")
    [door] = case.doors
    clear = length(at["W"], "mm") + length(at["q"], "mm") - behind - thick - 2 * gap
    assert door.width.value / scale == clear
    assert not any(part.role == "blind filler" for part in case.parts)
    assert verify(case, hardware=sheets(unit, at["P2"])).failures == ()


@settings(max_examples=25, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    overlay=st.sampled_from(("full", "partial", "inset")),
    sizes=st.tuples(st.integers(37, 60), st.integers(18, 26), st.integers(0, 8)),
    pull=st.integers(0, 64),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
)
def test_any_blind_corner_proves(
    unit: Unit, hand: str, overlay: OverlayKind, sizes: tuple[int, int, int], pull: int, ply: str
) -> None:
    """Over its widths, depths, pull-offs, pulls and sheets, both hands and every overlay."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    wide, deep, off = (str(size * per) for size in sizes)
    out = str(Fraction(pull, 32) * per)
    case = corner(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        W=wide, D2=deep, q=off, P2=out, overlay=overlay, asked=FRAMELESS,
    )  # fmt: skip
    if not any(finding.severity.value == "stop" for finding in case.findings):
        assert verify(case, hardware=sheets(unit, out)).failures == ()


ROOM = """format = 1
unit = "in"
[wall.north]
width = "96"
[wall.east]
width = "96"
[corner.far]
walls = ["north", "east"]
[case.base]
kind = "base"
[case.blind]
kind = "base"
width = 42
blind = "right"
[case.round]
kind = "base"
[run.north]
cases = ["base", "blind"]
on = "north"
[run.east]
cases = ["round"]
on = "east"
left = "corner"
"""


def test_a_blind_corner_stands_off_its_wall_without_a_filler() -> None:
    """The run ends q before the corner wall; nothing is cut to close what is not seen."""
    worked = work_out(read_job(ROOM, "room.toml"))
    [run] = [run for run in worked.room.runs if run.spec.key == "north"]
    assert [filler.side for filler in run.fillers] == ["left"]
    assert run.length.value - run.cases_end.value == length("3")
    assert run.length.value == length("96")
    assert worked.failures == ()


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ('face_joint = "tenons"', "between the rails"),
        ('scribe = "right"', "nothing to scribe"),
        ('corner_depth = 8', "between the stiles"),
        ("mullion = true", "mullion"),
    ],
)  # fmt: skip
def test_what_a_framed_blind_corner_cannot_have_is_refused(more: str, says: str) -> None:
    """Each with its reason, at its own line."""
    text = ROOM.replace('blind = "right"', f'blind = "right"\nface = "face frame"\n{more}')
    text = text.replace("width = 42", "width = 48")
    with pytest.raises(JobFileError) as caught:
        read_job(text, "room.toml")
    assert says in str(caught.value)


def test_a_framed_blind_corner_stands_round_framed_neighbours() -> None:
    """Read from a job file, in a corner of two walls, with what a person would write."""
    text = ROOM.replace("width = 42", "width = 45")
    text += '[boxes]\nface = "face frame"\n'
    worked = work_out(read_job(text, "room.toml"))
    assert worked.failures == ()
    [corner_case] = [case for case in worked.room.cases if case.spec.blind]
    assert corner_case.overall_width.value == length("45")
