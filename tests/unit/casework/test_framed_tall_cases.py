"""Tall cases behind a face frame: round an oven, and round a refrigerator.

Source: zones and panels of a set of trade constructions (`TALL_OVEN`, whose stack sums to the
height; `FRIDGE`), between rails and stiles as those of its `FF_BASE` lie; common practice.
Figures worked out by hand.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    INCH,
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
    rows,
)
from tests.unit.casework.test_face_frames import FRAME
from tests.unit.casework.test_tall_cases import surround

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.proof import prove
from casewright.casework.replay import replay
from casewright.casework.specs import ApplianceOpening, Hand, OverlayKind, RowSpec
from casewright.casework.verification import verify
from casewright.findings import Severity

# Upper edges of the bottom rail and of the deck, ends of the opening, lower edge of the top rail.
ZONES: dict[Unit, tuple[str, ...]] = {
    "in": ("5 1/2", "17", "17", "45 1/2", "88 1/2"), "mm": ("140", "430", "430", "1150", "2240"),
}  # fmt: skip


def _lying(row: RowSpec, overlay: OverlayKind) -> RowSpec:
    front, low = (each and replace(each, overlay=overlay) for each in (row.front, row.low))
    return replace(row, front=front, low=low)


def _tower(unit: Unit, overlay: OverlayKind = "partial", **changes: Any) -> dict[str, Any]:
    """Doors over an oven of 28 1/2 in or 720 mm over a drawer of 10 in or 250 mm."""
    inch = unit == "in"
    sizes = ("28 1/2", "28 1/2", "22 1/2") if inch else ("720", "720", "560")
    oven = ApplianceOpening("oven", "wall oven", *(given(size, unit) for size in sizes))
    doors, drawer = (
        _lying(row, overlay) for row in rows(unit, "doors", "drawer 10" if inch else "drawer 250")
    )
    return {
        **drawer_base(unit), "key": "tall", "kind": "tall", "toe": "notch",
        "width": "31 1/2" if inch else "800", "height": "90" if inch else "2280",
        "depth": "24" if inch else "600", "front": doors.front,
        "rows": (doors, RowSpec("appliance", None, None, None, oven), drawer), **FRAME, **changes,
    }  # fmt: skip


def _exact(unit: Unit, **changes: Any) -> Case:
    return one_case(unit, style=plain_style(unit, cut_step="0", appliance_air="0"),
                    **_tower(unit, **changes))  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_zones_of_a_framed_oven_case(unit: Unit) -> None:
    """k + ws, then each zone and its rail; between the stiles W - 2 ws. Decks lie behind rails."""
    case = _exact(unit)
    scale = INCH if unit == "in" else Fraction(1)
    bottom, under, over, top = (
        case.part(f"tall.frame.rail_{name}") for name in ("bottom", "2", "1", "top")
    )
    deck, board = (
        extent(case.part("tall.row_board.2"), 1),
        extent(case.part("tall.row_board.1"), 1),
    )
    planes = (extent(bottom, 1)[1], deck[1], extent(under, 1)[1], extent(over, 1)[0],
              extent(top, 1)[0])  # fmt: skip
    wanted = [length(text, "mm") for text in ZONES[unit]]
    assert [plane.value / scale for plane in planes] == wanted
    assert board[1].value == extent(over, 1)[1].value
    assert case.frame is not None
    wide = length("28 1/2" if unit == "in" else "720", unit)
    zones = [(w.value, h.value) for _, w, h in case.frame.openings]
    assert zones[1] == (wide, wide)
    assert {w for w, _ in zones} == {wide}
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_cleats_end_with_the_edge_of_the_stile_before_them(unit: Unit, hand: Hand) -> None:
    """Planed to ws - o - t, at most as thick as the frame's boards: none stands in the mouth."""
    case = one_case(unit, **_tower(unit))
    cleat, stile = case.part(f"tall.appliance.cleat_{hand}"), case.part(f"tall.frame.stile_{hand}")
    near = 1 if hand == "left" else 0
    edges = [extent(part, 0)[near].value for part in (cleat, stile)]
    short = edges[1] - edges[0] if hand == "left" else edges[0] - edges[1]
    board = length("3/4" if unit == "in" else "19", unit)
    assert 0 <= short <= length("1/64" if unit == "in" else "1", unit)
    assert cleat.finished.thickness.value <= board
    assert extent(cleat, 1)[1].value == extent(case.part("tall.row_board.2"), 1)[0].value
    assert replay(case).failures == ()


@pytest.mark.parametrize("cover", ["1/2", "1 1/4"])
def test_pads_of_a_pair_under_a_deck_keep_below_its_cleats(cover: str) -> None:
    """However far its doors reach up over the rail: cleats hang 3/4 in under that."""
    doors = _lying(rows("in", "doors 10")[0], "partial")
    asked = _tower("in")
    case = one_case("in", style=plain_style("in", face_overlay=cover),
                    **{**asked, "rows": (*asked["rows"][:2], doors)})  # fmt: skip
    low = extent(case.part("tall.appliance.cleat_left"), 1)[0].value
    pads = [extent(part, 1) for part in case.parts if part.role == "pad"]
    below = [high.value for start, high in pads if start.value < low]
    assert len(below) == 4
    assert max(below) <= low


def test_its_opening_is_a_fit_of_the_frame() -> None:
    """An oven wider than between the stiles stops; one that is much narrower is told."""
    for wide, severity, relief in (("28 9/16", Severity.STOP, "wider"),
                                   ("28", Severity.CARE, "face_stile")):  # fmt: skip
        asked = _tower("in")
        oven = replace(asked["rows"][1].appliance, width=given(wide))
        case = one_case("in", **{**asked, "rows": (asked["rows"][0], replace(
            asked["rows"][1], appliance=oven), asked["rows"][2])})  # fmt: skip
        (found,) = [f for f in case.findings if f.rule == "appliance opening"]
        assert found.severity is severity
        assert any(relief in remedy for remedy in found.remedies)


def test_stiles_that_hide_no_cleat_stop_with_the_least_that_does() -> None:
    """1/8 over the side and 23/32 of it leave 13/32 of 1 1/4: 12 mm want 1 11/32."""
    style = plain_style("in", face_stile="1 1/4")
    case = one_case("in", style=style, **_tower("in", width="31"))
    (found,) = [f for f in case.findings if f.path == "tall.frame.cleats"]
    assert found.severity is Severity.STOP
    assert found.remedies == ('set face_stile to 1 11/32" or more',)
    wider = plain_style("in", face_stile="1 11/32")
    case = one_case("in", style=wider, **_tower("in", width="31 3/16"))
    assert not [f for f in case.findings if f.severity is Severity.STOP]


def test_a_rail_that_an_oven_would_be_lifted_over_is_caught() -> None:
    """1/16 higher than its deck, however it came there."""
    case = one_case("in", **_tower("in"))
    rail = case.part("tall.frame.rail_2")
    up = rail.placed.y + case.part("tall.bottom").finished.thickness / 11
    moved = replace(rail, placed=replace(rail.placed, y=up))
    parts = tuple(moved if part is rail else part for part in case.parts)
    failures = prove(replace(case, parts=parts), hardware=hardware()).failures
    assert any("in the way of what is pushed in" in f.says for f in failures)


# Panel, stile, rail, side, bottom; between the panels, over the frame.
ROUND: dict[Unit, tuple[str, ...]] = {
    "in": ("91 1/2 x 24 1/4", "91 1/2 x 2 3/32", "36 1/4 x 1 1/2", "20 1/2 x 24 1/4", "39",
           "40 7/16"),
    "mm": ("2330 x 616", "2330 x 54.8", "920 x 40", "525 x 616", "994", "1029.6"),
}  # fmt: skip


def _surround(unit: Unit, **changes: Any) -> dict[str, Any]:
    """36 1/4 in or 920 mm between the stiles, panels of the box's sheet."""
    own = {"front": replace(SLAB, overlay="partial"), "end_stock": "ply18", **FRAME}
    return surround(unit, **{**own, **changes})


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_stiles_of_a_surround_reach_the_floor_before_its_panels(unit: Unit) -> None:
    """As wide as others and the panel behind, less the overhang: ws + tp - o.

    Panels, over-box and opening are those of `FRIDGE`, less the frame's boards in depth; between
    the panels is W + 2 (ws - o), over the frame W + 2 (ws + tp - o).
    """
    case = one_case(unit, style=plain_style(unit, cut_step="0"), **_surround(unit))
    scale = INCH if unit == "in" else Fraction(1)
    names = ("end_left.skin", "frame.stile_left", "frame.rail_bottom", "side_left")
    for name, text in zip(names, ROUND[unit], strict=False):
        wanted = tuple(length(each, "mm") for each in text.split(" x "))
        size = case.part(f"cold.{name}").finished
        assert (size.length.value / scale, size.width.value / scale) == wanted, name
    wide = (case.width.value / scale, case.overall_width.value / scale)
    assert wide == tuple(length(text, "mm") for text in ROUND[unit][4:])
    assert case.part("cold.frame.stile_right").placed.y.value == 0
    rail, side = case.part("cold.frame.rail_bottom"), case.part("cold.side_left")
    assert rail.placed.y.value == side.placed.y.value
    assert verify(case, hardware=hardware(unit)).holds


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_panel_is_glued_and_bradded_behind_its_stile(hand: Hand) -> None:
    """From floor to top, its outside flush with the stile's outer edge; no metal through it."""
    case = one_case("in", **_surround("in"))
    panel, stile = case.part(f"cold.end_{hand}.skin"), case.part(f"cold.frame.stile_{hand}")
    outer = 0 if hand == "left" else 1
    assert extent(panel, 0)[outer].value == extent(stile, 0)[outer].value
    assert extent(panel, 2)[1].value == extent(stile, 2)[0].value
    (joint,) = [j for j in case.joints if j.path == f"cold.end_{hand}.joint_stile"]
    assert [f.kind for f in joint.fastenings] == ["brad", "glue"]
    assert {f.through[0] for f in joint.fastenings if f.kind == "brad"} == {stile.path}
    (step,) = [s for s in case.assembly if s.part == panel.path]
    assert {"clamp_screws", "brad_points"} <= set(step.cautions)


def test_a_refrigerator_has_to_pass_between_the_stiles() -> None:
    """With its air at both sides; as wide as asked they are a fit, 1/4 in less is missing."""
    found, exact = [], plain_style("in", cut_step="0")
    for wide in ("36", "36 1/4"):
        case = one_case("in", style=exact, **_surround("in", width=wide))
        found.append([f for f in case.findings if f.severity is Severity.STOP])
    assert found[1] == []
    (stop,) = found[0]
    assert 'between the stiles round refrigerator 1/4" is missing' in stop.says
    assert '1/4" greater' in stop.remedies[0]
    numbers = house("in")
    build_case(numbers, case_spec("in", **_surround("in")))
    assert {"cold.opening.width_fit", "cold.frame.right_joint"} <= set(numbers.chain.fits)
