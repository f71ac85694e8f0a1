"""What a phone tells at the wall: the marks, and what is off limits as on the sheet."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from tests.unit.install.test_hanging import WALL, hung_room

from casewright.drawing.choice import Choice
from casewright.drawing.lift_view import lift_scene, wall_key
from casewright.drawing.notes import Text
from casewright.drawing.running import Running
from casewright.drawing.wall_stretch import stretch_scene
from casewright.install.hanging import Hanging
from casewright.install.stretches import stretches
from casewright.room.model import Room
from casewright.web.shop_lines import size_text
from casewright.web.shop_schema import ShopCard, ShopRow
from casewright.web.shop_wall import hanging_cards

_HIGH = '[wall.north.fixed.{key}]\nkind = "outlet"\ncentre = {at}\nbottom = 78\n'
_TWO = WALL + _HIGH.format(key="left", at=12) + _HIGH.format(key="right", at=44)


def _told(rows: Sequence[ShopRow], label: str) -> str:
    return " | ".join(row.model_dump_json() for row in rows if row.label == label)


def _cards(room: Room, day: Hanging, begin: str) -> list[ShopCard]:
    return [card for card in hanging_cards(room, day) if card.id.startswith(begin)]


def test_where_cables_and_pipes_run_is_among_the_marks() -> None:
    """The outlet at 53 in, and two as high as the nailers, with what lies between them."""
    room, day = hung_room(_TWO)
    marks = [row for card in _cards(room, day, "hang.marks.north.") for row in card.rows]
    barred, sideways = _told(marks, "no screw"), _told(marks, "cable")
    assert all(name in barred for name in ("kettle", "left", "right"))
    assert "left and right" in sideways
    assert "Circuit off" in sideways


def test_a_screw_at_which_a_cable_may_lie_says_so() -> None:
    """The stud at 20 in lies between the two outlets, and the top nailer as high as they are."""
    room, day = hung_room(_TWO)
    lift = next(card for card in hanging_cards(room, day) if card.id == "hang.lift.cups")
    told = _told(lift.rows, "stud")
    assert told.count("A cable may lie here, between left and right") == 1
    room, day = hung_room(WALL)
    lift = next(card for card in hanging_cards(room, day) if card.id == "hang.lift.cups")
    assert "A cable may lie" not in _told(lift.rows, "stud")


def test_the_picture_of_a_lift_shows_what_is_off_limits_behind_it() -> None:
    """Hatched as on the sheet of the wall; the key beside it shows cases without a word."""

    def hatched(text: str) -> int:
        _, day = hung_room(text)
        hang = day.walls["north"]
        place = next(each for each in hang.places if each.case.key == "cups")
        words = [
            each for each in wall_key(hang, place).elements if isinstance(each, Text | Choice)
        ]
        assert not words
        scene = lift_scene(hang, place, "in")
        return sum(getattr(each, "hatch", None) is not None for each in scene.elements)

    assert hatched(_TWO) > hatched(WALL)


def test_heights_tell_which_way_from_the_level_line() -> None:
    """Large what is set off from it, up or down, and no minus; the line itself from the floor."""
    room, day = hung_room(WALL)
    (marks,) = _cards(room, day, "hang.marks.north.up")
    told = {row.what[0]: row for row in marks.rows}
    line = told.pop("level line")
    assert line.lead == "above the highest floor"
    assert {row.lead for row in told.values()} == {"from the level line"}
    assert {row.label for row in told.values()} == {"up", "down"}
    assert not any(size_text(row.big).startswith("-") for row in told.values())


def test_every_mark_of_a_wall_is_in_one_stretch_and_in_its_picture() -> None:
    """From left to right, none twice; a picture shows its own as figures from the wall's end."""
    _, day = hung_room(_TWO)
    hang = day.walls["north"]
    found = stretches(hang.marks)
    assert [mark for each in found for mark in each.marks] == list(hang.marks)
    assert len(found) > 1
    for before, after in pairwise(found):
        assert before.marks[-1].at.value < before.right == after.left < after.marks[0].at.value
    for each in found:
        shown = {
            stop.measure.value
            for element in stretch_scene(hang, each, "in").elements
            if isinstance(element, Running)
            for stop in element.stops
        }
        assert shown == {mark.at.value for mark in each.marks if mark.at.value}


def test_what_stands_is_shimmed_and_what_hangs_is_not() -> None:
    """Shims of the floor are told at cases that stand on it, and only where there is a gap."""
    room, day = hung_room(WALL)
    hang = day.walls["north"]
    for lift in hang.lifts:
        (card,) = _cards(room, day, f"hang.lift.{lift.case.key}")
        shims = [row for row in card.rows if row.label == "shim"]
        assert not (lift.place.is_hung and shims)
        assert "from the level line" in size_text(card.lines[0])
        assert all(re.search("[1-9]", size_text(row.big)) for row in shims)
    assert any(shim.shim.value for shim in hang.floor_shims)
