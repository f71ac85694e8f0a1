"""Every rule passes its passing example and finds its failing one."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    INCH,
    PANEL,
    SLAB,
    Unit,
    given,
    length,
    stock,
)
from tests.unit.checks.answers import unanswered
from tests.unit.checks.examples import FAILS, PASSES, in_shop, read_as
from tests.unit.checks.rooms import (
    BOOKCASE,
    changed,
    found_in,
    framed,
    leaf,
    only_case,
    room_of,
    with_leaf,
)

from casewright.casework.specs import FrontSpec, OverlayKind
from casewright.checks import RULES, check
from casewright.checks.hinge_number import hinges_wanted
from casewright.dims import Measure, parts_of
from casewright.findings import Severity
from casewright.hardware import pocket_screw_length
from casewright.job.reasons import reasons
from casewright.room.build import build
from casewright.room.lifting import lifted_weight
from casewright.shop import Tool, ToolKind
from casewright.sources import SOURCES

NAMES = [rule.name for rule in RULES]


@pytest.mark.parametrize("name", NAMES)
def test_rule_is_content_with_its_passing_example(name: str) -> None:
    """What keeps the rule gives no finding."""
    assert found_in(name, PASSES[name]()) == []


@pytest.mark.parametrize("name", NAMES)
def test_rule_finds_its_failing_example(name: str) -> None:
    """What breaks the rule is found, with where, why, a source and a remedy.

    Each of its lengths and weights leads to a number of that size, whose formula comes out.
    """
    room = FAILS[name]()
    found = found_in(name, room)
    assert found
    for finding in found:
        assert list(unanswered(room, finding)) == []
        assert finding.path
        assert finding.says
        assert finding.remedies
        assert finding.source in SOURCES


def test_what_a_finding_works_out_is_walked_to_what_it_rests_on() -> None:
    """A length of its sentence leads to the case, to the style and to the figure of the trade."""
    room = FAILS["tilt up"]()
    (finding,) = found_in("tilt up", room)
    diagonal, free, *_ = (each for each in parts_of(finding.says) if isinstance(each, Measure))
    assert round(float(diagonal.value), 1) == round(math.hypot(94, 24) * 25.4, 1)
    walked = [{node.path for node in reasons(room, each.path)} for each in (diagonal, free)]
    assert walked[0] >= {"upper.wanted_height", "upper.depth"}
    assert walked[1] == {free.path, "style.ceiling", "found.tilt_up.air"}
    (air,) = reasons(room, "found.tilt_up.air")
    assert (air.wanted, air.origin.source if air.origin else "") == (INCH / 2, "common practice")


def test_a_weight_is_the_sum_of_what_is_lifted() -> None:
    """Asked why, it names each part with its size and the density of its sheet."""
    room = FAILS["case weight"]()
    whole, *rest = reasons(room, "found.case_weight.upper.weight")
    side = next(each for each in rest if each.path.endswith("upper.side_left.weight"))
    assert whole.wanted == lifted_weight(room, only_case(room))
    assert side.formula == (
        "upper.side_left.length 39 x upper.side_left.width 12 1/4 x "
        "upper.side_left.thickness 23/32 x stock.ply18.density 680 kg/m3"
    )


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
    found = found_in("fastener bite", room_of(screws={"back_brad": "13"}))
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
    [told] = found_in("shelf sag", room_of(**plain))
    assert not found_in("shelf sag", room_of(**plain, nosing="1 1/2"))
    high = told.remedies[0].removeprefix("a nosing ").partition('"')[0]
    assert told.remedies[0].endswith("nosing in [case.upper]")
    assert not found_in("shelf sag", room_of(**plain, nosing=high))
    less = told.remedies[1].partition("a case ")[2].partition('"')[0]
    narrower = str((length("36") - length(less)) / INCH)
    assert not found_in("shelf sag", room_of(**plain | {"width": narrower}))
    [shut] = found_in("shelf sag", room_of(width="44", front=SLAB))
    assert "by hand" in shut.remedies[0]


def test_hinge_beside_a_fixed_board_stops_beside_a_loose_one_does_not() -> None:
    """A loose shelf can be put on other pins."""
    front = leaf("16", "39", ("3 1/2", "20"))
    room = changed(room_of(shelves=1), fronts=(front,))
    shelf = next(part for part in only_case(room).parts if part.role == "shelf")
    at = shelf.placed.y.value / given("1").value
    beside = leaf("16", "39", ("3 1/2", "20"), up=str(at - 20))
    [found] = found_in("hinge beside shelf", changed(room, fronts=(beside,)))
    assert found.severity is Severity.CARE
    [stopping] = found_in("hinge beside shelf", FAILS["hinge beside shelf"]())
    assert stopping.severity is Severity.STOP


@pytest.mark.parametrize("front", [SLAB, APPLIED, GLASS], ids=["slab", "applied", "glass"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_plain_upper_with_doors_is_found_good(front: FrontSpec, unit: Unit) -> None:
    """The ordinary case gives the person nothing to read."""
    assert check(room_of(unit=unit, front=front)) == ()


def test_the_height_of_low_doors_over_a_divider_is_let_pass() -> None:
    """Wider than high by custom; the same leaf in the main opening is told of."""
    low = leaf("17 7/8", "14 7/8", ("3 1/2", "11"))
    assert found_in("leaf size", with_leaf(low))
    assert not found_in("leaf size", with_leaf(replace(low, opening="upper")))


@pytest.mark.parametrize("divider", ["36", "32"])
def test_light_low_doors_may_be_wider_than_their_hinges_are_apart(divider: str) -> None:
    """A pair of glass doors over a divider says nothing; a low door of 22 in pulls too hard.

    The leaves are 17 7/8 wide and 14 7/8 or 18 7/8 high; hinges 3 1/2 from the ends.
    """
    glass = room_of(
        joint="dado", width="36", height="51", divider=divider, front=SLAB, upper_front=GLASS
    )
    assert not found_in("hinge spread", glass)
    [found] = found_in("hinge spread", room_of(height="14", width="22", front=SLAB, shelves=0))
    assert found.path == "upper.door"


def test_identical_shelves_are_told_of_once() -> None:
    """Two shelves of one size make one sentence that names both."""
    [found] = found_in("shelf sag", room_of(width="44"))
    assert "shelf 1, shelf 2" in found.says


def test_findings_speak_the_job_unit() -> None:
    """A metric job hears of millimetres only."""
    told = check(room_of(unit="mm", width="1100"))
    found = [finding for finding in told if finding.rule != "fit forecast"]  # '1 in 10'
    assert found
    assert all(" in " not in f" {finding.measured} " for finding in found)


def test_findings_read_sizes_on_a_tape_and_thicknesses_with_a_calliper() -> None:
    """Nobody finds 23.719 on a tape (23 23/32 is 23.71875); a sheet of .603 is read so."""
    [wide] = found_in("leaf size", with_leaf(leaf("23.719", "39", ("3 1/2", "35 1/2"))))
    assert wide.measured == '~23 23/32"'
    assert "23.719" not in wide.says
    [thin] = found_in("sheet thickness", read_as("3/4", Fraction("0.603")))
    assert thin.measured == '0.603"'


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
    assert not found_in("tool missing", room_of(**makes))
    found = found_in("tool missing", in_shop(room_of(**makes), lost))
    assert {finding.limit for finding in found} == tools
    assert all(finding.severity is Severity.STOP for finding in found)
    assert any(remedy in each for finding in found for each in finding.remedies)


def test_no_pocket_screws_are_offered_for_a_bookcase() -> None:
    """Nothing hides their pockets there: its shelves sit in dadoes whatever is asked for."""
    (found,) = found_in("tool missing", in_shop(room_of(back="applied", **BOOKCASE), "router"))
    assert not any("pocket screws" in remedy for remedy in found.remedies)


def test_a_remedy_needs_no_tool_that_is_lacking_too() -> None:
    """Without a router dadoes are no way out of a missing jig."""
    found = found_in("tool missing", in_shop(room_of(), "pocket-hole jig", "router"))
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
    assert not found_in("tool missing", build(spec))


def test_a_cut_narrower_than_every_bit_is_told() -> None:
    """A groove for a thin back is routed where there is no table saw: with which bit?"""
    room = in_shop(room_of(back="grooved", goods=stock(thin="1/8")), "table saw")
    [found] = found_in("tool missing", room)
    assert "no straight bit" in found.says
    assert found.limit


def test_a_lone_inset_door_grows_towards_its_case() -> None:
    """The gap at its free edge counts; over the edge of the box there is nothing to meet."""
    overlays: tuple[OverlayKind, ...] = ("inset", "full")
    inset, over = (
        framed("northern red oak", "6", replace(PANEL, overlay=overlay, leaves=1), width="18")
        for overlay in overlays
    )
    assert found_in("wood movement", inset)
    assert found_in("wood movement", over) == []
