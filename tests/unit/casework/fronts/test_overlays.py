"""Doors over the box's edges, over part of them, or inset: sizes, hinges, what lies inside.

Sizes against worked constructions of the trade in both units; common practice, no publication,
figures transcribed. Cranks of hinge arms (0, 9.5 and 18 mm) are from memory.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    APPLIED,
    GLASS,
    MITRED,
    PANEL,
    SLAB,
    Unit,
    hardware,
    length,
    one_case,
    stock,
)
from tests.builders import plain_style as style_of

from casewright.casework.cases import Case
from casewright.casework.features import Bores
from casewright.casework.proof import prove
from casewright.casework.replay import replay
from casewright.casework.specs import FrontSpec, Hand, OverlayKind
from casewright.errors import JobFileError
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.room.build import build

UNITS = pytest.mark.parametrize("unit", ["in", "mm"])


def _thick(unit: Unit) -> Fraction:
    return length("23/32" if unit == "in" else "17.8", unit)


def _pair(unit: Unit, overlay: OverlayKind, **style: str) -> Case:
    """A pair in a box whose clear opening is that of the worked constructions: 33 x 24 in."""
    wide, tall = ("34 7/16", "25 7/16") if unit == "in" else ("855.6", "635.6")
    front = replace(SLAB, overlay=overlay)
    return one_case(unit, width=wide, height=tall, front=front, shelves=0,
                    style=style_of(unit, cut_step="0", **style))  # fmt: skip


@UNITS
def test_inset_pair(unit: Unit) -> None:
    """Leaf: opening less a gap above and below, and less three gaps, halved."""
    inch = unit == "in"
    case = _pair(unit, "inset", inset_gap="3/32" if inch else "2.5")
    high, wide = ("23 13/16", "16 23/64") if inch else ("595", "406.25")
    for door in case.doors:
        assert (door.height.value, door.width.value) == (length(high, unit), length(wide, unit))
        assert door.z.value + door.thickness.value == case.depth.value
    (face,) = case.faces
    gap = length("3/32" if inch else "2.5", unit)
    assert {face.left.value, face.right.value, face.bottom.value, face.top.value} == {gap}
    assert [each.value for each in face.gaps] == [gap]
    assert face.x0.value == _thick(unit)


@UNITS
def test_single_inset_door(unit: Unit) -> None:
    """One leaf: the clear opening less two gaps (n leaves share Wo less n + 1 gaps)."""
    inch = unit == "in"
    case = one_case(unit, width="18" if inch else "450", front=replace(SLAB, overlay="inset"),
                    shelves=0, style=style_of(unit, cut_step="0"))  # fmt: skip
    clear = length("18" if inch else "450", unit) - 2 * _thick(unit)
    gap = length("3/32" if inch else "2.5", unit)
    assert case.doors[0].width.value == clear - 2 * gap


@UNITS
def test_partial_overlay_pair(unit: Unit) -> None:
    """Leaf: opening and twice the overlay, less the gap, halved; overlay 1/2 in or 12 mm."""
    inch = unit == "in"
    overlay = length("1/2" if inch else "12", unit)
    bare = str((_thick(unit) - overlay) / length(1, unit))
    case = _pair(unit, "partial", partial_reveal=bare, base_top_reveal="0")
    high, wide = ("25", "16 15/16") if inch else ("624", "420.5")
    for door in case.doors:
        assert (door.height.value, door.width.value) == (length(high, unit), length(wide, unit))
    assert case.faces[0].gaps[0].value == length("1/8" if inch else "3", unit)


def _plates(case: Case) -> list[Bores]:
    return [
        f for p in case.parts if p.role == "side" for f in p.features
        if isinstance(f, Bores) and f.kind == "hinge plate"
    ]  # fmt: skip


def test_hinges_of_an_inset_door() -> None:
    """Plate line 37 mm and the door's thickness; the overlay is the gap, the other way.

    13 - 18 (cranked arm) + 4.5 - 2 = -2.5 mm on a plate of 2, or 3 mm on one of 0 and so on.
    """
    case = one_case("mm", width="450", front=replace(PANEL, overlay="inset"), shelves=0)
    door = case.doors[0]
    assert door.crank is not None
    assert door.crank.value == 18
    law = 13 - 18 + door.bore_distance.value - door.plate_height.value
    assert door.overlay.value == law
    assert abs(law - Fraction("-2.5")) <= Fraction(1, 2)  # steps of the jig's fence: 1 mm
    assert {place[1].value for bores in _plates(case) for place in bores.places} == {37 + 19}


def test_hinges_of_partial_overlay_take_the_half_cranked_arm_where_they_must() -> None:
    """7.8 mm over the side: 13 - 9.5 + 4 - 0 gives 7.5, the straight arm never under 12."""
    case = one_case("mm", width="450", front=replace(SLAB, overlay="partial"), shelves=0)
    crank = case.doors[0].crank
    assert crank is not None
    assert crank.value == Fraction("9.5")
    nearly = one_case("mm", width="450", front=replace(SLAB, overlay="partial"), shelves=0,
                      style=style_of("mm", partial_reveal="4"))  # fmt: skip
    assert nearly.doors[0].crank is None


def _pin_lines(case: Case) -> dict[str, Fraction]:
    return {
        f.path.rpartition("_")[2]: f.places[0][1].value
        for f in case.part("upper.side_left").features
        if isinstance(f, Bores) and f.kind == "shelf pins"
    }


def test_shelves_and_pins_stand_back_behind_an_inset_door() -> None:
    """Front row 37 mm and the door's thickness; shelf by its setback and the door's thickness."""
    over, inset = (
        one_case("mm", width="800", height="1000", front=replace(PANEL, overlay=overlay))
        for overlay in ("full", "inset")
    )
    assert _pin_lines(over) == {"front": 37, "back": 37}
    assert _pin_lines(inset) == {"front": 37 + 19, "back": 37}
    back = [case.part("upper.shelf.1").placed.z.value for case in (over, inset)]
    assert back[0] - back[1] == 19
    assert inset.overall_depth.value == inset.depth.value


@UNITS
@pytest.mark.parametrize("overlay", ["partial", "inset"])
@pytest.mark.parametrize(
    "front", [SLAB, APPLIED, GLASS, PANEL, MITRED], ids=lambda f: f.construction
)
def test_every_construction_lies_every_way(
    unit: Unit, overlay: OverlayKind, front: FrontSpec
) -> None:
    """A single door in either hand, a pair, a stack and a base case: proved and put together."""
    inch = unit == "in"
    asked = replace(front, overlay=overlay)
    goods = stock(unit) | {"mdf": replace(stock(unit)["ply18"], key="mdf")}
    hands: tuple[Hand, Hand] = ("left", "right")
    kinds: list[dict[str, Any]] = [
        {"width": "18" if inch else "450", "front": replace(asked, hinge=hand)} for hand in hands
    ]
    kinds += [
        {"width": "34" if inch else "860", "front": asked},
        {"width": "30" if inch else "760", "height": "48" if inch else "1200", "front": asked,
         "divider": "30" if inch else "760", "upper_front": asked},
        {"width": "30" if inch else "760", "front": asked, "kind": "base", "toe": "notch",
         "height": "34 1/2" if inch else "870", "depth": "23 1/4" if inch else "580",
         "shelves": 1},
    ]  # fmt: skip
    for changes in kinds:
        case = one_case(unit, goods=goods, **changes)
        assert [f for f in case.findings if f.severity is Severity.STOP] == []
        assert prove(case, hardware=hardware(unit)).failures == ()
        assert replay(case).failures == ()


def test_an_inset_door_over_an_overlaid_one() -> None:
    """Each opening lies its own way; the divider parts them."""
    case = one_case(width="30", height="48", divider="30", front=replace(PANEL, overlay="inset"),
                    upper_front=PANEL)  # fmt: skip
    assert prove(case, hardware=hardware()).failures == ()
    lower, upper = case.faces
    divider = case.part("upper.divider")
    assert lower.y1.value == divider.placed.y.value
    assert upper.y0.value == divider.placed.y.value + divider.finished.thickness.value / 2


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ('kind = "base"\nheight = 18\nlid = "hinged"', "inner front under its lid lies where"),
        ('kind = "wall"\nfixed_shelves = [14]', "fixed shelves end where inset doors would lie"),
        ('kind = "wall"\ncrown = 2', "crown would lap over inset doors"),
    ],
)
def test_what_stands_in_the_way_of_inset_doors_is_told_at_its_line(more: str, says: str) -> None:
    """With the case by name, and what would be right."""
    text = f'format = 1\nunit = "in"\n[doors]\noverlay = "inset"\n[case.jam]\nwidth = 24\n{more}\n'
    with pytest.raises(JobFileError) as refused:
        read_job(text, "jam.toml")
    (problem,) = refused.value.problems
    assert says in problem.what
    assert "jam" in problem.what
    assert problem.location.line == 4


def test_the_crank_of_an_arm_is_asked_for_where_no_sheet_says_it() -> None:
    """Inset and partly overlaid doors are bored to it; the question goes once it is written."""
    text = (
        'format = 1\nunit = "mm"\n[doors]\noverlay = "{}"\n[hardware.hinge]\nconstant = 13\n'
        '{}[case.jam]\nkind = "wall"\nwidth = 500\n'
    )
    for overlay, key in (("inset", "inset_crank"), ("partial", "half_crank")):
        asked = build(read_job(text.format(overlay, ""), "jam.toml")).questions
        (question,) = [q for q in asked if q.path == f"hardware.hinge.{key}"]
        assert question.waiting == ("jam.door.slab",)
        known = build(read_job(text.format(overlay, f"{key} = 12\n"), "jam.toml"))
        assert f"hardware.hinge.{key}" not in [q.path for q in known.questions]
    full = build(read_job(text.format("full", ""), "jam.toml"))
    assert [q.path for q in full.questions if "crank" in q.path] == []
