"""Fronts beside a corner, and what stands out from the wall round it; by hand."""

from __future__ import annotations

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import drawers_beside, round_corner

from casewright.findings import Severity

DOORS = 'front = "slab"'


@pytest.mark.parametrize(
    ("wide", "struck"),
    # Reveal 1/16; casing 3/4 and 1/8 of air: a filler of 13/16 keeps the front clear.
    [("36 3/4", True), ("36 13/16", False), ("37", False)],
)
def test_a_drawer_passes_a_casing_by_an_eighth(wide: str, *, struck: bool) -> None:
    """Common practice."""
    assert bool(found_in("opens beside", drawers_beside(wide))) == struck


def test_what_lies_past_the_pulled_drawer_or_behind_its_front_is_passed_over() -> None:
    """A slide of 20 in or less from a front 24 out of the corner comes no farther than 46."""
    assert found_in("opens beside", drawers_beside("36 1/2", at=40))
    assert not found_in("opens beside", drawers_beside("36 1/2", at=50))


def test_of_what_was_not_measured_nothing_is_said() -> None:
    """An appliance that nobody measured, and one that stands out 25 in."""
    assert not found_in("opens beside", drawers_beside("39", "appliance"))
    [found] = found_in("opens beside", drawers_beside("39", "appliance", more="out = 25"))
    assert 'stands out 25"' in found.says


def test_a_door_hinged_at_the_corner_brings_its_pull_to_the_casing() -> None:
    """Its pull stands out farther than the front: 2 in of filler are too few, 3 1/4 enough."""
    assert found_in("opens beside", drawers_beside("37 1/2", front=DOORS))
    assert not found_in("opens beside", drawers_beside("39 1/4", front=DOORS))


def test_a_drawer_comes_out_no_farther_than_what_stands_before_it() -> None:
    """A case round the corner stands before the right edge of the drawers."""
    room = round_corner("80", inner='"slab"\ndrawers = 3')
    stopped = [f for f in found_in("inside corner", room) if f.path.startswith("a.drawer")]
    assert [finding.severity for finding in stopped] == [Severity.STOP]
    assert "comes out" in stopped[0].says
