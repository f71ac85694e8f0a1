"""Hoods for tests."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from tests.builders import Unit, case_spec, given, hardware, house, plain_style, stock

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.hood_spec import HoodSpec
from casewright.casework.house import House
from casewright.casework.specs import ApplianceOpening
from casewright.stock import Stock

__all__ = ["hood", "hood_house", "hood_spec"]


def hood_spec(unit: Unit = "in", **changes: Any) -> HoodSpec:
    """Over a cooking surface at 36 in (914 mm), 30 in (760 mm) free above it."""
    inch = unit == "in"
    size = "6" if inch else "150"
    values: dict[str, Any] = {
        "over": "cooktop", "over_title": "cooktop",
        "surface": given("36" if inch else "914", unit),
        "base": given("34 1/2" if inch else "870", unit),
        "clear": given("30" if inch else "760", unit), "liner_clear": None,
        "duct": (given(size, unit), given(size, unit)),
        "duct_back": given("8 1/2" if inch else "220", unit),
        "bottom": given("54" if inch else "1370", unit), "face_stock": "face",
    } | changes  # fmt: skip
    return HoodSpec(**values)


def hood_house(unit: Unit = "in", goods: dict[str, Stock] | None = None, **style: str) -> House:
    """A face panel of 3/4 in (19 mm)."""
    found = goods or stock(unit)
    face = replace(
        found["mdf"], key="face", thickness=given("3/4" if unit == "in" else "19", unit)
    )
    return house(unit, goods=found | {"face": face}, sheets=hardware(unit),
                 style=plain_style(unit, **style))  # fmt: skip


def hood(
    unit: Unit = "in",
    *,
    made: House | None = None,
    sizes: tuple[str, str, str] | None = None,
    liner: tuple[str, str, str] | None = None,
    asked: dict[str, Any] | None = None,
    **changes: Any,
) -> Case:
    """36 in (900 mm) wide, 18 in (460 mm) deep, up to 91 1/2 in (2330 mm) above the floor."""
    inch = unit == "in"
    wide, high, deep = sizes or (("36", "37 1/2", "18") if inch else ("900", "960", "460"))
    box = liner or (("28 3/8", "10", "10 1/2") if inch else ("720", "250", "270"))
    opening = ApplianceOpening("liner", "liner", *(given(each, unit) for each in box))
    spec = case_spec(
        unit, key="hood", title="hood", kind="hood", width=wide, height=high, depth=deep,
        shelves=0, finished=("left", "right"), end="plain", appliance=opening,
        hood=hood_spec(unit, **(asked or {})), **changes,
    )  # fmt: skip
    return build_case(made or hood_house(unit, cut_step="0", hood_air="0"), spec)
