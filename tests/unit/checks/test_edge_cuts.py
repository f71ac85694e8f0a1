"""Grooves in edges are judged by the width that they are cut into."""

from __future__ import annotations

import pytest
from tests.builders import PANEL, Unit, given
from tests.unit.checks.rooms import found_in, room_of


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_groove_for_a_panel_is_deep_in_the_width_not_in_the_thickness(unit: Unit) -> None:
    """11 mm of a stile of 65: half of its thickness of 19 does not matter."""
    width = "18" if unit == "in" else "450"
    assert found_in("cut depth", room_of(unit=unit, width=width, front=PANEL)) == []


def test_a_groove_over_half_the_width_is_told() -> None:
    """1 1/4 in of 2 1/4, were the cups moved out of its way."""
    deep = {"tongue": given("1"), "tongue_relief": given("1/4"), "stile": given("4"),
            "rail": given("2 1/4")}  # fmt: skip
    found = found_in("cut depth", room_of(width="20", front=PANEL, overrides=deep))
    assert {finding.path.rpartition(".")[0].rpartition(".")[2] for finding in found} == {
        "rail_bottom", "rail_top",
    }  # fmt: skip
