"""Tall cases against worked constructions of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the
parts in space (`PANTRY`, `TALL_OVEN`, `FRIDGE`); common practice, no
publication. Figures transcribed.
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
    given,
    hardware,
    house,
    length,
    plain_style,
    rows,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Bores
from casewright.casework.specs import ApplianceOpening, DrawerSpec, RowSpec
from casewright.casework.verification import verify
from casewright.findings import Severity
from casewright.stock import Sheet, Stock

PANTRY: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "90 x 23 1/4", "side_right": "90 x 23 1/4", "bottom": "28 9/16 x 23 1/32",
        "divider": "28 9/16 x 23 1/32", "top": "28 9/16 x 23 1/32", "back": "86 x 29 5/16",
        "door_left.slab": "49 15/16 x 14 7/8", "door_right.slab": "49 15/16 x 14 7/8",
        "upper_door_left.slab": "35 13/16 x 14 7/8", "upper_door_right.slab": "35 13/16 x 14 7/8",
    },
    "mm": {
        "side_left": "2280 x 580", "side_right": "2280 x 580", "bottom": "724.4 x 573.8",
        "divider": "724.4 x 573.8", "top": "724.4 x 573.8", "back": "2180 x 742.4",
        "door_left.slab": "1268.5 x 377", "door_right.slab": "1268.5 x 377",
        "upper_door_left.slab": "905.5 x 377", "upper_door_right.slab": "905.5 x 377",
    },
}  # fmt: skip


OVEN: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "90 x 23 1/4", "bottom": "28 9/16 x 23 1/4",
        "row_board.2": "28 9/16 x 23 1/4",
        "row_board.1": "28 9/16 x 23 1/4", "top": "28 9/16 x 23 1/4",
    },
    "mm": {
        "side_left": "2280 x 580", "bottom": "724.4 x 580", "row_board.2": "724.4 x 580",
        "row_board.1": "724.4 x 580", "top": "724.4 x 580",
    },
}  # fmt: skip
# Deck's top, upper end of the opening, clear height above the board over it.
OVEN_ZONES: dict[Unit, tuple[str, str, str]] = {
    "in": ("17 7/16", "45 15/16", "42 5/8"), "mm": ("435.6", "1155.6", "1088.8"),
}  # fmt: skip


def _oven(unit: Unit, **sizes: str) -> ApplianceOpening:
    inch = unit == "in"
    usual = {"width": "28 1/2" if inch else "720", "height": "28 1/2" if inch else "720",
             "depth": "22 1/2" if inch else "560"}  # fmt: skip
    known = {name: given(size, unit) for name, size in (usual | sizes).items()}
    return ApplianceOpening("oven", "wall oven", **known)


def _tower(unit: Unit, low: str, oven: ApplianceOpening, **changes: Any) -> dict[str, Any]:
    """Doors over an oven over a drawer with a front of that height."""
    doors, drawer = rows(unit, "doors", f"drawer {low}")
    return _tall(unit, rows=(doors, RowSpec("appliance", None, None, None, oven), drawer),
                 **changes)  # fmt: skip


def _tall(unit: Unit, **changes: Any) -> dict[str, Any]:
    inch = unit == "in"
    return {
        "key": "tall", "kind": "tall", "toe": "notch", "shelves": 0, "front": SLAB,
        "width": "30" if inch else "760", "height": "90" if inch else "2280",
        "depth": "23 1/4" if inch else "580",
        "drawer": DrawerSpec("rabbet", "side-mount", "drawer_ply", "ply6"), **changes,
    }  # fmt: skip


def _built(unit: Unit, goods: dict[str, Stock] | None = None, **changes: Any) -> Case:
    """To the sizes of the worked example: nothing rounded, slides without play."""
    sheets = hardware(unit)
    sheets = replace(sheets, slide=replace(sheets.slide, play=given("0", unit)))
    numbers = house(
        unit,
        style=plain_style(unit, cut_step="0", appliance_air="0"),
        sheets=sheets,
        goods=goods or stock(unit),
    )
    case = build_case(numbers, case_spec(unit, **changes))
    assert verify(case, hardware=sheets, grid=Fraction(0)).failures == ()
    return case


def _check(case: Case, unit: Unit, expected: dict[str, str]) -> None:
    scale = INCH if unit == "in" else Fraction(1)
    for name, text in expected.items():
        size = case.part(f"{case.key}.{name}").finished
        long, wide = (length(each, "mm") for each in text.split(" x "))
        assert (size.length.value / scale, size.width.value / scale) == (long, wide), name


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_pantry_has_two_pairs_of_doors_on_a_fixed_shelf(unit: Unit) -> None:
    """The middle of the fixed shelf 54 in or 1370 mm up; roll-outs below, padded."""
    middle = "54" if unit == "in" else "1370"
    asked = _tall(
        unit, divider=given(middle, unit), upper_front=SLAB, upper_shelves=2, roll_outs=3
    )
    case = _built(unit, **asked)
    _check(case, unit, PANTRY[unit])
    outside = length("26 1/16" if unit == "in" else "661", unit)
    assert [drawer.width.value for drawer in case.drawers] == [outside] * 3
    assert [p.title for p in case.parts if p.role == "shelf"] == ["upper shelf 1", "upper shelf 2"]


def test_shelves_above_the_divider_lie_above_it() -> None:
    """And those of the lower opening below: each opening has pins of its own."""
    asked = _tall("in", divider=given("54"), upper_front=SLAB, shelves=2, upper_shelves=1)
    case = _built("in", **asked)
    middle = case.part("tall.divider").placed.y.value
    low = [case.part(f"tall.shelf.{n}").placed.y.value for n in (1, 2)]
    assert max(low) < middle < case.part("tall.upper_shelf.1").placed.y.value


def test_a_tall_case_says_that_it_tips_before_anything_that_swings_is_hung() -> None:
    """Doors and roll-outs pull its weight forward while no wall holds it."""
    asked = _tall("in", divider=given("54"), upper_front=SLAB, roll_outs=2)
    hung = [step for step in _built("in", **asked).assembly if step.verb == "hang"]
    assert hung
    assert all("tall_tips" in step.cautions for step in hung)


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_oven_case_is_a_stack_of_zones(unit: Unit) -> None:
    """A drawer zone 12 in or 300 mm clear, the opening of the sheet, doors over it.

    The drawer's front takes the zone, the bottom and half of the deck, less half a gap.
    """
    low = "13 1/64" if unit == "in" else "325.2"
    case = _built(unit, **_tower(unit, low, _oven(unit), back="open"))
    _check(case, unit, OVEN[unit])
    low_deck, high = case.part("tall.row_board.2"), case.part("tall.row_board.1")
    top = case.part("tall.top")
    deck, opening, left = (length(text, unit) for text in OVEN_ZONES[unit])
    assert low_deck.placed.y.value + low_deck.finished.thickness.value == deck
    assert high.placed.y.value == opening
    over = high.placed.y.value + high.finished.thickness.value
    assert top.placed.y.value - top.finished.thickness.value - over == left


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_deck_lies_on_cleats_screwed_to_both_sides(unit: Unit) -> None:
    """And the drawer under it ends below them."""
    case = _built(unit, **_tower(unit, "13" if unit == "in" else "330", _oven(unit)))
    deck = case.part("tall.row_board.2")
    cleats = [part for part in case.parts if part.role == "cleat"]
    assert [part.hand for part in cleats] == ["left", "right"]
    assert {p.placed.y.value + p.finished.width.value for p in cleats} == {deck.placed.y.value}
    (drawer,) = case.drawers
    assert drawer.y.value + drawer.height.value < min(p.placed.y.value for p in cleats)
    held = [f.kind for joint in case.joints if ".joint_cleat_left" in joint.path
            for f in joint.fastenings]  # fmt: skip
    assert held == ["case screw", "glue", "glue"]


def test_an_oven_that_does_not_go_in_stops_with_what_is_missing() -> None:
    """1/16 too wide for the case; or deeper than it is."""
    for sizes, lacks, word in (({"width": "28 5/8"}, "1/16", "wider"),
                               ({"depth": "24"}, "31/32", "deeper")):  # fmt: skip
        asked = _tower("in", "13", _oven("in", **sizes))
        case = build_case(house("in"), case_spec("in", **asked))
        (found,) = [f for f in case.findings if f.severity is Severity.STOP]
        assert found.rule == "appliance opening"
        assert lacks in found.says
        assert word in found.remedies[0]


def test_the_opening_of_an_oven_is_a_fit() -> None:
    """Its clear height, as built, against what the sheet asks for."""
    numbers = house("in")
    build_case(numbers, case_spec("in", **_tower("in", "13", _oven("in"))))
    fits = set(numbers.chain.fits)
    assert {"tall.appliance.width_fit", "tall.appliance.height_fit"} <= fits


FRIDGE: dict[Unit, dict[str, str]] = {
    "in": {
        "end_left.skin": "91 1/2 x 25", "end_right.skin": "91 1/2 x 25",
        "side_left": "20 1/2 x 25",
        "top": "34 13/16 x 24 25/32", "bottom": "34 13/16 x 24 25/32",
    },
    "mm": {
        "end_left.skin": "2330 x 635", "end_right.skin": "2330 x 635", "side_left": "525 x 635",
        "top": "884.4 x 628.8", "bottom": "884.4 x 628.8",
    },
}  # fmt: skip


def surround(unit: Unit, **changes: Any) -> dict[str, Any]:
    """36 1/4 in or 920 mm between panels of the box's sheet, 3/4 in or 19 mm in the example."""
    inch = unit == "in"
    sizes = ("35 3/4", "70", "24") if inch else ("908", "1780", "600")
    cold = ApplianceOpening("cold", "refrigerator", *(given(size, unit) for size in sizes))
    return {
        "key": "cold", "kind": "surround", "appliance": cold, "front": SLAB, "shelves": 0,
        "finished": ("left", "right"), "end": "skin", "end_stock": "mdf",
        "width": "36 1/4" if inch else "920", "height": "91 1/2" if inch else "2330",
        "depth": "25" if inch else "635", **changes,
    }  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_surround_is_a_deep_box_between_panels_to_the_floor(unit: Unit) -> None:
    """Of the example's panels of 3/4 in or 19 mm the overall width is 37 3/4 in or 958 mm."""
    mdf = stock(unit)["mdf"]
    assert isinstance(mdf, Sheet)
    panel = replace(mdf, thickness=given("3/4" if unit == "in" else "19", unit))
    case = _built(unit, goods=stock(unit) | {"mdf": panel}, **surround(unit))
    _check(case, unit, FRIDGE[unit])
    assert case.overall_width.value == length("37 3/4" if unit == "in" else "958", unit)
    assert case.part("cold.end_left.skin").placed.y.value == 0
    assert case.part("cold.side_left").placed.y.value == length("71" if unit == "in" else "1805",
                                                                unit)  # fmt: skip


def test_the_feet_of_the_panels_are_held_at_the_floor() -> None:
    """By a board between them, as long as the opening is wide, pocket screws from behind."""
    case = _built("in", **surround("in"))
    cleat = case.part("cold.floor_cleat")
    assert cleat.finished.length.value == case.width.value
    assert cleat.placed.y.value == cleat.placed.z.value == 0
    (step,) = [step for step in case.assembly if step.part == cleat.path]
    assert "tall_tips" in step.cautions
    assert len(step.joints) == 2


def test_a_refrigerator_wider_than_its_opening_stops_with_what_is_missing() -> None:
    """With its air at both sides: 1/4 in is missing."""
    case = build_case(house("in"), case_spec("in", **surround("in", width="36")))
    (found,) = [f for f in case.findings if f.severity is Severity.STOP]
    assert '1/4" is missing' in found.says
    assert '1/4" greater' in found.remedies[0]


@pytest.mark.parametrize("lap", ["1", "1 3/8", "2 1/2"])
def test_a_rail_on_edge_behind_a_false_front_carries_the_crown(lap: str) -> None:
    """The rail stands where a stretcher under the crown would: one board does both.

    The front that is screwed to it begins lower, and so do its screws.
    """
    case = build_case(
        house("in"),
        case_spec("in", kind="tall", toe="notch", width="18", height="84", depth="23 1/4",
                  shelves=0, crown=lap, front=SLAB, rows=rows("in", "false front 6", "doors")),
    )  # fmt: skip
    names = {part.path for part in case.parts}
    assert "upper.front_rail" in names
    assert "upper.crown_stretcher" not in names
    assert verify(case, hardware=hardware("in")).failures == ()


@pytest.mark.parametrize("divider", [None, "54"])
@pytest.mark.parametrize(("unit", "reach"), [("in", "42"), ("mm", "1050")])
def test_the_pull_of_a_door_that_begins_at_the_floor_is_in_reach(
    unit: Unit, reach: str, divider: str | None
) -> None:
    """Its upper screw 42 in, 1050 mm above the floor, however high it goes (common practice).

    Under 48 in, the highest that is reached from a chair (accessible-design standard, 308).
    """
    inch = unit == "in"
    size = {"width": "18", "height": "84", "depth": "23 1/4"} if inch else (
        {"width": "450", "height": "1900", "depth": "580"})  # fmt: skip
    stacked: dict[str, Any] = {"upper_front": SLAB, "upper_shelves": 0} if divider else {}
    case = build_case(
        house(unit),
        case_spec(unit, kind="tall", toe="notch", shelves=0, front=SLAB, **size, **stacked,
                  divider=None if divider is None else divider if inch else "1370"),
    )  # fmt: skip
    door = case.doors[0]
    [pull] = [f for path in door.parts for f in case.part(path).features
              if isinstance(f, Bores) and f.kind == "pull"]  # fmt: skip
    assert pull.datum_l == "l0"
    highest = door.y.value + max(along.value for along, _ in pull.places)
    assert highest == length(reach, unit) < length("48")
