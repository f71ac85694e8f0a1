"""Mitred frames: long and short points, splines, and the set-ups that cut them.

Sizes against a worked construction of the trade in both units; common practice, no publication,
figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import sqrt

import pytest
from tests.builders import MITRED, Unit, case_spec, given, hardware, house, length, one_case
from tests.builders import plain_style as style_of
from tests.builders import shop as home_shop
from tests.builders import stock as goods_of

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.proof import prove
from casewright.casework.replay import replay
from casewright.casework.specs import Hand
from casewright.findings import Severity
from casewright.shop import Tool, ToolKind

UNITS = pytest.mark.parametrize("unit", ["in", "mm"])


def _door(unit: Unit = "in", **style: str) -> Case:
    """The door of the worked construction: 18 x 30 in, or 450 x 760 mm."""
    wide, tall = ("18 1/8", "30 1/16") if unit == "in" else ("453", "761.5")
    return one_case(unit, width=wide, height=tall, front=MITRED, shelves=0,
                    style=style_of(unit, cut_step="0", **style))  # fmt: skip


def _size(case: Case, name: str) -> tuple[Fraction, Fraction]:
    size = case.part(f"upper.door.{name}").finished
    return size.length.value, size.width.value


def _is(text: str, unit: Unit) -> tuple[Fraction, Fraction]:
    long, wide = text.split(" x ")
    return length(long, unit), length(wide, unit)


def _cuts(case: Case, kind: str) -> list[Cut]:
    return [f for p in case.parts for f in p.features if isinstance(f, Cut) and f.kind == kind]


@UNITS
def test_long_points_short_points_and_panel(unit: Unit) -> None:
    """Members as long as the door at their long points; the panel lies in their grooves."""
    plan, inch = house(unit, style=style_of(unit, cut_step="0")), unit == "in"
    wide, tall = ("18 1/8", "30 1/16") if inch else ("453", "761.5")
    case = build_case(plan, case_spec(unit, width=wide, height=tall, front=MITRED, shelves=0))
    assert _size(case, "stile_left") == _is("30 x 2 1/2" if inch else "760 x 65", unit)
    assert _size(case, "rail_top") == _is("18 x 2 1/2" if inch else "450 x 65", unit)
    panel = "25 11/16 x 13 11/16" if inch else "648 x 338"
    assert _size(case, "panel") == _is(panel, unit)
    short = [plan.chain.nodes[f"upper.door.{name}.short_point"].value
             for name in ("stile_left", "rail_top")]  # fmt: skip
    assert short == [length(text, unit) for text in (("25", "13") if inch else ("630", "320"))]
    assert prove(case, hardware=hardware(unit)).failures == ()
    assert replay(case).failures == ()


@UNITS
def test_splines_are_as_wide_as_two_tongues_and_reach_from_corner_to_panel(unit: Unit) -> None:
    """Grain across the mitre; as long as the slant from the corner to the panel, or a hair less.

    That slant is the square root of 2 times stile less tongue plus clearance.
    """
    case, inch = _door(unit), unit == "in"
    across, along = _size(case, "spline_bottom_left")
    assert across == length("3/4" if inch else "20", unit)
    square = length("2 1/2", "in") - length("11/32", "in") if inch else Fraction(65 - 10 + 1)
    assert 0 <= sqrt(2) * float(square) - float(along) < 0.01
    splines = [part for part in case.parts if part.role == "spline"]
    assert len(splines) == 4
    assert all(part.diagonal for part in splines)
    slots = _cuts(case, "slot")
    assert len(slots) == 8
    grooves = _cuts(case, "groove")
    assert {(c.at.value, c.width.value, c.depth.value) for c in slots} == {
        (c.at.value, c.width.value, c.depth.value) for c in grooves
    }


def test_all_members_are_as_wide_as_the_stiles() -> None:
    """Mitres of 45 degrees join members of one width: the style's rail does not count."""
    case = _door(stile="2 1/4", rail="3")
    widths = {p.finished.width.value for p in case.parts if p.role in ("stile", "rail")}
    assert widths == {length("2 1/4")}


def _tools(*more: ToolKind, less: tuple[ToolKind, ...] = ()) -> list[set[tuple[str, ...]]]:
    """Tool and caution of the mitres, then of the slots, in a shop with other tools."""
    plan, own = house(), home_shop()
    tools = {kind: tool for kind, tool in own.tools.items() if kind not in less}
    tools |= {kind: Tool(kind, Fraction(1, 10), Fraction(1, 5)) for kind in more}
    plan.shop = replace(own, tools=tools)
    case = build_case(plan, case_spec(width="18", front=MITRED, shelves=0))
    return [
        {(c.setup.tool, *c.setup.cautions) for c in _cuts(case, kind)}
        for kind in ("mitre", "slot")
    ]


def test_mitres_and_slots_are_set_up_for_tools_that_the_shop_owns() -> None:
    """Each way has a caution of its own; all members of a length share one stop."""
    assert _tools("mitre saw", "router table", "slot cutter") == [
        {("mitre saw", "mitre_saw")}, {("router table", "router_mitre")},
    ]  # fmt: skip
    assert _tools() == [{("table saw", "saw_mitre")}, {("table saw", "saw_cradle")}]
    assert _tools(less=("table saw",)) == [
        {("circular saw", "saw_guided")}, {("router", "router_on_edge")},
    ]  # fmt: skip
    stops = {c.setup.stop.value for c in _cuts(_door(), "mitre") if c.setup.stop is not None}
    assert stops == {length("30"), length("18")}


def test_a_trial_frame_comes_first() -> None:
    """Four short mitres closed to a frame tell whether the saw is at 45 degrees."""
    holds = [step for step in _door().assembly if step.verb == "hold"]
    assert len(holds) == 1
    assert "no light" in holds[0].words


def test_hinges_and_pulls_keep_off_the_mitres() -> None:
    """Cups lie beyond the square of the corner, and pulls, too."""
    case = _door(hinge_end="1 1/2", pull_end="1")
    cups = [h.on_door.value for h in case.doors[0].hinges]
    assert min(cups) - Fraction(35, 2) >= length("2 1/2")
    assert prove(case, hardware=hardware()).failures == ()


@UNITS
@pytest.mark.parametrize("hinge", ["left", "right"])
@pytest.mark.parametrize("board", ["5/8", "3/4", "1"])
def test_it_proves_in_either_hand_of_boards_of_any_thickness(
    unit: Unit, hinge: Hand, board: str
) -> None:
    """A single door and a pair, in boards from 5/8 to 1 in, on the cutting grid."""
    goods = goods_of(unit)
    goods["board"] = replace(goods["board"], thickness=given(length(board), "mm"))
    front = replace(MITRED, hinge=hinge)
    for width in ("15", "34") if unit == "in" else ("380", "860"):
        case = one_case(unit, goods=goods, width=width, front=front)
        assert [f for f in case.findings if f.severity is Severity.STOP] == []
        assert prove(case, hardware=hardware(unit)).failures == ()
        assert replay(case).failures == ()
