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
from casewright.casework.verification import verify
from casewright.dims import Chain
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


def corner(unit: Unit, hand: str, *, ply: str | None = None, step: str = "0", **by: str) -> Case:
    """The worked corner, or one with other numbers."""
    at = WORKED[unit] | by
    goods = stock(unit, ply=ply)
    goods["slab"] = replace(goods["mdf"], key="slab", thickness=given(at["td"], unit))
    style = plain_style(unit, cut_step=step, bumper=at["bp"], corner_clear=at["cl"],
                        blind_pull_off=at["q"])  # fmt: skip
    house = House(Chain(NO_FACTS), style, goods, sheets(unit, at["P2"]), shop(unit), unit)
    hinge: Any = "right" if hand == "left" else "left"
    front = replace(SLAB, slab="slab", leaves=1, hinge=hinge)
    spec = case_spec(
        unit, kind="base", toe="notch", height=at["H"], depth=at["D2"], width=at["W"], shelves=1,
        front=front, blind=hand, corner_depth=given(at["D2"], unit),
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


@settings(max_examples=20, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    sizes=st.tuples(st.integers(37, 60), st.integers(18, 26), st.integers(0, 8)),
    pull=st.integers(0, 64),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
)
def test_any_blind_corner_proves(
    unit: Unit, hand: str, sizes: tuple[int, int, int], pull: int, ply: str
) -> None:
    """Over its widths, depths, pull-offs, pulls and sheets, both hands, on the cutting grid."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    wide, deep, off = (str(size * per) for size in sizes)
    out = str(Fraction(pull, 32) * per)
    case = corner(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        W=wide, D2=deep, q=off, P2=out,
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
