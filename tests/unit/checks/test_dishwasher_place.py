"""Where a dishwasher stands, against planning guidelines read in a secondary copy."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import washing


@pytest.mark.parametrize(("between", "told"), [(36, False), (37, True)])
def test_no_more_than_36_in_from_the_sink(between: int, told: bool) -> None:
    """The sink's own run begins where the first one ends."""
    found = found_in("dishwasher place", washing(between))
    assert [each.measured for each in found] == ([f'{between}"'] if told else [])


def test_a_sink_on_another_wall_is_told() -> None:
    """Dishes drip over the floor all the way."""
    [found] = found_in("dishwasher place", washing(30, sink_on="e"))
    assert "another wall" in found.says


@pytest.mark.parametrize(("side", "told"), [("left", False), ("right", True)])
def test_21_in_to_stand_beside_a_corner(side: str, told: bool) -> None:
    """A base of 24 stands at its left, one of 20 at its right."""
    room = washing(20)
    run = room.runs[0]
    spec = replace(run.spec, **{side: "corner"})  # type: ignore[arg-type]
    cornered = replace(room, runs=(replace(run, spec=spec), *room.runs[1:]))
    found = found_in("dishwasher place", cornered)
    assert [(each.measured, each.limit) for each in found] == ([('20"', '21"')] if told else [])
