"""Part sizes of drawer bases, sink bases and drawers' boxes against worked constructions.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the
parts in space; common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    INCH,
    Unit,
    case_spec,
    drawer_base,
    hardware,
    house,
    length,
    plain_style,
    stock,
)
from tests.builders import given as chosen

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.specs import DrawerJoint
from casewright.casework.verification import verify
from casewright.hardware import HardwareList


def _exact(unit: Unit) -> HardwareList:
    """Slides that take what their sheet says, and no more: the worked sizes leave no play."""
    sheets, none = hardware(unit), chosen("0", unit)
    return replace(
        sheets, slide=replace(sheets.slide, play=none),
        undermount=replace(sheets.undermount, play=none),
    )  # fmt: skip


def _built(unit: Unit, thickness: str = "", **changes: Any) -> Case:
    style = plain_style(unit, cut_step="0", drawer_behind_front="0")
    sheets = _exact(unit)
    goods = stock(unit, drawer=thickness or None)
    case = build_case(
        house(unit, style=style, goods=goods, sheets=sheets), case_spec(unit, **changes)
    )
    assert verify(case, hardware=sheets, grid=Fraction(0)).failures == ()
    return case


def _check(case: Case, unit: Unit, expected: dict[str, str]) -> None:
    scale = INCH if unit == "in" else Fraction(1)
    for name, text in expected.items():
        size = case.part(f"base.{name}").finished
        long, wide = (length(each, "mm") for each in text.split(" x "))
        assert (size.length.value / scale, size.width.value / scale) == (long, wide), name


FRONTS: dict[Unit, dict[str, str]] = {
    "in": {"drawer_1.front.slab": "7 x 23 7/8", "drawer_2.front.slab": "11 9/16 x 23 7/8",
           "drawer_3.front.slab": "11 9/16 x 23 7/8"},
    "mm": {"drawer_1.front.slab": "180 x 597", "drawer_2.front.slab": "290.5 x 597",
           "drawer_3.front.slab": "290.5 x 597"},
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_fronts_of_a_drawer_base_sum_to_its_face(unit: Unit) -> None:
    """Three fronts, the topmost 7 in or 180 mm: face 30 1/2 in or 770 mm."""
    top = "drawer 7" if unit == "in" else "drawer 180"
    case = _built(unit, **drawer_base(unit, top, "drawer", "drawer"))
    _check(case, unit, FRONTS[unit])
    gaps = length("3/8" if unit == "in" else "9", unit)
    heights = sum((front.height.value for front in case.fronts), Fraction(0))
    assert heights + gaps == length("30 1/2" if unit == "in" else "770", unit)


SIDE: dict[Unit, dict[str, str]] = {
    "in": {"side_left": "20 x 5 1/4", "side_right": "20 x 5 1/4", "front_end": "21 1/16 x 5 1/4",
           "back_end": "21 1/16 x 5 1/4", "bottom": "21 x 19 7/16"},
    "mm": {"side_left": "500 x 135", "side_right": "500 x 135", "front_end": "526 x 135",
           "back_end": "526 x 135", "bottom": "524 x 485"},
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_box_in_rabbets_on_side_mounted_slides(unit: Unit) -> None:
    """An opening of 22 9/16 x 6 1/4 in, or 564.4 x 160 mm; 1/2 in or 12.7 mm of air a side."""
    row = "drawer 6 1/8" if unit == "in" else "drawer 157"
    case = _built(unit, **drawer_base(unit, "drawer", row, "drawer"))
    _check(case, unit, {f"drawer_2.{name}": size for name, size in SIDE[unit].items()})
    assert case.drawers[1].width.value == length("21 9/16" if unit == "in" else "539", unit)


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize(
    ("joint", "inch", "metric"), [("butt", "20 9/16", "514"), ("box joint", "21 9/16", "539")]
)
def test_ends_are_as_long_as_their_joint_wants(
    unit: Unit, joint: DrawerJoint, inch: str, metric: str
) -> None:
    """The same box with butted ends, and with fingers."""
    row = "drawer 6 1/8" if unit == "in" else "drawer 157"
    case = _built(unit, **drawer_base(unit, "drawer", row, "drawer", joint=joint))
    end = case.part("base.drawer_2.front_end").finished.length.value
    assert end == length(inch if unit == "in" else metric, unit)


UNDER: dict[Unit, dict[str, str]] = {
    "in": {"side_left": "21 x 8", "front_end": "20 29/32 x 8", "back_end": "20 29/32 x 8",
           "bottom": "21 11/32 x 20 3/16"},
    "mm": {"side_left": "500 x 205", "front_end": "522.4 x 205", "back_end": "522.4 x 205",
           "bottom": "532.4 x 478"},
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_butted_box_on_concealed_slides(unit: Unit) -> None:
    """An opening 9 in or 230 mm high; inside width 1 21/32 in or 42 mm less than it."""
    row, thickness = ("drawer 8 7/8", "5/8") if unit == "in" else ("drawer 227", "16")
    asked = drawer_base(unit, "drawer", row, "drawer", joint="butt", slides="undermount")
    case = _built(unit, thickness, **asked)
    _check(case, unit, {f"drawer_2.{name}": size for name, size in UNDER[unit].items()})
    drawer = case.drawers[1]
    assert drawer.inside_width.value == length("20 29/32" if unit == "in" else "522.4", unit)
    assert drawer.width.value == length("22 5/32" if unit == "in" else "554.4", unit)
    air = drawer.x.value - case.part("base.side_left").finished.thickness.value
    assert air == length("13/64" if unit == "in" else "5", unit)


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_roll_out_is_padded_clear_of_the_doors(unit: Unit) -> None:
    """Of a case 30 in or 760 mm wide, with pads of 3/4 in or 19 mm at each side."""
    width = "30" if unit == "in" else "760"
    asked = drawer_base(unit, width=width, roll_outs=2)
    case = _built(unit, **asked)
    assert [drawer.title for drawer in case.drawers] == ["roll-out 1", "roll-out 2"]
    outside = length("26 1/16" if unit == "in" else "661", unit)
    assert {drawer.width.value for drawer in case.drawers} == {outside}
    assert not any(drawer.front for drawer in case.drawers)


SINK: dict[Unit, dict[str, str]] = {
    "in": {"side_left": "34 1/2 x 23 1/4", "bottom": "34 9/16 x 23 1/4",
           "front_rail": "34 9/16 x 6", "nailer_top": "34 9/16 x 4",
           "nailer_bottom": "34 9/16 x 4",
           "false_front.slab": "7 x 35 7/8", "door_left.slab": "23 1/4 x 17 7/8",
           "door_right.slab": "23 1/4 x 17 7/8"},
    "mm": {"side_left": "870 x 580", "bottom": "864.4 x 580", "front_rail": "864.4 x 150",
           "nailer_top": "864.4 x 100", "nailer_bottom": "864.4 x 100",
           "false_front.slab": "180 x 897", "door_left.slab": "584 x 447",
           "door_right.slab": "584 x 447"},
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_sink_base_has_no_top_and_an_open_back(unit: Unit) -> None:
    """36 in or 900 mm wide: a rail on edge, a false front, two rails behind."""
    top = "false front 7" if unit == "in" else "false front 180"
    width = "36" if unit == "in" else "900"
    asked = drawer_base(unit, top, "doors", width=width, sink=True, back="open")
    case = _built(unit, **asked)
    _check(case, unit, SINK[unit])
    roles = {part.role for part in case.parts}
    assert not roles & {"top", "stretcher", "back", "shelf"}
