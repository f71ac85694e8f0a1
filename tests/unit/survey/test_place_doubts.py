"""Places on a wall that cannot all be right are told before anything is built on them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.unit.survey.rooms import read, station, surveyed, thing, widths

from casewright.survey.doubts import Doubt
from casewright.survey.place_doubts import place_doubts
from casewright.survey.specs import FixedThing, Stud, TopReading, WallSpec


def _doubts(**spec: object) -> list[Doubt]:
    wall = WallSpec("w", "sink wall", widths=widths("120"), **spec)  # type: ignore[arg-type]
    return list(place_doubts(surveyed(wall), "in"))


def _studs(*places: str) -> tuple[Stud, ...]:
    return tuple(Stud(read(place)) for place in places)


def test_a_stud_found_twice_is_told() -> None:
    """Dressed studs are 1 1/2 in thick (PS 20): two nailed together lie that far apart."""
    [doubt] = _doubts(studs=_studs("4", "20", "21", "36"))
    assert doubt.paths == ("survey.wall.w.stud_2", "survey.wall.w.stud_3")
    assert not _doubts(studs=_studs("4", "20", "21 1/2", "36"))


WINDOW = thing(left="30", width="30", bottom="42", height="40")


@pytest.mark.parametrize(
    ("other", "is_told"),
    [
        ({"left": "50", "width": "30", "bottom": "42", "height": "40"}, True),
        ({"left": "60 1/2", "width": "30", "bottom": "42", "height": "40"}, False),
        ({"left": "50", "width": "30", "bottom": "83", "height": "10"}, False),
        ({"left": "50", "width": "30"}, False),
    ],
)
def test_two_windows_in_one_place_are_told(other: dict[str, str], is_told: bool) -> None:
    """Beside or over each other they may be; what was not read yet is not judged."""
    found = _doubts(things=(WINDOW, thing("second", **other)))
    assert bool(found) is is_told


def test_a_neighbour_to_be_built_may_stand_over_a_door_that_goes() -> None:
    """What is not there yet is a plan, no reading."""
    plan = replace(WINDOW, key="larder", kind="tall case", built=False)
    assert not _doubts(things=(WINDOW, plan))


def test_a_window_through_the_ceiling_is_told_unless_it_is_sure() -> None:
    """40 down and 56 up: 96, and 82 + 42 in are 124."""
    heights = (station(0, "40", "56"), station(100, "40", "56"))
    tall = thing(left="30", width="30", bottom="82", height="42")
    [doubt] = _doubts(things=(tall,), stations=heights)
    assert set(doubt.paths) == {f"survey.wall.w.fixed.window.{n}" for n in ("bottom", "height")}
    sure = replace(tall, bottom=read("82", sure=True), height=read("42", sure=True))
    assert not _doubts(things=(sure,), stations=heights)
    sloping = (heights[0], station(100, "40", "90"))
    assert not _doubts(things=(tall,), stations=sloping)


def test_a_height_read_beside_its_counter_is_told() -> None:
    """Within an inch of its ends it may be."""
    tops = tuple(TopReading(read(place).value, read("4")) for place in ("20", "59 1/2", "70"))
    counter = FixedThing("c", "counter", "counter", left=read("60"), width=read("30"), tops=tops)
    [doubt] = _doubts(things=(counter,))
    assert doubt.paths == ("survey.wall.w.fixed.c.top_1",)
