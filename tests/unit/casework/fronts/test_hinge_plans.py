"""Hinges: how many, at which heights, and that pins, shelves and doors follow them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    INCH,
    SLAB,
    case_spec,
    house,
    length,
    one_case,
    plain_style,
    stock,
)

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Bores
from casewright.casework.specs import FrontSpec
from casewright.dims import Chain, Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.stock import Sheet

SINGLE = replace(SLAB, leaves=1)


def _hinges(case: Case, door: int = 0) -> list[Fraction]:
    return [hinge.on_door.value for hinge in case.doors[door].hinges]


def _tall(height: str, **changes: Any) -> Case:
    """A case whose doors are that high."""
    style = plain_style("in", top_reveal="0", cut_step="0")
    values: dict[str, Any] = {"front": SLAB, "width": "12", "shelves": 0, **changes}
    return one_case("in", style=style, height=height, **values)


@pytest.mark.parametrize(
    ("height", "count"),
    [("40", 2), ("40 1/32", 3), ("60", 3), ("60 1/32", 4), ("80", 4), ("80 1/32", 5)],
)
def test_count_by_height(height: str, count: int) -> None:
    """Two hinges up to 40 in, three to 60, four to 80, then five (hinge makers' charts)."""
    thick = replace(SLAB, slab="ply18")
    assert len(_hinges(_tall(height, front=thick))) == count


def test_count_by_weight_when_that_is_more() -> None:
    """A low but heavy door takes the hinges its weight asks for: over 15 lb three."""
    light = _tall("30", width="20", front=SINGLE)
    sheet = stock("in")["mdf"]
    assert isinstance(sheet, Sheet)
    heavy = _tall(
        "30", width="20", front=SINGLE,
        goods={**stock("in"), "mdf": replace(sheet, density=Fraction(2800))},
    )  # fmt: skip
    assert (len(_hinges(light)), len(_hinges(heavy))) == (2, 4)
    kilos = Fraction("19.875") * 30 * Fraction(5, 8) * INCH**3 * 2800 / 10**9
    assert 30 < kilos / Fraction("0.45359237") <= 45


def test_weight_of_a_pair() -> None:
    """A pair of 18 mm fibreboard doors on a case 850 x 1000 weighs 11.4 kg (common practice)."""
    sheet = stock("mm")["mdf"]
    assert isinstance(sheet, Sheet)
    thick = replace(sheet, thickness=replace(sheet.thickness, value=Fraction(18)))
    made = house("mm", goods={**stock("mm"), "mdf": thick})
    build_case(made, case_spec("mm", front=SLAB))
    nodes = made.chain.nodes
    total = nodes["upper.door_left.weight"].value + nodes["upper.door_right.weight"].value
    assert round(total, 1) == Fraction("11.4")
    assert nodes["upper.door_left.weight"].power == 0


def test_outer_hinges_near_the_ends_the_others_between() -> None:
    """Three hinges on a door of 50 in sit 3 1/2 in from its ends and in its middle."""
    assert _hinges(_tall("50")) == [length(at) for at in ("3 1/2", "25", "46 1/2")]


def test_a_low_door_keeps_two_hinges_on_it() -> None:
    """On a door too low for the usual ends the hinges sit a quarter of its height in."""
    case = one_case("in", style=plain_style("in", top_reveal="0", cut_step="0"), height="9",
                    width="6", front=SLAB, shelves=0)  # fmt: skip
    assert _hinges(case) == [length("2 1/4"), length("6 3/4")]


def test_hinges_keep_clear_of_a_fixed_shelf() -> None:
    """A middle hinge that would meet a fixed shelf moves until 32 mm are between them."""
    case = _tall("50", fixed_shelves=("25 1/4",))
    thick = length("23/32")
    top = length("25 1/4")
    (_, middle, _) = _hinges(case)
    assert middle in (top + 32, top - thick - 32)


def test_hinge_that_must_keep_clear_is_rounded_away_from_the_shelf() -> None:
    """On the marking grid a moved hinge is never nearer to the shelf than 32 mm."""
    case = one_case("in", height="50", width="12", front=SLAB, shelves=0,
                    fixed_shelves=("25 1/4",))  # fmt: skip
    top, thick = length("25 1/4"), length("23/32")
    for hinge in case.doors[0].hinges:
        assert hinge.height.value >= top + 32 or hinge.height.value <= top - thick - 32


def test_hinges_keep_below_the_stretcher_under_a_crown() -> None:
    """The upper hinge stays 32 mm below the stretcher that a crown is nailed to."""
    case = one_case("in", front=SLAB, crown="3/4")
    rail = case.part("upper.crown_stretcher").placed.y.value
    assert case.doors[0].hinges[-1].height.value <= rail - 32


def test_no_room_for_hinges_is_stopped() -> None:
    """Shelves that leave no free stretch for a hinge give a stop and no door."""
    shelves = tuple(str(n) for n in range(2, 30, 2))
    case = one_case("in", height="30", width="18", front=SLAB, shelves=0, fixed_shelves=shelves)
    assert not case.fronts
    assert [f.rule for f in case.findings if f.severity is Severity.STOP] == ["hinge room"]


def _hinge_room(height: Fraction, *shelves: Fraction) -> list[str]:
    """What is advised where the hinges of a low door have no room [in]."""
    case = one_case("in", height=str(height), width="18", front=SLAB, shelves=0,
                    fixed_shelves=tuple(str(each) for each in shelves))  # fmt: skip
    return [way for f in case.findings if f.rule == "hinge room" for way in f.remedies]


def _told(ways: list[str], word: str) -> Fraction:
    """The number of the remedy with that word in it, lower ones below 0 [in]."""
    [way] = [each for each in ways if word in each]
    number = next(each for each in way.split('"')[0].rpartition(" shelf ")[2:] if each)
    text = number.removeprefix("make the opening ")
    size = sum((Fraction(each) for each in text.split()), Fraction(0))
    return -size if "lower" in way else size


@pytest.mark.parametrize(("height", "shelf"), [("6", "3"), ("7", "4"), ("8", "3 1/2")])
def test_what_is_told_makes_room_for_hinges_and_a_step_less_does_not(
    height: str, shelf: str
) -> None:
    """The opening taller, or the fixed shelf elsewhere, by the sixteenth."""
    tall, at = length(height) / length("1"), length(shelf) / length("1")
    ways, step = _hinge_room(tall, at), Fraction(1, 16)
    by = _told(ways, "taller")
    assert not _hinge_room(tall + by, at)
    assert _hinge_room(tall + by - step, at)
    if any("shelf" in way for way in ways):
        by = _told(ways, "fixed shelf")
        assert not _hinge_room(tall, at + by)
        assert _hinge_room(tall, at + by - (step if by > 0 else -step))


@pytest.mark.parametrize("front", [SLAB, APPLIED, GLASS])
def test_plates_lie_on_their_line_in_the_hinged_side(front: FrontSpec) -> None:
    """Two holes of 5 mm, 32 apart, 37 back from the front edge (common practice)."""
    case = one_case("in", width="18", front=replace(front, hinge="right"))
    bores = [f for f in case.part("upper.side_right").features
             if isinstance(f, Bores) and f.kind == "hinge plate"]  # fmt: skip
    assert len(bores) == 2
    for plate in bores:
        (low, line), (high, other) = plate.places
        assert line.value == other.value == 37
        assert high.value - low.value == 32
        assert (plate.face, plate.datum_l, plate.datum_w) == ("A", "l0", "w0")
        assert plate.depth is not None
        assert plate.depth.value < length("23/32")
    assert not any(f.kind == "hinge plate" for f in case.part("upper.side_left").features)


def test_pins_leave_out_holes_at_plates() -> None:
    """No shelf pin runs into a plate hole, and no adjustable shelf lies at a hinge."""
    case = one_case("mm", height="1000", front=SLAB, style=plain_style("mm", pin_low="60",
                    pin_high="60"))  # fmt: skip
    side = [f for f in case.part("upper.side_left").features if isinstance(f, Bores)]
    plates = [at.value for f in side if f.kind == "hinge plate" for at, _ in f.places]
    pins = [at.value for f in side if f.kind == "shelf pins" for at, _ in f.places]
    assert plates
    assert pins
    assert all(abs(pin - plate) >= 5 for pin in pins for plate in plates if pin != plate)
    heights = [hinge.height.value for hinge in case.doors[0].hinges]
    for number in (1, 2):
        shelf = case.part(f"upper.shelf.{number}").placed.y.value
        assert all(h <= shelf - 29 or h >= shelf + Fraction("17.8") + 29 for h in heights)


def _fact(value: Fraction) -> Fact:
    return Fact(Origin("measured", "rule, on the side"), built=value)


def test_cups_follow_the_plates_as_bored() -> None:
    """A plate bored 2 mm too high takes its cup with it; the other cup stays."""
    before = one_case("mm", front=SLAB)
    at = before.doors[0].hinges[0].height.value
    after = one_case(
        "mm", front=SLAB, facts={"upper.side_left.plate_main_1.from_end": _fact(at + 2)}
    )
    low, high = (_hinges(case) for case in (before, after))
    assert [b - a for a, b in zip(low, high, strict=True)] == [2, 0]


def test_plates_stay_when_the_doors_stock_changes() -> None:
    """What is bored does not move when the doors' sheet turns out thicker."""
    made = house("mm")
    build_case(made, case_spec("mm", front=SLAB))
    bored = {
        path: _fact(node.value)
        for path, node in made.chain.nodes.items()
        if ".plate_" in path and node.origin is not None and node.origin.kind == "made"
    }
    assert bored
    facts = {**bored, "stock.mdf.thickness": _fact(Fraction(19))}
    case = one_case("mm", front=SLAB, facts=facts)
    assert [h.height.value for h in case.doors[0].hinges] == [
        bored[f"upper.side_left.plate_main_{n}.from_end"].built for n in (1, 2)
    ]


def test_the_reasons_are_kept() -> None:
    """Why a door has three hinges is kept with its numbers."""
    chain = Chain()
    made = house("in")
    made.chain = chain
    build_case(made, case_spec("in", height="50", width="12", front=SLAB))
    said = [b.because for b in chain.branches if b.place == "upper.door" and b.over]
    assert "a third hinge, the door is too tall for 2" in said
