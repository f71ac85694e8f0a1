"""Door sizes against worked constructions of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the
parts in space; common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    SLAB,
    Unit,
    hardware,
    length,
    one_case,
    plain_style,
)
from tests.perturbation import moved

from casewright.casework.cases import Case, Front
from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.casework.verification import verify

UNITS = pytest.mark.parametrize("unit", ["in", "mm"])


def _case(unit: Unit, width: str, height: str, style: dict[str, str], **changes: Any) -> Case:
    return one_case(
        unit, style=plain_style(unit, cut_step="0", **style), width=width, height=height, **changes
    )


def _size(thing: Part | Front) -> tuple[Fraction, Fraction]:
    if isinstance(thing, Front):
        return thing.height.value, thing.width.value
    return thing.finished.length.value, thing.finished.width.value


def _is(text: str, unit: Unit) -> tuple[Fraction, Fraction]:
    long, wide = text.split(" x ")
    return length(long, unit), length(wide, unit)


@UNITS
def test_full_overlay_pair(unit: Unit) -> None:
    """Leaves, side overlay and centre gap of a full overlay pair on a frameless case."""
    inch = unit == "in"
    size = ("33", "39") if inch else ("850", "1000")
    case = _case(unit, *size, {}, front=SLAB)
    leaf = "38 15/16 x 16 3/8" if inch else "998.5 x 422"
    assert [_size(front) for front in case.doors] == [_is(leaf, unit)] * 2
    (face,) = case.faces
    assert face.gaps[0].value == length("1/8" if inch else "3", unit)
    left = case.part("upper.side_left").finished.thickness.value
    assert left - case.doors[0].x.value == length("21/32" if inch else "16.3", unit)


@UNITS
def test_under_a_crown_fronts_drop_by_its_lap_and_a_gap(unit: Unit) -> None:
    """1 1/2 and 1/8 in, or 38 and 3 mm, below the top of the box (common practice)."""
    inch = unit == "in"
    size = ("33", "39") if inch else ("850", "1000")
    case = _case(unit, *size, {}, front=SLAB, crown="1 1/2" if inch else "38")
    head = case.height.value - case.doors[0].y.value - case.doors[0].height.value
    assert head == length("1 5/8" if inch else "41", unit)


@UNITS
@pytest.mark.parametrize("lap", [(5, 125), (8, 200)])
def test_the_stretcher_under_a_crown_drops_by_its_lap_and_a_gap(
    unit: Unit, lap: tuple[int, int]
) -> None:
    """Lap plus gap wide, under the top: doors reach as far over it as the top is thick.

    Source: the check value 'a front stretcher drops by lap plus gap', common practice. A lower
    lap leaves it as wide as it is otherwise.
    """
    inch = unit == "in"
    size = ("33", "39") if inch else ("850", "1000")
    case = _case(unit, *size, {}, front=SLAB, crown=str(lap[0] if inch else lap[1]))
    board = case.part("upper.crown_stretcher")
    assert board.finished.width.value == length(f"{lap[0]} 1/8" if inch else str(lap[1] + 3), unit)
    door = case.doors[0]
    over = door.y.value + door.height.value - board.placed.y.value
    assert over == case.part("upper.top").finished.thickness.value


def test_a_stretcher_that_ends_above_the_doors_is_caught() -> None:
    """One as wide as usual under a crown that laps 5 in: a slit is open over the doors."""
    case = _case("in", "33", "39", {}, front=SLAB, crown="5")
    board = case.part("upper.crown_stretcher")
    placed = replace(board.placed, y=moved(board.placed.y, length("1")))
    parts = tuple(replace(p, placed=placed) if p is board else p for p in case.parts)
    told = [f.says for f in verify(replace(case, parts=parts), hardware=hardware("in")).failures]
    assert any("ends above the fronts under the crown" in says for says in told)


@UNITS
def test_stacked_doors_meet_on_the_divider(unit: Unit) -> None:
    """Lower and upper door heights of a stacked upper; the gap is split on the divider's line."""
    inch = unit == "in"
    size = ("36", "51") if inch else ("900", "1300")
    case = _case(unit, *size, {}, divider="36" if inch else "920", joint="dado", front=SLAB,
                 upper_front=GLASS)  # fmt: skip
    lower, upper = case.doors[0], case.doors[2]
    assert lower.height.value == length("35 15/16" if inch else "918.5", unit)
    assert upper.height.value == length("14 7/8" if inch else "377", unit)
    gap = upper.y.value - lower.y.value - lower.height.value
    assert gap == length("1/8" if inch else "3", unit)


@UNITS
def test_slab_banded_on_four_edges(unit: Unit) -> None:
    """The core of a banded slab is smaller by the band on all sides; the band goes all round."""
    inch = unit == "in"
    size = ("14 3/4", "30 7/16") if inch else ("375", "771.5")
    case = _case(unit, *size, {}, front=replace(SLAB, edge="band"))
    slab = case.part("upper.door.slab")
    assert _size(slab) == _is("30 3/8 x 14 5/8" if inch else "770 x 372", unit)
    blank = (slab.blank.length.value, slab.blank.width.value)
    assert blank == _is("30 5/16 x 14 9/16" if inch else "769 x 371", unit)
    edges = {"l": slab.finished.width.value, "w": slab.finished.length.value}
    band = sum(edges[edge.edge[0]] for edge in slab.edges)
    assert band == length("90" if inch else "2284", unit)


def test_a_fibreboard_slab_is_filled_and_painted_whatever_the_box_gets() -> None:
    """Iron-on band on painted fibreboard shows its seam: the edges are filled (common practice).

    The number ends in its reason. A plywood slab gets what the box gets.
    """
    case = one_case(width="16", edge="band", front=SLAB)
    slab = case.part("upper.door.slab")
    assert {edge.kind for edge in slab.edges} == {"painted"}
    assert slab.blank.width.value == slab.finished.width.value
    origin = slab.edges[0].thickness.origin
    assert origin is not None
    assert "fibreboard are filled and painted" in origin.note
    plywood = one_case(width="16", edge="band", front=replace(SLAB, slab="ply18"))
    assert {edge.kind for edge in plywood.part("upper.door.slab").edges} == {"band"}


@UNITS
def test_applied_frame_door(unit: Unit) -> None:
    """Slab and strips of an applied-frame door: stiles full length, rails between them."""
    inch = unit == "in"
    size = ("14 3/4", "30 7/16") if inch else ("375", "771.5")
    case = _case(unit, *size, {"stile": "2 5/8", "rail": "2 5/8"} if inch else {}, front=APPLIED)
    stile = "30 3/8 x 2 5/8" if inch else "770 x 65"
    rail = "9 3/8 x 2 5/8" if inch else "242 x 65"
    assert _size(case.part("upper.door.slab")) == _is(
        "30 3/8 x 14 5/8" if inch else "770 x 372", unit
    )
    for name in ("stile_left", "stile_right"):
        assert _size(case.part(f"upper.door.{name}")) == _is(stile, unit)
    for name in ("rail_bottom", "rail_top"):
        assert _size(case.part(f"upper.door.{name}")) == _is(rail, unit)
    assert case.doors[0].thickness.value == length("13/16" if inch else "20", unit)


@UNITS
def test_half_lap_glass_door(unit: Unit) -> None:
    """Frame, laps and pane of a half-lap glass door: rails run the full width behind."""
    inch = unit == "in"
    size = ("16 1/2", "14 15/16") if inch else ("425", "379.5")
    case = _case(unit, *size, {}, front=GLASS, shelves=0)
    assert _size(case.part("upper.door.stile_left")) == _is(
        "14 7/8 x 2 1/2" if inch else "378 x 65", unit
    )
    assert _size(case.part("upper.door.rail_top")) == _is(
        "16 3/8 x 2 1/2" if inch else "422 x 65", unit
    )
    assert _size(case.part("upper.door.pane")) == _is("10 1/2 x 12" if inch else "265 x 309", unit)
    laps = [
        feature
        for part in case.parts
        for feature in part.features
        if isinstance(feature, Cut) and feature.kind == "lap"
    ]
    assert len(laps) == 8
    assert {lap.depth.value for lap in laps} == {length("3/8" if inch else "9.5", unit)}
    assert {lap.width.value for lap in laps} == {length("2 1/2" if inch else "65", unit)}
