"""Places where the code asks for a category of glass: IRC R308.4, by secondary copies."""

from __future__ import annotations

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import glass_beside

from casewright.findings import Severity


@pytest.mark.parametrize(("door", "asked"), [(40, True), (56, True), (64, False)])
def test_within_24_in_of_a_door(door: int, *, asked: bool) -> None:
    """The pane of the right door ends some 2 in before the case does, at 34."""
    told = found_in("safety glass", glass_beside(door))
    assert bool(told) == asked
    assert all(finding.limit == "category I" for finding in told)


def test_a_pane_that_begins_60_in_up_is_passed_over() -> None:
    """Its frame takes 2 1/4 in: hung at 58 it begins at 60 1/4, hung at 54 at 56 1/4."""
    assert found_in("safety glass", glass_beside(40))
    assert not found_in("safety glass", glass_beside(40, bottom=58))


@pytest.mark.parametrize(
    ("height", "bottom", "asked"),
    [(60, 14, True), (60, 18, False), (20, 14, False)],
)
def test_a_wide_pane_low_down(height: int, bottom: int, *, asked: bool) -> None:
    """Over 9 sq ft, from under 18 to over 36 in: two leaves of 30, their panes 25 1/2 wide."""
    told = found_in("safety glass", glass_beside(110, width=60, height=height, bottom=bottom))
    assert [finding.limit for finding in told] == ["category II"] * asked


def test_plastic_there_is_a_note_and_wants_the_mark_of_its_own_test() -> None:
    """Approved rigid plastic is safety glazing too (IRC R308, by a secondary copy)."""
    glass, plastic = (found_in("safety glass", glass_beside(40, glazing=stock))[0]
                      for stock in ("glass", "acrylic"))  # fmt: skip
    assert (glass.severity, plastic.severity) == (Severity.CARE, Severity.NOTE)
    assert "this plastic" in plastic.remedies[0]
    assert not any("instead of glass" in way for way in plastic.remedies)


def test_how_far_it_must_go_from_the_door_is_told() -> None:
    """24 in less what lies between: the pane's edge is some 2 1/4 in inside the case."""
    near, far = (found_in("safety glass", glass_beside(door))[0] for door in (40, 50))
    words = [each.remedies[1] for each in (near, far)]
    assert all("farther from" in each for each in words)
    assert words[0] != words[1]
