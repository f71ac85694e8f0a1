"""Bodies of hinges and slides in one case."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.unit.checks.rooms import found_in, only_case, with_hinge_moved

REACH = Fraction(30) + Fraction(45, 2)
"""Half a hinge and half a slide of 45 mm: where they begin to touch (common practice) [mm]."""


@pytest.mark.parametrize("up", ["0", "1/2", "1", "2", "3", "4", "4 1/2", "6"])
def test_a_hinge_and_a_slide_meet_within_half_of_both(up: str) -> None:
    """The slide's line is so far over the box's lower edge as its sheet says."""
    room = with_hinge_moved(up)
    case = only_case(room)
    hinge = case.doors[0].hinges[0].height.value
    line = room.spec.hardware.slide.line.value
    near = any(abs(hinge - each.y.value - line) < REACH for each in case.drawers)
    told = found_in("hardware meets", room)
    assert bool(told) == near
    assert all(finding.path == "base.door_left.hinge_1" for finding in told)
