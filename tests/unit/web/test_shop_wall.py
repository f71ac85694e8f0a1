"""What a phone tells at the wall: the marks, and what is off limits as on the sheet."""

from __future__ import annotations

from tests.unit.install.test_hanging import WALL, hung_room

from casewright.drawing.choice import Choice
from casewright.drawing.lift_view import lift_scene, wall_key
from casewright.drawing.notes import Text
from casewright.web.shop_schema import ShopRow
from casewright.web.shop_wall import hanging_cards

_HIGH = '[wall.north.fixed.{key}]\nkind = "outlet"\ncentre = {at}\nbottom = 78\n'
_TWO = WALL + _HIGH.format(key="left", at=12) + _HIGH.format(key="right", at=44)


def _told(rows: tuple[ShopRow, ...], label: str) -> str:
    return " | ".join(row.model_dump_json() for row in rows if row.label == label)


def test_where_cables_and_pipes_run_is_among_the_marks() -> None:
    """The outlet at 53 in, and two as high as the nailers, with what lies between them."""
    room, day = hung_room(_TWO)
    marks = next(card for card in hanging_cards(room, day) if card.id == "hang.marks.north")
    barred, sideways = _told(marks.rows, "no screw"), _told(marks.rows, "cable")
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
    """As on paper: a size, up or down, and no minus; at the line itself nothing more."""
    room, day = hung_room(WALL)
    marks = next(card for card in hanging_cards(room, day) if card.id == "hang.marks.north")
    told = {row.what[0]: row.model_dump_json() for row in marks.rows if row.label == "up"}
    assert all((" up" in each) != (" down" in each) for says, each in told.items()
               if says != "level line")  # fmt: skip
    assert "from the level line" not in told["level line"]
    assert '"text":"-' not in " ".join(told.values())
