"""Panels of appliances for tests."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from tests.builders import SLAB, Unit, case_spec, given, hardware, house, plain_style, stock

from casewright.casework.appliance_panels import PanelEdges, PanelPlace, build_panel, panel_spec
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import PanelSheet
from casewright.stock import Stock

KEY = "appliance.washer.panel"


def panel_sheet(unit: Unit = "in", **changes: Any) -> PanelSheet:
    """A sheet that sets no limit, brackets in two rows."""
    inch = unit == "in"
    rows = ("4", "18") if inch else ("100", "450")
    values: dict[str, Any] = {
        "front": SLAB, "no_limit": frozenset({"height", "width", "thickness", "weight"}),
        "screw_rows": tuple(given(row, unit) for row in rows),
        "screws_apart": given("16" if inch else "400", unit),
        "screw_depth": given("3/8" if inch else "10", unit),
    } | changes  # fmt: skip
    return PanelSheet(**values)


def panel(
    unit: Unit = "in",
    sizes: Mapping[str, str] | None = None,
    *,
    made: House | None = None,
    goods: Mapping[str, Stock] | None = None,
    **changes: Any,
) -> Case:
    """The panel of a dishwasher: opening, kick, underside of the counter, gap below it."""
    inch = unit == "in"
    usual = {"Wo": "24", "hu": "34 1/2", "kp": "4", "gt": "1/8"}
    if not inch:
        usual = {"Wo": "600", "hu": "870", "kp": "100", "gt": "3"}
    made = made or house(unit, style=plain_style(unit, cut_step="0"), goods=goods or stock(unit),
                         sheets=hardware(unit))  # fmt: skip
    place = made.chain.place("beside")
    numbers = {
        name: place.given(name, given(text, unit))
        for name, text in {**usual, **(sizes or {})}.items()
    }
    high = place.let("high", numbers["hu"] - numbers["gt"])
    at = PanelPlace(
        opening=numbers["Wo"], low=numbers["kp"], high=high, under=numbers["hu"],
        back=place.given("back", given("23 5/16" if inch else "581.5", unit)),
        beside=(PanelEdges("drawers", numbers["kp"], high),), hinge=changes.get("hinge"),
    )  # fmt: skip
    base = replace(case_spec(unit, kind="base"), key="base")
    spec = panel_spec(base, KEY, "panel of the dishwasher", panel_sheet(unit, **changes))
    return build_panel(made, spec, at)
