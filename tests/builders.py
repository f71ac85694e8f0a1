"""Builders of small jobs for tests."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any, Literal

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import (
    CaseSpec,
    DrawerJoint,
    DrawerSpec,
    FrontSpec,
    RowKind,
    RowSpec,
    SlideKind,
)
from casewright.dims import Chain, Given, Origin
from casewright.facts import NO_FACTS, Facts
from casewright.hardware import (
    HardwareList,
    HingeSheet,
    PinSheet,
    PullSheet,
    ScrewSheet,
    SlideSheet,
    UndermountSheet,
)
from casewright.room.specs import JobSpec, RunSpec
from casewright.shop import Shop, Tool, ToolKind
from casewright.stock import Board, EdgeBand, Glazing, Sheet, Stock
from casewright.style import Style, default_style

INCH = Fraction(127, 5)
Unit = Literal["in", "mm"]


def length(value: str | int | Fraction, unit: Unit = "in") -> Fraction:
    """'11 7/8' or '17.8' in a unit, as mm."""
    words = str(value).split()
    total = sum((Fraction(word) for word in words), Fraction(0))
    return total * INCH if unit == "in" else total


def given(value: str | int | Fraction, unit: Unit = "in") -> Given:
    """A chosen length."""
    return Given(length(value, unit), Origin("chosen", "test"))


def _mm(value: str) -> Given:
    return Given(Fraction(value), Origin("cited", "data sheet of the test"))


def stock(
    unit: Unit = "in",
    *,
    ply: str | None = None,
    thin: str | None = None,
    drawer: str | None = None,
) -> dict[str, Stock]:
    """Stock of the reference constructions: 23/32 and 7/32 in, or 17.8 and 6.2 mm."""
    inch = unit == "in"
    ply = ply or ("23/32" if inch else "17.8")
    thin = thin or ("7/32" if inch else "6.2")
    sheet = ("96", "48") if inch else ("2440", "1220")

    def sheet_of(key: str, thickness: str, material: str, *, grain: bool) -> Sheet:
        return Sheet(
            key, key, given(sheet[0], unit), given(sheet[1], unit), given(thickness, unit),
            grain, material, Fraction(680 if grain else 750), 8300 if grain else None,
        )  # fmt: skip

    goods: list[Stock] = [
        sheet_of("ply18", ply, "plywood", grain=True),
        sheet_of("ply6", thin, "plywood", grain=True),
        sheet_of("drawer_ply", drawer or ("1/2" if inch else "12.5"), "plywood", grain=True),
        sheet_of("mdf", "5/8" if inch else "15", "fibreboard", grain=False),
        Board("board", "board", given("3/4" if inch else "19", unit),
              given("5 1/2" if inch else "140", unit), (given("96" if inch else "2400", unit),),
              Fraction(600)),
        Board("strip", "strip", given("3/16" if inch else "5", unit),
              given("5 1/2" if inch else "140", unit), (given("96" if inch else "2400", unit),),
              Fraction(600)),
        EdgeBand("band", "band", _mm("0.5"), _mm("22"), given("300" if inch else "8000", unit)),
        Glazing("glass", "glass", given("1/8" if inch else "3", unit), "tempered glass",
                Fraction(2500)),
    ]  # fmt: skip
    return {item.key: item for item in goods}


def hardware(unit: Unit = "in") -> HardwareList:
    """A cup hinge of constant 13, 5 mm pins, screws."""
    hinge = HingeSheet(
        "hinge", "cup hinge", _mm("13"), _mm("3"), _mm("6"), (_mm("0"), _mm("2"), _mm("4")),
        _mm("35"), _mm("12.5"), _mm("37"), _mm("32"), _mm("5"), _mm("2"), _mm("1.5"),
        placeholder=False,
    )  # fmt: skip

    def screw(key: str, inches: str, metric: str) -> ScrewSheet:
        return ScrewSheet(key, key, given(inches if unit == "in" else metric, unit), Fraction(4))

    return HardwareList(
        hinge,
        PullSheet("pull", "pull", _mm("96"), _mm("5"), _mm("30"), placeholder=False),
        PinSheet("pin", "pin", _mm("5"), _mm("10"), _mm("32")),
        screw("pocket_screw", "1 1/4", "32"),
        screw("wall_screw", "2 1/2", "65"),
        screw("brad", "1 1/2", "38"),
        screw("back_brad", "3/4", "20"),
        replace(screw("front_screw", "1", "25"), placeholder=True),
        replace(screw("drawer_screw", "1 1/2", "40"), placeholder=True),
        **slides(unit),
    )


def slides(unit: Unit = "in") -> dict[str, Any]:
    """Slides of the reference constructions: 1/2 in (12.7) of air, or 1 21/32 in (42) in all."""
    inch = unit == "in"
    holes = (_mm("35"), _mm("163"), _mm("259"), _mm("355"))
    half = given("1/2" if inch else "12", unit)
    side = ("16", "18", "20", "22") if inch else ("400", "450", "500", "550")
    under = ("15", "18", "21") if inch else ("350", "400", "450", "500")
    common: dict[str, Any] = {
        "play": _mm("1.5"), "front": _mm("3"), "behind": half, "below": half,
        "hole": _mm("2.5"), "depth": _mm("10"), "holes": holes, "placeholder": False,
    }  # fmt: skip
    return {
        "slide": SlideSheet(
            key="slide", title="slides", air=given("1/2" if inch else "12.7", unit),
            lengths=tuple(given(size, unit) for size in side), line=_mm("32"), box_holes=holes,
            **common,
        ),
        "undermount": UndermountSheet(
            key="undermount", title="undermount slides",
            air=given("1 21/32" if inch else "42", unit),
            lengths=tuple(given(size, unit) for size in under), line=_mm("23"), box_holes=(),
            thickest=_mm("16"), recess=given("1/2" if inch else "13", unit),
            notch_width=_mm("35"), notch_height=given("1/2" if inch else "13", unit),
            hook=_mm("6"), hook_depth=_mm("8"), hook_in=_mm("7"), hook_up=_mm("24"), **common,
        ),
    }  # fmt: skip


def shop(unit: Unit = "in") -> Shop:
    """A home shop."""
    kerf = given("1/8" if unit == "in" else "3.2", unit)
    kinds: tuple[ToolKind, ...] = (
        "table saw", "circular saw", "router", "pocket-hole jig", "pin jig", "hinge jig",
        "drill",
    )  # fmt: skip
    tools = {kind: Tool(kind, Fraction(1, 5), Fraction(2, 5), kerf) for kind in kinds}
    bits = ("1/4", "1/2", "3/4") if unit == "in" else ("6", "12", "18")
    return Shop(
        tools,
        tuple(given(b, unit) for b in bits),
        Fraction(25),
        given("98" if unit == "in" else "2500", unit),
    )


def plain_style(unit: Unit = "in", **changes: str) -> Style:
    """The house style with lengths changed."""
    return default_style(unit).changed({k: given(v, unit) for k, v in changes.items()})


SLAB = FrontSpec("slab", None, "left", "mdf", "strip", "board", "glass")
APPLIED = FrontSpec("applied frame", None, "left", "mdf", "strip", "board", "glass")
GLASS = FrontSpec("glass frame", None, "left", "mdf", "strip", "board", "glass")
MITRED = FrontSpec("mitred frame", None, "left", "mdf", "strip", "board", "glass", panel="ply6")
PANEL = FrontSpec("frame and panel", None, "left", "mdf", "strip", "board", "glass", panel="ply6")


def rows(unit: Unit, *asked: str) -> tuple[RowSpec, ...]:
    """Rows from the top down, as a job file writes them: 'drawer 7', 'doors'."""
    found = []
    for text in asked:
        kind, _, height = (
            ("false front", "", text[12:]) if text.startswith("false") else text.partition(" ")
        )
        front = None if kind == "open" else SLAB
        given_height = given(height, unit) if height else None
        found.append(RowSpec(_ROW_KINDS[kind], given_height, front, SLAB))
    return tuple(found)


_ROW_KINDS: dict[str, RowKind] = {
    "doors": "doors", "drawer": "drawer", "false front": "false front", "open": "open",
}  # fmt: skip


def drawer_base(
    unit: Unit = "in",
    *asked: str,
    joint: DrawerJoint = "rabbet",
    slides: SlideKind = "side-mount",
    **changes: Any,
) -> dict[str, Any]:
    """What to change of a plain upper to make it a base case with these rows."""
    inch = unit == "in"
    return {
        "key": "base", "kind": "base", "toe": "notch", "shelves": 0, "front": SLAB,
        "width": "24" if inch else "600", "height": "34 1/2" if inch else "870",
        "depth": "23 1/4" if inch else "580", "rows": rows(unit, *asked),
        "drawer": DrawerSpec(joint, slides, "drawer_ply", "ply6"), **changes,
    }  # fmt: skip


def case_spec(unit: Unit = "in", **changes: Any) -> CaseSpec:
    """A plain upper; lengths may be given as text in the unit."""
    inch = unit == "in"
    values: dict[str, Any] = {
        "key": "upper", "title": "upper", "kind": "wall",
        "width": "33" if inch else "850", "height": "39" if inch else "1000",
        "depth": "12 1/4" if inch else "330", "joint": "pocket screws", "back": "rabbeted",
        "edge": "painted", "pockets": "plugged", "toe": "none", "shelves": 2,
        "fixed_shelves": (), "divider": None, "finished": (), "skirt": None, "crown": None,
        "nosing": None, "front": None, "upper_front": None, "box_stock": "ply18",
        "back_stock": "ply6", "strip_stock": "board", "band_stock": "band",
    }  # fmt: skip
    values.update(changes)
    for key in ("width", "height", "depth", "divider", "skirt", "crown", "nosing"):
        if isinstance(values[key], str):
            values[key] = given(values[key], unit)
    values["fixed_shelves"] = tuple(
        given(v, unit) if isinstance(v, str) else v for v in values["fixed_shelves"]
    )
    return CaseSpec(**values)


def house(
    unit: Unit = "in",
    *,
    facts: Facts = NO_FACTS,
    style: Style | None = None,
    goods: Mapping[str, Stock] | None = None,
    sheets: HardwareList | None = None,
) -> House:
    """The shared numbers of a small job."""
    return House(
        Chain(facts), style or plain_style(unit), goods or stock(unit),
        sheets or hardware(unit),
        shop(unit), unit,
    )  # fmt: skip


def one_case(
    unit: Unit = "in",
    *,
    facts: Facts = NO_FACTS,
    style: Style | None = None,
    goods: Mapping[str, Stock] | None = None,
    **changes: Any,
) -> Case:
    """One case built alone."""
    return build_case(
        house(unit, facts=facts, style=style, goods=goods), case_spec(unit, **changes)
    )


def job(
    *cases: CaseSpec,
    unit: Unit = "in",
    runs: tuple[RunSpec, ...] = (),
    style: Style | None = None,
    goods: Mapping[str, Stock] | None = None,
) -> JobSpec:
    """A whole job of the given cases."""
    return JobSpec(
        name="test job", unit=unit, paper="letter" if unit == "in" else "a4",
        style=style or plain_style(unit),
        stock=goods or stock(unit), hardware=hardware(unit), shop=shop(unit), cases=cases,
        runs=runs,
    )  # fmt: skip
