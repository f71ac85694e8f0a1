"""What is out of reach from a wheelchair, against the accessible-design standard."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import galley, reached

UPPERS = "".join(f'[case.u{n}]\nkind = "wall"\nwidth = 36\nheight = 36\n' for n in range(3))
SINK = '[case.s]\nkind = "base"\nwidth = 33\nsink = true\nheight = "34 1/2"\n'


@pytest.mark.parametrize(("height", "told"), [("32 1/2", False), ("32 9/16", True)])
def test_a_counter_of_34_at_most(height: str, told: bool) -> None:
    """2010 ADA Standards, 804.3: 34 in at most, 30 in wide; 1 1/2 in of counter."""
    assert bool(found_in("accessible reach", reached(height))) == told


def test_half_of_the_shelf_space_is_to_be_in_reach() -> None:
    """804.5: shelves of wall cases at 54 and higher are over 48 in."""
    [found] = found_in("accessible reach", reached("32 1/2", more=UPPERS))
    assert found.limit == "50 in 100"
    assert found.path == "u0"


def test_a_sink_of_34_at_most() -> None:
    """606.3; the base beside it is low enough to work at."""
    found = found_in("accessible reach", reached("32 1/2", more=SINK))
    assert [each.measured for each in found if each.path == "s" and each.limit == '34"'] == ['36"']


def test_nothing_is_told_unless_it_is_asked_for() -> None:
    """Most jobs do not name it."""
    assert not found_in("accessible reach", reached("34 1/2", accessible="false", more=UPPERS))


def test_an_aisle_of_60_where_a_kitchen_closes_in_a_u() -> None:
    """804.2.2, against 42 in of the planning guidelines."""
    room = galley("92")
    assert not found_in("work aisle", room)
    wheeled = replace(room, spec=replace(room.spec, accessible=True))
    [found] = found_in("work aisle", wheeled)
    assert found.limit == '60"'
