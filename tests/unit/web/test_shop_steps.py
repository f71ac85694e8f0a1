"""Steps on the phone: each is ticked off by itself, with all that its card must tell."""

from __future__ import annotations

import json
from functools import cache

import pytest
from tests.jobs import example, read

from casewright.breakdown import Desk
from casewright.install.hanging import hanging
from casewright.packet.hold_marks import HoldMarks
from casewright.resolve import hold_points
from casewright.room.build import build
from casewright.room.model import Room
from casewright.web.shop_assembly import assembly_cards
from casewright.web.shop_bench import machining_cards
from casewright.web.shop_finish import finishing_cards
from casewright.web.shop_holds import hold_cards
from casewright.web.shop_notes import done_tick
from casewright.web.shop_schema import ShopCard
from casewright.web.shop_wall import hanging_cards


@cache
def _kitchen() -> Room:
    return build(read(example("kitchen")))


@cache
def _cards() -> tuple[ShopCard, ...]:
    room = _kitchen()
    points = hold_points(room)
    return (
        *hold_cards(room, points, ()),
        *machining_cards(room, HoldMarks(room, points)),
        *assembly_cards(room),
        *finishing_cards(room),
        *hanging_cards(room, hanging(room, Desk(room).chain)),
    )


def test_every_card_can_be_ticked_off_or_read() -> None:
    """So that a station can say that all of it is done; no two ticks are one."""
    for card in _cards():
        assert card.ticks or card.readings, card.id
    keys = [tick.key for card in _cards() for tick in card.ticks]
    assert len(set(keys)) == len(keys)


@pytest.mark.parametrize("kind", ["assembled", "finished", "hung"])
def test_every_part_gets_as_far_by_some_tick(kind: str) -> None:
    """Boxes of drawers, finished ends, lids, fillers and trims too: none stays behind."""
    ticked = {
        path for card in _cards() for tick in card.ticks if tick.kind == kind
        for path in tick.parts
    }  # fmt: skip
    room = _kitchen()
    assert {part.path for case in room.boxes for part in case.parts} <= ticked
    if kind != "assembled":  # what a run has of its own is one piece, or two glued at the wall
        assert {part.path for run in room.runs for part in run.own_parts} <= ticked


def test_a_step_told_otherwise_is_another_to_tick() -> None:
    """What was done by other numbers is not done by these."""
    tick = done_tick("step 2 of pots", ("Set the shelf at 11 7/8.",))
    assert tick.key == done_tick("step 2 of pots", ("Set the shelf at 11 7/8.",)).key
    assert tick.key != done_tick("step 2 of pots", ("Set the shelf at 12.",)).key


def test_cautions_are_told_in_full_on_the_card_of_their_step() -> None:
    """One card is seen at a time: none points to another for what can hurt."""
    steps = [card for card in _cards() if card.station == "assemble"]
    driven = [card for card in steps if "drive the pocket screws" in card.lead]
    assert len(driven) > 1
    assert not any("as\u00a0at\u00a0step" in card.model_dump_json() for card in steps)
    assert all("Clamp the joint before driving" in card.model_dump_json() for card in driven)


def test_a_reading_is_taken_with_the_tool_that_its_card_names() -> None:
    """A hold point is read closer than a tape reads."""
    points = [card for card in _cards() if card.id.startswith("holds.point.")]
    assert points
    for card in points:
        for reading in card.readings:
            assert f"with a {reading.tool}" in card.title


def test_a_box_of_an_island_stands_on_its_ladders() -> None:
    """It is fastened to no wall, and its corners are told before it is set."""
    ids = [card.id for card in _cards()]
    (corners,) = [card for card in _cards() if card.id.startswith("hang.setting") and
                  card.lead == "Its corners"]  # fmt: skip
    for key in _kitchen().in_islands:
        (card,) = [each for each in _cards() if each.id == f"hang.place.{key}"]
        assert "wall" not in json.dumps([card.model_dump()["lines"], card.model_dump()["over"]])
        assert ids.index(corners.id) < ids.index(card.id)
