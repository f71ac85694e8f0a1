"""Numbers of answers that are not taken yet say what bounds them, and so do those against any."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache

import pytest
from tests.builders import length
from tests.jobs import read
from tests.unit.web.test_layout_routes import ROOM

from casewright.dims import Measure, parts_of, shop_text
from casewright.job.heights import RoomHeights, room_heights
from casewright.job.hindrances import height_hindrances, island_hindrances, run_hindrances
from casewright.job.island_layouts import IslandLayout, island_layouts
from casewright.job.layouts import RunLayout, layouts
from casewright.job.numbers import chain_with
from casewright.job.reasons import reasons
from casewright.room.build import build
from casewright.room.model import Room


@cache
def _room(text: str = ROOM) -> Room:
    return build(read(text))


def _run(text: str = ROOM) -> RunLayout:
    return next(layouts(_room(text), only="below"))


def _island(text: str = ROOM) -> IslandLayout:
    return next(island_layouts(_room(text)))


def _heights() -> RoomHeights:
    found = room_heights(_room())
    assert found is not None
    return found


def _lengths(*sentences: str) -> list[Measure]:
    return [part for each in sentences for part in parts_of(each) if isinstance(part, Measure)]


def _answers(room: Room, sentences: Iterable[str]) -> None:
    """Each length leads to a number of its size."""
    told = _lengths(*sentences)
    assert told
    ways = {tuple(each.path.split(".")[:3]): each.path for each in told}
    chains = [chain_with(room, path).nodes for path in ways.values()]
    for each in told:
        dim = next(nodes[each.path] for nodes in chains if each.path in nodes)
        assert each.value == dim.value
        assert each.text == shop_text(dim.value, "in")


def test_every_length_of_an_answer_leads_to_its_number() -> None:
    """Of a run, of an island and of the heights: sizes, and what they trade."""
    run, island, heights = _run(), _island(), _heights()
    told = [each for answer in run.answers for each in (*run.widths(answer), *answer.trade)]
    for number, trade in enumerate(island.trades, start=1):
        told += [*island.sizes(number), *trade]
    for height in heights.answers:
        told += [*heights.sizes(height), *height.trade]
    _answers(_room(), [*told, heights.bound])


def test_widths_and_the_filler_close_the_wall() -> None:
    """The filler is what the rest leaves of 70 in; an open width rests on the given one."""
    for number in range(1, len(_run().answers) + 1):
        own = f"layout.run.below.answer_{number}"
        nodes = chain_with(_room(), own).nodes
        names = ("pots", "sink", "left_filler", "right_filler")
        parts = [nodes[path] for name in names if (path := f"{own}.{name}") in nodes]
        given = nodes["sink.wanted_width"]
        whole = [dim.value for dim in parts] + ([] if f"{own}.sink" in nodes else [given.value])
        assert sum(whole) == length("70")
        pots = reasons(_room(), f"{own}.pots")
        assert pots[0].origin is not None
        assert "bound by 70 from the wall's left end to passage" in pots[0].origin.note
        walked = {node.path for node in pots}
        assert {"sink.wanted_width", "survey.wall.north.fixed.passage.left"} <= walked


def test_heights_close_by_what_is_left() -> None:
    """All parts of an answer together are the clear height, which is walked to its readings."""
    heights = _heights()
    for number, answer in enumerate(heights.answers, start=1):
        told = _lengths(*heights.sizes(answer))
        assert sum(each.value for each in told) == heights.clear.value
        last = reasons(_room(), f"layout.room.heights.answer_{number}.open_above")
        assert {"survey.clear", "survey.wall.north.station_1.down"} <= {node.path for node in last}


def test_what_stands_against_a_run_is_a_difference() -> None:
    """A sink of 36, one case of 36 at the most and fillers do not fill 98 in."""
    text = ROOM.replace("left = 70", "left = 98")
    found = next(run_hindrances(_run(text)))
    _answers(_room(text), (found.what, *found.reliefs))
    off, *rest = reasons(_room(text), "layout.run.below.over_1")
    by_name = {node.path.rpartition(".")[2]: node.wanted for node in rest}
    assert off.wanted == by_name["there_1"] - by_name["asked_1"]
    assert {"sink.wanted_width", "layout.widest_case"} <= {node.path for node in rest}


def test_what_stands_against_an_island_leads_to_its_numbers() -> None:
    """An aisle that the room does not have."""
    text = ROOM.replace("off = [42, 48]", "off = [120, 130]")
    for each in island_hindrances(_island(text)):
        _answers(_room(text), (each.what, *each.reliefs))


@pytest.mark.parametrize(("up", "words"), [("31", "short"), ("130", "left over")])
def test_what_stands_against_heights_leads_to_its_numbers(up: str, words: str) -> None:
    """A ceiling that is too low for the least of all, and one too high for the most."""
    text = ROOM.replace('up = "56 1/8"', f"up = {up}").replace("up = 56 }", f"up = {up} }}")
    found = room_heights(_room(text))
    assert found is not None
    for each in height_hindrances(found):
        assert words in each.what
        _answers(_room(text), (each.what, *each.reliefs))


def test_a_path_that_no_answer_has_is_told() -> None:
    """As any other that is not there."""
    for path in ("layout.run.below.answer_9.pots", "layout.run.nothing.x", "layout.", "layout"):
        assert path not in chain_with(_room(), path).nodes
