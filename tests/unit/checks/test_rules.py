"""Every rule passes its passing example and finds its failing one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    INCH,
    SLAB,
    Unit,
    case_spec,
    given,
    job,
    length,
    plain_style,
    stock,
)
from tests.unit.checks.rooms import (
    changed,
    leaf,
    only_case,
    room_of,
    soft_stock,
    with_leaf,
    without,
)

from casewright.casework.specs import FrontSpec
from casewright.checks import RULES, check
from casewright.checks.case_weight import lifted_weight
from casewright.checks.hinge_number import hinges_wanted
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Finding, Severity
from casewright.hardware import pocket_screw_length
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import RunSpec
from casewright.shop import Tool, ToolKind
from casewright.sources import SOURCES
from casewright.stock import EdgeBand, Stock

Make = Callable[[], Room]
NAMES = [rule.name for rule in RULES]


def _cut_back(width: str) -> Room:
    fact = Fact(Origin("measured", "tape"), cut=length(width))
    return room_of(facts={"upper.back.width": fact})


def _read(label: str, inches: Fraction) -> Room:
    fact = Fact(Origin("measured", "calliper"), built=inches * INCH)
    return room_of(goods=stock(ply=label), facts={"stock.ply18.thickness": fact})


def _left_open(room: Room) -> Room:
    """Bored to be plugged, but nobody plugs."""
    return changed(room, spec=replace(only_case(room).spec, pockets="hidden"))


def _in_shop(room: Room, *lost: ToolKind) -> Room:
    """The same job in a shop that lacks some tools."""
    shop = room.spec.shop
    tools = {kind: tool for kind, tool in shop.tools.items() if kind not in lost}
    return build(replace(room.spec, shop=replace(shop, tools=tools)))


def _beside_wall(wall: str, **changes: Any) -> Room:
    """An upper of 33 between a wall and the open."""
    run = RunSpec("row", "Row", ("upper",), (given(wall),), "wall", "open")
    return build(job(case_spec(front=SLAB, **changes), runs=(run,)))


def _over_counter(wall_bottom: str) -> Room:
    """A base of 34 1/2 and an upper."""
    cases = (case_spec(key="base", **_BASE), case_spec())
    return build(job(*cases, style=plain_style(wall_bottom=wall_bottom)))


def _with_band(width: str) -> dict[str, Stock]:
    goods = stock()
    band = goods["band"]
    assert isinstance(band, EdgeBand)
    goods["band"] = replace(band, width=given(width, "mm"))
    return goods


_BASE: dict[str, Any] = {
    "kind": "base", "toe": "notch", "height": "34 1/2", "depth": "23 1/4", "shelves": 1,
}  # fmt: skip
_BOOKCASE: dict[str, Any] = {"kind": "bookcase", "height": "84", "depth": "12", "shelves": 3}

PASSES: dict[str, Make] = {
    "fit band": room_of,
    "nailer missing": room_of,
    "wall screw bite": room_of,
    "fastener bite": lambda: room_of(screws={"back_brad": "3/4"}),
    "pocket screw length": room_of,
    "open pockets": lambda: room_of(pockets="plugged"),
    "cut depth": room_of,
    "hinge number": lambda: with_leaf(leaf("16 3/8", "38 15/16", ("3 1/2", "35"))),
    "hinge spread": lambda: with_leaf(leaf("16 3/8", "38 15/16", ("3 1/2", "35 7/16"))),
    "hinge beside shelf": lambda: with_leaf(leaf("16", "39", ("3 1/2", "35"))),
    "leaf size": lambda: with_leaf(leaf("16 3/8", "38 15/16")),
    "shelf sag": lambda: room_of(width="24"),
    "long shelf": lambda: room_of(width="30", goods=soft_stock()),
    "narrow rip": room_of,
    "band width": lambda: room_of(edge="band"),
    "sheet thickness": lambda: _read("3/4", Fraction("0.703")),
    "case weight": room_of,
    "tool missing": room_of,
    "fit forecast": lambda: room_of(front=SLAB),
    "tip over": lambda: room_of(**_BASE),
    "door beside wall": lambda: _beside_wall("34 1/2"),
    "over counter": lambda: _over_counter("54"),
    "studs behind": room_of,
    "small part": lambda: room_of(front=GLASS),
    "tilt up": lambda: room_of(**_BOOKCASE),
    "toe space": lambda: room_of(**_BASE),
}

FAILS: dict[str, Make] = {
    "fit band": lambda: _cut_back("29"),
    "nailer missing": lambda: without(room_of(), "nailer"),
    "wall screw bite": lambda: room_of(screws={"wall_screw": "2"}),
    "fastener bite": lambda: room_of(screws={"back_brad": "1/4"}),
    "pocket screw length": lambda: room_of(screws={"pocket_screw": "1 1/2"}),
    "open pockets": lambda: _left_open(room_of(pockets="plugged")),
    "cut depth": lambda: room_of(overrides={"rabbet_depth": given("1/2")}),
    "hinge number": lambda: with_leaf(leaf("16", "41", ("3 1/2", "37"))),
    "hinge spread": lambda: with_leaf(leaf("20", "24", ("4 1/2", "19 1/2"))),
    "hinge beside shelf": lambda: with_leaf(leaf("16", "39", ("1 3/4", "35"))),
    "leaf size": lambda: with_leaf(leaf("24", "39")),
    "shelf sag": lambda: room_of(width="44"),
    "long shelf": lambda: room_of(width="40", goods=soft_stock()),
    "narrow rip": lambda: room_of(
        kind="bookcase", shelves=3, height="60", depth="12", nosing="1 1/2", key="upper"
    ),
    "case weight": lambda: room_of(width="60"),
    "band width": lambda: room_of(edge="band", goods=_with_band("16")),
    "sheet thickness": lambda: _read("3/4", Fraction("0.603")),
    "tip over": lambda: room_of(**_BOOKCASE),
    "door beside wall": lambda: _beside_wall("33 3/4"),
    "over counter": lambda: _over_counter("50"),
    "studs behind": lambda: room_of(width="15"),
    "small part": lambda: room_of(width="15", front=replace(GLASS, leaves=2)),
    "tilt up": lambda: room_of(**_BASE | {"height": "94", "depth": "24"}),
    "toe space": lambda: room_of(**_BASE, overrides={"toe_height": given("2")}),
    "fit forecast": lambda: room_of(front=SLAB, overrides={"gap_tolerance": given("1/64")}),
    "tool missing": lambda: _in_shop(room_of(), "pocket-hole jig"),
}


def _found(name: str, room: Room) -> list[Finding]:
    return [finding for finding in check(room) if finding.rule == name]


@pytest.mark.parametrize("name", NAMES)
def test_rule_is_content_with_its_passing_example(name: str) -> None:
    """What keeps the rule gives no finding."""
    assert _found(name, PASSES[name]()) == []


@pytest.mark.parametrize("name", NAMES)
def test_rule_finds_its_failing_example(name: str) -> None:
    """What breaks the rule is found, with where, why, a source and a remedy."""
    found = _found(name, FAILS[name]())
    assert found
    for finding in found:
        assert finding.path
        assert finding.says
        assert finding.remedies
        assert finding.source in SOURCES


@pytest.mark.parametrize("rule", RULES, ids=NAMES)
def test_rule_explains_itself(rule: object) -> None:
    """Explanation, both examples and sources stand in the rule's own text."""
    for part in ("title", "explanation", "passes", "fails", "sources"):
        text = getattr(rule, part)
        assert text
        assert "---" not in text


def test_rule_names_are_unique() -> None:
    """A finding says which rule it comes from."""
    assert len(set(NAMES)) == len(NAMES)


@pytest.mark.parametrize(
    ("height", "pounds", "count"),
    [("40", 15, 2), ("40 1/32", 5, 3), ("60", 5, 3), ("61", 5, 4), ("80 1/8", 5, 5),
     ("30", 16, 3), ("30", 31, 4), ("30", 46, 5)],
)  # fmt: skip
def test_hinges_wanted_by_height_and_by_weight(height: str, pounds: int, count: int) -> None:
    """Up to 40 in and 15 lb two hinges; a door over 40 in wants a third (common practice)."""
    assert hinges_wanted(length(height), pounds * Fraction(45359237, 10**8)) == count


def test_weight_of_an_upper() -> None:
    """850 x 1000 x 330 mm of 680 kg/m3 weighs 25.9 kg with its two shelves (common practice)."""
    room = room_of(unit="mm")
    whole = sum((part.weight(Fraction(680)) for part in only_case(room).parts), Fraction(0))
    assert round(float(whole), 1) == 25.9
    shelves = [part for part in only_case(room).parts if part.role == "shelf"]
    loose = sum((part.weight(Fraction(680)) for part in shelves), Fraction(0))
    assert lifted_weight(room, only_case(room)) == whole - loose


@pytest.mark.parametrize(
    ("thickness", "screw"),
    [("1/2", "1"), ("5/8", "1"), ("23/32", "1 1/4"), ("3/4", "1 1/4"), ("1 1/2", "2 1/2")],
)
def test_pocket_screws_by_thickness(thickness: str, screw: str) -> None:
    """1 1/4 for 3/4 stock, 1 for 1/2, 2 1/2 for 1 1/2 (common practice, from memory)."""
    assert pocket_screw_length(length(thickness)) == length(screw)


def test_point_out_of_a_face_that_shows_stops_the_work() -> None:
    """Nails through the back that come out of the front edges of top and bottom."""
    found = _found("fastener bite", room_of(screws={"back_brad": "13"}))
    assert {finding.path for finding in found} >= {"upper.bottom"}
    assert all(finding.severity is Severity.STOP for finding in found)


def test_a_nosing_takes_the_sag_out_of_a_shelf() -> None:
    """A strip 1 1/2 in high under the front makes a 36 in shelf stiff enough."""
    plain: dict[str, Any] = {
        "kind": "bookcase",
        "shelves": 3,
        "height": "60",
        "depth": "12",
        "width": "36",
    }
    assert _found("shelf sag", room_of(**plain))
    assert not _found("shelf sag", room_of(**plain, nosing="1 1/2"))


def test_hinge_beside_a_fixed_board_stops_beside_a_loose_one_does_not() -> None:
    """A loose shelf can be put on other pins."""
    front = leaf("16", "39", ("3 1/2", "20"))
    room = changed(room_of(shelves=1), fronts=(front,))
    shelf = next(part for part in only_case(room).parts if part.role == "shelf")
    at = shelf.placed.y.value / given("1").value
    beside = leaf("16", "39", ("3 1/2", "20"), up=str(at - 20))
    [found] = _found("hinge beside shelf", changed(room, fronts=(beside,)))
    assert found.severity is Severity.CARE
    [stopping] = _found("hinge beside shelf", FAILS["hinge beside shelf"]())
    assert stopping.severity is Severity.STOP


@pytest.mark.parametrize("front", [SLAB, APPLIED, GLASS], ids=["slab", "applied", "glass"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_plain_upper_with_doors_is_found_good(front: FrontSpec, unit: Unit) -> None:
    """The ordinary case gives the person nothing to read."""
    assert check(room_of(unit=unit, front=front)) == ()


def test_the_height_of_low_doors_over_a_divider_is_let_pass() -> None:
    """Wider than high by custom; the same leaf in the main opening is told of."""
    low = leaf("17 7/8", "14 7/8", ("3 1/2", "11"))
    assert _found("leaf size", with_leaf(low))
    assert not _found("leaf size", with_leaf(replace(low, opening="upper")))


@pytest.mark.parametrize("divider", ["36", "32"])
def test_light_low_doors_may_be_wider_than_their_hinges_are_apart(divider: str) -> None:
    """A pair of glass doors over a divider says nothing; a low door of 22 in pulls too hard.

    The leaves are 17 7/8 wide and 14 7/8 or 18 7/8 high; hinges 3 1/2 from the ends.
    """
    glass = room_of(
        joint="dado", width="36", height="51", divider=divider, front=SLAB, upper_front=GLASS
    )
    assert not _found("hinge spread", glass)
    [found] = _found("hinge spread", room_of(height="14", width="22", front=SLAB, shelves=0))
    assert found.path == "upper.door"


def test_identical_shelves_are_told_of_once() -> None:
    """Two shelves of one size make one sentence that names both."""
    [found] = _found("shelf sag", room_of(width="44"))
    assert "shelf 1, shelf 2" in found.says


def test_findings_speak_the_job_unit() -> None:
    """A metric job hears of millimetres only."""
    found = check(room_of(unit="mm", width="1100"))
    assert found
    assert all(" in " not in f" {finding.measured} " for finding in found)


def test_same_room_same_findings() -> None:
    """Order and words do not depend on anything but the room."""
    assert check(room_of(width="60")) == check(room_of(width="60"))


@pytest.mark.parametrize(
    ("lost", "makes", "tools", "remedy"),
    [
        ("pocket-hole jig", {}, {"pocket-hole jig"}, 'joint = "dado"'),
        ("pocket-hole jig", {}, {"pocket-hole jig"}, 'back = "inset"'),
        ("router", {"joint": "dado"}, {"router"}, 'joint = "pocket screws"'),
        ("router", {"front": GLASS}, {"router"}, "slab"),
        ("drill", {}, {"drill"}, "tools in [shop]"),
        ("pin jig", {"shelves": 2}, {"pin jig"}, "shelves = 0"),
        ("circular saw", {"kind": "base", "height": "34 1/2", "depth": "23 1/4", "toe": "notch"},
         {"circular saw"}, 'toe = "plinth"'),
    ],
)  # fmt: skip
def test_what_the_shop_cannot_make_stops_the_work(
    lost: ToolKind, makes: dict[str, Any], tools: set[str], remedy: str
) -> None:
    """Every set-up names a tool; one that nobody owns is told with a way to do without."""
    assert not _found("tool missing", room_of(**makes))
    found = _found("tool missing", _in_shop(room_of(**makes), lost))
    assert {finding.limit for finding in found} == tools
    assert all(finding.severity is Severity.STOP for finding in found)
    assert any(remedy in each for finding in found for each in finding.remedies)


def test_a_remedy_needs_no_tool_that_is_lacking_too() -> None:
    """Without a router dadoes are no way out of a missing jig."""
    found = _found("tool missing", _in_shop(room_of(), "pocket-hole jig", "router"))
    told = [each for finding in found if finding.limit == "pocket-hole jig"
            for each in finding.remedies]  # fmt: skip
    assert told
    assert not any("dado" in each for each in told)


def test_a_router_in_its_table_is_a_router() -> None:
    """A shop with a router table alone takes the router out of it."""
    room = room_of(joint="dado")
    shop = room.spec.shop
    tools: dict[ToolKind, Tool] = dict(shop.tools)
    del tools["router"]
    tools["router table"] = shop.tools["router"]
    spec = replace(room.spec, shop=replace(shop, tools=tools))
    assert not _found("tool missing", build(spec))


def test_a_cut_narrower_than_every_bit_is_told() -> None:
    """A groove for a thin back is routed where there is no table saw: with which bit?"""
    room = _in_shop(room_of(back="grooved", goods=stock(thin="1/8")), "table saw")
    [found] = _found("tool missing", room)
    assert "no straight bit" in found.says
    assert found.limit


def _remedies(room: Room) -> list[str]:
    return [remedy for finding in _found("leaf size", room) for remedy in finding.remedies]


def test_a_pair_that_is_too_wide_is_not_advised_to_become_a_pair() -> None:
    """A pair over 4 ft wide wants a narrower case; one leaf as wide wants a second leaf."""
    pair = _remedies(room_of(width="50", front=replace(SLAB, leaves=2)))
    assert pair
    assert "two leaves" not in pair
    assert "two leaves" in _remedies(room_of(width="30", front=replace(SLAB, leaves=1)))


def test_a_single_leaf_that_is_too_narrow_is_not_advised_to_become_one() -> None:
    """One leaf instead of two helps a narrow pair only."""
    single = _remedies(room_of(width="9", front=replace(SLAB, leaves=1)))
    assert "a wider case" in single
    assert "one leaf instead of two" not in single
    assert "one leaf instead of two" in _remedies(
        room_of(width="17", front=replace(SLAB, leaves=2))
    )


def test_a_standing_case_that_nothing_holds_stops_the_work() -> None:
    """Furniture over 27 in is held against tipping (ASTM F2057, from memory)."""
    found = _found("tip over", without(room_of(**_BASE), "nailer"))
    assert [finding.severity for finding in found] == [Severity.STOP]
    assert not _found("tip over", without(room_of(**_BASE | {"height": "26"}), "nailer"))


def test_a_tall_narrow_case_tips_at_a_small_lean() -> None:
    """atan(12 / 84) = 8.13 degrees; fastened, it is a note to fasten it first."""
    [found] = _found("tip over", room_of(**_BOOKCASE))
    assert "8 degrees" in found.says
    assert found.severity is Severity.NOTE
    assert (found.measured, found.limit) == ("7.0 to 1", "4 to 1")


def test_a_box_on_a_plinth_is_tilted_up_without_it() -> None:
    """sqrt(95.5^2 - 24^2) = 92.44 in at most: 94 on a plinth of 4 leaves a box of 90."""
    tall = _BASE | {"height": "94", "depth": "24"}
    [found] = _found("tilt up", room_of(**tall))
    assert "92 7/16" in found.remedies[0]
    assert not _found("tilt up", room_of(**tall | {"toe": "plinth"}))


@pytest.mark.parametrize(("width", "told"), [("15 31/32", True), ("16", False)])
def test_studs_behind_by_the_width(width: str, told: bool) -> None:
    """Between studs 16 apart a case of 16 or more always has one, and may have two."""
    assert bool(_found("studs behind", room_of(width=width))) == told


def test_a_shallow_toe_space_is_told_in_either_unit() -> None:
    """2 in or 50 mm at least (common practice)."""
    shallow = room_of(**_BASE, overrides={"toe_setback": given("1 1/2")})
    assert [f.limit for f in _found("toe space", shallow)] == ['2"']
    metric = _BASE | {"height": "870", "depth": "580"}
    deep = {"toe_setback": given("50", "mm")}
    assert not _found("toe space", room_of(unit="mm", **metric, overrides=deep))


@pytest.mark.parametrize(("wall", "told"), [("34 5/16", False), ("34 9/32", True)])
def test_a_filler_takes_the_pull_of_the_door_beside_it(wall: str, told: bool) -> None:
    """A pull of 30 mm and 1/8 in want 1 5/16, rounded up to a mark (30 + 3.175 = 33.175 mm)."""
    assert bool(_found("door beside wall", _beside_wall(wall))) == told


def test_a_door_that_swings_from_the_wall_needs_no_filler_for_its_pull() -> None:
    """Hinged on the side away from the wall, its pull never turns to it."""
    away = replace(SLAB, leaves=1, hinge="right")
    room = _beside_wall("22 3/4", width="22")
    turned = build(replace(room.spec, cases=(replace(room.spec.cases[0], front=away),)))
    assert not _found("door beside wall", turned)


def test_the_usual_heights_leave_the_usual_space_over_a_counter() -> None:
    """54 - 34 1/2 - 1 1/2 = 18 in; 1370 - 870 - 40 = 460 mm (common practice)."""
    units: tuple[Unit, ...] = ("in", "mm")
    for unit in units:
        keys = {key: value for key, value in _BASE.items() if key not in ("height", "depth")}
        style = plain_style(unit)
        sizes = {"height": style["base_height"], "depth": style["base_depth"]}
        base = case_spec(unit, key="base", **keys, **sizes)
        assert not _found("over counter", build(job(base, case_spec(unit), unit=unit)))
    [found] = _found("over counter", _over_counter("50"))
    assert (found.measured, found.limit) == ('14"', '18"')
