"""Frame and panel: rails with tongues, cut to the stiles as made; a panel loose in grooves.

Sizes against a worked construction of the trade in both units; common practice, no publication,
figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Literal

import pytest
from tests.builders import PANEL, Unit, case_spec, given, hardware, house, length, one_case
from tests.builders import plain_style as style_of
from tests.builders import shop as home_shop
from tests.builders import stock as goods_of

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.levels import extent
from casewright.casework.proof import prove
from casewright.casework.replay import replay
from casewright.casework.specs import Hand
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.shop import Tool, ToolKind

UNITS = pytest.mark.parametrize("unit", ["in", "mm"])


def _size(case: Case, name: str) -> tuple[Fraction, Fraction]:
    size = case.part(f"upper.{name}").finished
    return size.length.value, size.width.value


def _is(text: str, unit: Unit) -> tuple[Fraction, Fraction]:
    long, wide = text.split(" x ")
    return length(long, unit), length(wide, unit)


def _door(unit: Unit = "in", **changes: str) -> Case:
    """The door of the worked construction: 16 3/8 x 38 15/16 in, or 422 x 998.5 mm."""
    wide, tall = ("16 1/2", "39") if unit == "in" else ("425", "1000")
    return one_case(unit, width=wide, height=tall, front=PANEL, shelves=0,
                    style=style_of(unit, cut_step="0", **changes))  # fmt: skip


def _cuts(case: Case, name: str, kind: str) -> list[Cut]:
    part = case.part(f"upper.door.{name}")
    return [f for f in part.features if isinstance(f, Cut) and f.kind == kind]


@UNITS
def test_stiles_rails_and_panel(unit: Unit) -> None:
    """Rail: door less both stiles, and two tongues; panel: sight size, tongues, less clearance."""
    case, inch = _door(unit), unit == "in"
    assert _size(case, "door.stile_left") == _is(
        "38 15/16 x 2 1/2" if inch else "998.5 x 65", unit
    )
    assert _size(case, "door.rail_top") == _is("12 1/8 x 2 1/2" if inch else "312 x 65", unit)
    left, right, low, high = (
        case.part(f"upper.door.{name}") for name in
        ("stile_left", "stile_right", "rail_bottom", "rail_top")
    )  # fmt: skip
    sight = (
        extent(high, 1)[0].value - extent(low, 1)[1].value,
        case.fronts[0].width.value - left.finished.width.value - right.finished.width.value,
    )
    assert sight == _is("33 15/16 x 11 3/8" if inch else "868.5 x 292", unit)
    assert _size(case, "door.panel") == _is("34 5/8 x 12 1/16" if inch else "886.5 x 310", unit)
    front = case.fronts[0]
    assert (front.height.value, front.width.value) == _is(
        "38 15/16 x 16 3/8" if inch else "998.5 x 422", unit
    )
    assert prove(case, hardware=hardware(unit)).failures == ()
    assert replay(case).failures == ()


@UNITS
def test_the_groove_is_as_wide_as_the_panel_that_was_read(unit: Unit) -> None:
    """A panel of another thickness gets another groove; the tongue is as thick as the panel.

    What lies before groove and tongue is alike, so that stile and rail come out flush.
    """
    read = length("0.2" if unit == "in" else "5.1", unit)
    facts = {"stock.ply6.thickness": Fact(Origin("measured", "calliper"), built=read)}
    case = one_case(unit, facts=facts, front=PANEL, shelves=0,
                    width="16" if unit == "in" else "400")  # fmt: skip
    thick = case.part("upper.door.stile_left").finished.thickness.value
    (groove,) = _cuts(case, "stile_left", "groove")
    assert groove.face == "w1"
    assert groove.width.value - read == length("1/200" if unit == "in" else "0.1", unit)
    front, rear, *_ = _cuts(case, "rail_top", "tongue")
    assert front.depth.value == groove.at.value
    assert thick - front.depth.value - rear.depth.value == read


def test_rails_follow_the_stiles_as_made() -> None:
    """A stile ripped 1/16 wide makes the rails shorter by as much; the door keeps its width."""
    origin = Origin("made", "rip fence")
    wide = {"upper.door.stile_left.width": Fact(origin, cut=length("2 9/16"))}
    plain, made = (
        build_case(house(facts=facts), case_spec(width="16 1/2", front=PANEL, shelves=0))
        for facts in ({}, wide)
    )
    for name in ("rail_top", "rail_bottom", "panel"):
        index = 0 if name != "panel" else 1
        off = _size(plain, f"door.{name}")[index] - _size(made, f"door.{name}")[index]
        assert off == length("1/16")
    assert plain.fronts[0].width.value == made.fronts[0].width.value
    assert [f for f in prove(made).failures if f.check != "hands"] == []


def test_the_panel_moves_and_never_leaves_its_grooves() -> None:
    """Its play is a fit of its own, forecast like every other: over nothing, and held."""
    made = house()
    build_case(made, case_spec(width="16 1/2", front=PANEL, shelves=0))
    fits = {path: fit for path, fit in made.chain.fits.items() if ".panel_room." in path}
    assert set(fits) == {f"upper.door.panel_room.{way}_play_fit" for way in ("side", "end")}
    for fit in fits.values():
        assert fit.holds
        assert fit.low == 0
        assert fit.gap.value == length("1/8")  # 1/32 of clearance and 1/32 of relief each side
        assert fit.high < length("13/32")


def test_nothing_is_cut_before_the_joint_is_tried() -> None:
    """The door begins with a hold: the test joint, with the tongue's thickness to measure."""
    steps = [s for s in _door().assembly if s.verb == "hold"]
    assert len(steps) == 1
    assert steps[0].check is not None
    assert steps[0].check.value == length("7/32")
    assert "test joint" in steps[0].words
    rails = [s.words for s in _door().assembly if s.part.rpartition(".")[2].startswith("rail")]
    assert all("no glue near it" in words for words in rails)


def _tools(*more: ToolKind, less: tuple[ToolKind, ...] = ()) -> list[set[tuple[str, str]]]:
    """Tool and bit of the grooves, then of the tongues, in a shop with other tools."""
    plan = house()
    own = home_shop()
    tools = {kind: tool for kind, tool in own.tools.items() if kind not in less}
    tools |= {kind: Tool(kind, Fraction(1, 10), Fraction(1, 5)) for kind in more}
    plan.shop = replace(own, tools=tools)
    case = build_case(plan, case_spec(width="16 1/2", front=PANEL, shelves=0))
    cuts = [f for p in case.parts if p.front for f in p.features if isinstance(f, Cut)]
    return [
        {(c.setup.tool, c.setup.bit) for c in cuts if c.kind == k} for k in ("groove", "tongue")
    ]


def test_grooves_and_tongues_are_set_up_for_tools_that_the_shop_owns() -> None:
    """Slot cutter or dado stack where they are; else the blade itself; else a router."""
    assert _tools("router table", "slot cutter") == [
        {("router table", "slot cutter")}, {("router table", "straight bit")},
    ]  # fmt: skip
    assert _tools("dado stack") == [
        {("table saw", "dado stack packed to")}, {("table saw", "dado stack")},
    ]  # fmt: skip
    assert _tools() == [{("table saw", "saw blade")}] * 2
    assert _tools(less=("table saw",)) == [
        {("router", "a straight bit no wider than the cut")}, {("router", "straight bit")},
    ]  # fmt: skip


def test_every_way_to_groove_has_a_caution_of_its_own() -> None:
    """On edge at the saw, a rail's end at the saw: what can hurt differs."""
    case = _door()
    (groove,) = _cuts(case, "stile_left", "groove")
    assert groove.setup.cautions == ("saw_on_edge",)
    assert _cuts(case, "rail_top", "tongue")[0].setup.cautions == ("saw_rail_end",)


def test_a_cup_keeps_off_the_groove() -> None:
    """Cup at its nearest edge 3 mm, 35 across, 5 of wood, groove 13/32: 53.3 mm at least."""
    narrow, wide = ({"stile": text, "rail": "2 1/2"} for text in ("2 1/16", "2 1/8"))
    stopped = [f for f in _door("in", **narrow).findings if f.severity is Severity.STOP]
    assert [f.rule for f in stopped] == ["cup and groove"]
    assert "groove for the panel" in stopped[0].says
    assert [f for f in _door("in", **wide).findings if f.rule == "cup and groove"] == []


def test_a_pull_keeps_off_the_groove() -> None:
    """A pull bored 2 in from the edge of a stile of 2 1/4 would run into its groove."""
    rules = [f.rule for f in _door(stile="2 1/4", pull_edge="2").findings]
    assert "pull and groove" in rules


@UNITS
@pytest.mark.parametrize("hinge", ["left", "right"])
@pytest.mark.parametrize("board", ["5/8", "3/4", "1"])
def test_it_proves_in_either_hand_of_boards_of_any_thickness(
    unit: Unit, hinge: Hand, board: str
) -> None:
    """A single door and a pair, in boards from 5/8 to 1 in."""
    goods = goods_of(unit)
    goods["board"] = replace(goods["board"], thickness=given(length(board), "mm"))
    front = replace(PANEL, hinge=hinge)
    for width in ("14", "34") if unit == "in" else ("360", "860"):
        case = one_case(unit, goods=goods, width=width, front=front)
        assert prove(case, hardware=hardware(unit)).failures == ()
        assert replay(case).failures == ()


def test_a_panel_goes_into_its_grooves_and_is_not_loose_there() -> None:
    """In thickness, width and height the fit is declared; a thicker panel breaks the first."""
    made = house()
    build_case(made, case_spec(front=PANEL, shelves=0, width="18"))
    fits = {path.partition("door.")[2]: fit for path, fit in made.chain.fits.items()}
    for name in ("groove.board_play_fit", "panel_room.side_play_fit", "panel_room.end_play_fit"):
        assert fits[name].holds, name
        assert fits[name].gap.value > 0
    read = Fact(Origin("measured", "calliper"), built=length("1/4"))
    known = house(facts={"upper.door.panel.thickness": read})
    build_case(known, case_spec(front=PANEL, shelves=0, width="18"))
    tight = known.chain.fits["upper.door.groove.board_play_fit"]
    assert not tight.holds
    assert tight.gap.value < 0


@UNITS
@pytest.mark.parametrize("leaves", [1, 2])
def test_a_mid_rail_parts_the_panel_in_two(unit: Unit, leaves: Literal[1, 2]) -> None:
    """Either panel by the sums of a whole one: clear height, two tongues less their clearance.

    Source: a set of worked constructions of the trade (`D_TG`), applied to either half; common
    practice, no publication. Tongue, relief and clearance are the style's.
    """
    middle, rail, tongue, air = (
        ("24", "2 1/2", "3/8", "1/32") if unit == "in" else ("600", "65", "10", "1")
    )
    front = replace(PANEL, mid_rail=given(middle, unit), leaves=leaves)
    style = style_of(unit, cut_step="0", rail=rail, tongue=tongue, panel_clearance=air)
    case = one_case(unit, front=front, shelves=0, width="20" if unit == "in" else "500",
                    style=style)  # fmt: skip
    name = "door" if leaves == 1 else "door_left"
    tall = case.part(f"upper.{name}.stile_left").finished.length.value
    half, clear = length(rail, unit) / 2, 2 * (length(tongue, unit) - length(air, unit))
    below = length(middle, unit) - half - length(rail, unit)
    above = tall - length(middle, unit) - half - length(rail, unit)
    sizes = [case.part(f"upper.{name}{word}.panel").finished for word in ("", ".upper")]
    assert [size.length.value for size in sizes] == [below + clear, above + clear]
    assert sizes[0].width.value == sizes[1].width.value
    assert prove(case, hardware=hardware(unit)).holds
    assert replay(case).holds


def test_a_mid_rail_without_room_is_told_with_the_heights_that_have_some() -> None:
    """Too near an end, or between panels that are glued up of boards."""
    for middle in ("6", "36"):
        case = one_case(front=replace(PANEL, mid_rail=given(middle)), shelves=0, width="20")
        (found,) = (f for f in case.findings if f.rule == "mid rail")
        assert found.severity is Severity.STOP
        assert " to " in found.limit
        assert not any(part.role == "mid rail" for part in case.parts)
