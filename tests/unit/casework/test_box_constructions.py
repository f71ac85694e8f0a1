"""Part sizes of boxes against worked constructions of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the
parts in space; common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from tests.builders import INCH, SLAB, Unit, hardware, length, one_case, plain_style

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.specs import FrontSpec
from casewright.casework.verification import verify


def _sizes(case: Case, unit: Unit) -> dict[str, tuple[Fraction, Fraction]]:
    scale = INCH if unit == "in" else Fraction(1)
    return {
        part.path.partition(".")[2]: (
            part.finished.length.value / scale,
            part.finished.width.value / scale,
        )
        for part in case.parts
    }


def _expected(text: str) -> tuple[Fraction, Fraction]:
    long, wide = text.split(" x ")
    return length(long, "mm"), length(wide, "mm")


def _check(case: Case, unit: Unit, expected: dict[str, str]) -> None:
    sizes = _sizes(case, unit)
    for name, text in expected.items():
        assert sizes[name] == _expected(text), name


UPPER: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "39 x 12 1/4", "side_right": "39 x 12 1/4",
        "bottom": "31 9/16 x 12 1/32", "top": "31 9/16 x 12 1/32", "back": "39 x 32 5/16",
        "nailer_top": "31 9/16 x 3 1/2", "nailer_bottom": "31 9/16 x 3 1/2",
        "shelf.1": "31 7/16 x 11 25/32", "shelf.2": "31 7/16 x 11 25/32",
    },
    "mm": {
        "side_left": "1000 x 330", "side_right": "1000 x 330", "bottom": "814.4 x 323.8",
        "top": "814.4 x 323.8", "back": "1000 x 832.4", "nailer_top": "814.4 x 90",
        "nailer_bottom": "814.4 x 90", "shelf.1": "811.4 x 317.8", "shelf.2": "811.4 x 317.8",
    },
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_upper_with_rabbeted_back_and_nailers(unit: Unit) -> None:
    """An upper 33 x 39 x 12 1/4 in, or 850 x 1000 x 330 mm, has the worked part sizes."""
    case = one_case(unit, style=plain_style(unit, cut_step="0"))
    _check(case, unit, UPPER[unit])
    assert set(_sizes(case, unit)) == set(UPPER[unit])


BASE: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "34 1/2 x 23 1/4", "bottom": "28 9/16 x 23 1/32",
        "front_stretcher": "28 9/16 x 4", "rear_stretcher": "28 9/16 x 4",
        "back": "30 1/2 x 29 5/16", "toe_board": "28 9/16 x 4", "shelf.1": "28 7/16 x 22 1/32",
    },
    "mm": {
        "side_left": "870 x 580", "bottom": "764.4 x 573.8", "front_stretcher": "764.4 x 100",
        "rear_stretcher": "764.4 x 100", "back": "770 x 782.4", "toe_board": "764.4 x 100",
        "shelf.1": "761.4 x 548.8",
    },
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_base_with_integral_toe_notch(unit: Unit) -> None:
    """A base 30 x 34 1/2 x 23 1/4 in, or 800 x 870 x 580 mm, with a toe notch."""
    size = ("30", "34 1/2", "23 1/4") if unit == "in" else ("800", "870", "580")
    case = one_case(
        unit, style=plain_style(unit, cut_step="0"), kind="base", toe="notch", shelves=1,
        width=size[0], height=size[1], depth=size[2],
    )  # fmt: skip
    _check(case, unit, BASE[unit])
    notch = next(f for f in case.part("upper.side_left").features if f.kind == "notch")
    scale = INCH if unit == "in" else Fraction(1)
    assert isinstance(notch, Cut)
    assert notch.end is not None
    assert notch.width.value / scale == (4 if unit == "in" else 100)
    assert notch.end.value / scale == (Fraction(11, 4) if unit == "in" else 70)


PLINTH: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "30 x 23 1/4", "bottom": "25 9/16 x 23 1/32",
        "front_stretcher": "25 9/16 x 4", "back": "30 x 26 5/16",
        "plinth.front": "27 x 4 1/2", "plinth.sleeper.1": "18 13/16 x 4 1/2",
    },
    "mm": {
        "side_left": "750 x 580", "bottom": "664.4 x 573.8", "front_stretcher": "664.4 x 100",
        "back": "750 x 682.4", "plinth.front": "700 x 120", "plinth.sleeper.1": "469.4 x 120",
    },
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_base_on_a_separate_plinth(unit: Unit) -> None:
    """A base of 27 in (700 mm) on a ladder 4 1/2 in (120 mm) high, standing 3 in (75 mm) back."""
    size = ("27", "34 1/2", "23 1/4") if unit == "in" else ("700", "870", "580")
    toe = ("4 1/2", "3") if unit == "in" else ("120", "75")
    case = one_case(
        unit, style=plain_style(unit, cut_step="0", toe_height=toe[0], toe_setback=toe[1]),
        kind="base", toe="plinth", shelves=0, width=size[0], height=size[1], depth=size[2],
    )  # fmt: skip
    _check(case, unit, PLINTH[unit])


STACK: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "51 x 12 1/4", "bottom": "35 1/16 x 12 1/32", "top": "35 1/16 x 12 1/32",
        "divider": "35 1/16 x 12 1/32", "back": "51 x 35 5/16",
    },
    "mm": {
        "side_left": "1300 x 330", "bottom": "876.4 x 323.8", "top": "876.4 x 323.8",
        "divider": "876.4 x 323.8", "back": "1300 x 882.4",
    },
}  # fmt: skip


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_stacked_upper_as_one_carcase_with_a_divider(unit: Unit) -> None:
    """One pair of sides, all horizontals dadoed, the divider's centreline at 36 in (920 mm)."""
    size = ("36", "51", "12 1/4") if unit == "in" else ("900", "1300", "330")
    case = one_case(
        unit, style=plain_style(unit, cut_step="0"), joint="dado", shelves=0, width=size[0],
        height=size[1], depth=size[2], divider="36" if unit == "in" else "920",
    )  # fmt: skip
    _check(case, unit, STACK[unit])
    divider = case.part("upper.divider")
    scale = INCH if unit == "in" else Fraction(1)
    under = divider.placed.y.value / scale
    thick = divider.finished.thickness.value / scale
    floor = thick
    below, above = (
        (length("34 59/64", "mm"), length("13 59/64", "mm"))
        if unit == "in"
        else (Fraction("893.3"), Fraction("353.3"))
    )
    assert under - floor == below
    top = case.part("upper.top")
    assert top.placed.y.value / scale - thick - (under + thick) == above


SHELVING: dict[Unit, dict[str, str]] = {
    "in": {
        "side_left": "84 x 12", "side_right": "84 x 12", "back": "80 1/2 x 35 5/16",
        **dict.fromkeys(("bottom", "shelf.1", "shelf.2", "shelf.3", "shelf.4", "top"),
                        "35 1/16 x 11 25/32"),
    },
    "mm": {
        "side_left": "2100 x 300", "side_right": "2100 x 300", "back": "2010 x 882.4",
        **dict.fromkeys(("bottom", "shelf.1", "shelf.2", "shelf.3", "shelf.4", "top"),
                        "876.4 x 293.8"),
    },
}  # fmt: skip
BAYS: dict[Unit, tuple[str, str]] = {"in": ("15.2375", "15.95625"), "mm": ("380.64", "398.44")}
"""Clear height of each of its five bays, and from the top of one shelf to that of the next."""


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_bookcase_with_dadoed_shelves(unit: Unit) -> None:
    """Open shelving 36 x 84 x 12 in (900 x 2100 x 300 mm), five equal bays (`OPENSH`)."""
    size = ("36", "84", "12") if unit == "in" else ("900", "2100", "300")
    case = one_case(
        unit, style=plain_style(unit, cut_step="0"), kind="bookcase", joint="dado", shelves=4,
        width=size[0], height=size[1], depth=size[2],
    )  # fmt: skip
    _check(case, unit, SHELVING[unit])
    assert case.parts[0].path == "upper.side_left"
    clear, pitch = (length(text, unit) for text in BAYS[unit])
    assert [each.size.value for each in case.clear_heights] == [clear] * 5
    tops = [level.high.value for level in case.levels]
    assert [above - below for below, above in pairwise(tops)] == [pitch] * 5
    assert verify(case, hardware=hardware(unit)).failures == ()


NOSINGS: list[tuple[Unit, str, str]] = [
    ("in", "1 1/2", "34 9/16 x 1 1/2"), ("mm", "36", "864.4 x 36"),
]  # fmt: skip


@pytest.mark.parametrize(("unit", "nosing", "expected"), NOSINGS)
def test_every_shelf_of_a_bookcase_has_its_nosing(unit: Unit, nosing: str, expected: str) -> None:
    """The same shelving with nosings: six, bottom and top included, between the sides.

    The toe board stands back so that the bottom's nosing lies on it, flush with the others.
    """
    size = ("36", "84", "12") if unit == "in" else ("900", "2100", "300")
    case = one_case(
        unit, style=plain_style(unit, cut_step="0"), kind="bookcase", joint="dado", shelves=4,
        width=size[0], height=size[1], depth=size[2], nosing=nosing,
    )  # fmt: skip
    nosings = [part for part in case.parts if part.role == "nosing"]
    _check(case, unit, {part.path.partition(".")[2]: expected for part in nosings})
    assert len(nosings) == 6
    toe, lowest = case.part("upper.toe_board"), case.part("upper.nosing.bottom")
    assert toe.placed.z.value + toe.finished.thickness.value == lowest.placed.z.value
    assert verify(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_open_shelves_on_a_wall_have_nosings(unit: Unit) -> None:
    """Under each fixed shelf and the top, between the sides; none under a bottom that hangs."""
    inch = unit == "in"
    case = one_case(
        unit, kind="wall", joint="dado", front=None, shelves=0, width="36" if inch else "900",
        height="30" if inch else "750", nosing="1" if inch else "25",
        fixed_shelves=("11", "20") if inch else ("280", "500"),
    )  # fmt: skip
    found = {part.path for part in case.parts if part.role == "nosing"}
    assert found == {
        "upper.nosing.fixed_shelf.1", "upper.nosing.fixed_shelf.2", "upper.nosing.top",
    }  # fmt: skip
    for path in found:
        long = case.part(path).finished.length.value
        sides = [case.part(f"upper.side_{hand}").finished.thickness.value
                 for hand in ("left", "right")]  # fmt: skip
        assert 0 <= case.width.value - sum(sides) - long <= length("1/32" if inch else "1/2", unit)
    assert verify(case, hardware=hardware(unit)).failures == ()


def test_no_nosing_under_a_bottom_nearer_the_floor_than_it_is_high() -> None:
    """A nosing of 4 in does not fit a toe space of 3 1/2 in: the bottom goes without."""
    case = one_case(kind="bookcase", joint="dado", shelves=2, height="60", nosing="4")
    names = {part.path for part in case.parts if part.role == "nosing"}
    assert names == {"upper.nosing.shelf.1", "upper.nosing.shelf.2", "upper.nosing.top"}
    assert verify(case, hardware=hardware()).failures == ()


JOINT_LENGTHS = [
    ("in", "pocket screws", "28 9/16"), ("in", "dado", "29 1/16"), ("in", "rabbet", "29 5/16"),
    ("mm", "pocket screws", "714.4"), ("mm", "dado", "726.4"), ("mm", "rabbet", "732.4"),
]  # fmt: skip


@pytest.mark.parametrize(("unit", "joint", "expected"), JOINT_LENGTHS)
def test_length_of_a_horizontal_by_its_joint(unit: Unit, joint: str, expected: str) -> None:
    """A bottom in a case of 30 in (750 mm): butt, in dadoes, in rabbets at the ends."""
    case = one_case(
        unit, style=plain_style(unit, cut_step="0"), joint=joint,
        width="30" if unit == "in" else "750",
    )  # fmt: skip
    found = case.part("upper.bottom").finished.length.value
    assert found == length(expected, unit)


BACKS = [
    ("in", "rabbeted", "30 x 29 5/16", "11 25/32"), ("in", "grooved", "29 x 29", "11 9/32"),
    ("in", "applied", "29 7/8 x 29 7/8", "11 25/32"),
    ("in", "inset", "28 9/16 x 28 9/16", "11 9/32"),
    ("mm", "rabbeted", "760 x 732.4", "293.8"), ("mm", "grooved", "734.9 x 724.9", "281.8"),
    ("mm", "applied", "757 x 747", "293.8"), ("mm", "inset", "724.4 x 714.4", "282.2"),
]  # fmt: skip


@pytest.mark.parametrize(("unit", "back", "expected", "inside"), BACKS)
def test_back_and_inside_depth_by_how_it_is_fixed(
    unit: Unit, back: str, expected: str, inside: str
) -> None:
    """A case 30 x 30 x 12 in (750 x 760 x 300 mm) with each kind of back."""
    size = ("30", "30", "12") if unit == "in" else ("750", "760", "300")
    inset = "1/2" if unit == "in" else "12"
    case = one_case(
        unit, style=plain_style(unit, cut_step="0", groove_inset=inset), back=back, shelves=1,
        width=size[0], height=size[1], depth=size[2],
    )  # fmt: skip
    _check(case, unit, {"back": expected})
    shelf = case.part("upper.shelf.1")
    rear = shelf.placed.z.value - shelf.finished.width.value
    assert case.depth.value - rear == length(inside, unit)


@pytest.mark.parametrize("kind", ["wall", "base", "bookcase"])
@pytest.mark.parametrize("pockets", ["hidden", "plugged"])
@pytest.mark.parametrize("front", [SLAB, None], ids=["doors", "open"])
def test_nailers_before_a_captured_back_are_held_from_the_front(
    kind: str, pockets: str, front: FrontSpec | None
) -> None:
    """A groove 1/2 in from the rear leaves no room for a nailer of 23/32 behind the back.

    It stands in front; its pockets look forward, and where they may not show it is bradded
    through the sides instead (common practice: nothing can be driven behind a back in place).
    """
    sizes = {"wall": ("39", "12 1/4"), "base": ("34 1/2", "23 1/4"), "bookcase": ("60", "12")}
    height, depth = sizes[kind]
    case = one_case(
        style=plain_style(groove_inset="1/2"), kind=kind, back="grooved", front=front,
        pockets=pockets, height=height, depth=depth, shelves=1,
    )  # fmt: skip
    assert verify(case, hardware=hardware()).failures == ()
    nailer = case.part("upper.nailer_top")
    faces = {f.face for f in nailer.features if f.kind == "pocket"}
    bare = front is None and pockets == "hidden"
    assert faces == (set() if bare else {"A"})
    joint = next(j for j in case.joints if j.path == "upper.joint_nailer_top_left")
    assert {f.kind for f in joint.fastenings} == {"brad" if bare else "pocket screw", "glue"}


def test_no_shelf_pins_beside_a_nailer_in_front_of_the_back() -> None:
    """In a low opening the lowest holes would lie behind the nailer: no shelf can rest there.

    Common practice: pins begin above what stands in front of the back.
    """
    case = one_case("mm", height="864", divider="312", front=SLAB)
    nailer = next(p for p in case.parts if p.path == "upper.nailer_bottom")
    top = nailer.placed.y.value + nailer.finished.width.value
    side = next(p for p in case.parts if p.path == "upper.side_left")
    heights = [
        at.value
        for feature in side.features
        if feature.kind == "shelf pins"
        for at, _ in getattr(feature, "places", ())
    ]
    assert heights
    assert min(heights) > top
    assert verify(case, hardware=hardware("mm")).failures == ()
