"""Lengths of the survey lead to what was read, to usual places, and to what is worked out."""

from __future__ import annotations

import math
import re
from html import unescape

import pytest
from tests.builders import length
from tests.jobs import example, read
from tests.surveyed_room import SURVEYED_ROOM

from casewright.dims import Dim, Measure, parts_of, reading_text, size_text
from casewright.job.numbers import chain_with
from casewright.job.reasons import reasons
from casewright.outputs.html import section_html
from casewright.packet.survey_pages import survey_sections
from casewright.room.build import build
from casewright.room.model import Room
from casewright.survey.form import FORM

ODD = """\
format = 1
unit = "in"

[wall.west]
title = "west wall"
width = ["100", "99 7/8"]

[[wall.west.hollows]]
along = 10
height = 81
off = "1/8"

[wall.west.fixed.window]
kind = "window"
left = 20
width = 30
right = 47

[wall.north]

[corner.nw]
walls = ["west", "north"]
triangle = { left = 48, right = 36, across = 61 }

[case.tins]
kind = "wall"
width = 24
"""
"""Segments of 20 + 30 + 47 in on a wall of 99 7/8 in, and a corner over 90 degrees."""


def _room(text: str) -> Room:
    return build(read(text))


def _told(room: Room) -> list[tuple[str, Dim]]:
    """Every length of the survey's page as it is told, with the number that it leads to."""
    page = "".join(section_html(each, lambda target: target) for each in survey_sections(room))
    found = re.findall(r'<data class="measure" value="([^"]*)" data-path="([^"]+)"', page)
    form = chain_with(room, FORM).nodes
    return [(unescape(text), form[path]) for text, path in found]


@pytest.mark.parametrize("text", [SURVEYED_ROOM, example("kitchen"), ODD])
def test_each_length_of_the_survey_leads_to_its_number(text: str) -> None:
    """Readings, the places they were taken at, usual places, what is worked out: as it says."""
    told = _told(_room(text))
    assert told
    for said, dim in told:
        size = abs(dim.value)
        calliper = reading_text(size, "in", calliper=True)
        assert said.strip("~") in {
            each.strip("~") for each in (size_text(size, "in"), reading_text(size, "in"), calliper)
        }


def test_a_place_leads_to_its_own_line_of_the_file() -> None:
    """Where the table is written on several lines, not to the line of its reading."""
    room = _room(ODD)
    lines = {
        name: reasons(room, f"survey.wall.west.{path}")[0].origin
        for name, path in (("along", "hollow_1.along"), ("off", "hollow_1"))
    }
    assert [origin.where for origin in lines.values() if origin is not None] == [
        "kitchen.toml line 9", "kitchen.toml line 11",
    ]  # fmt: skip


def test_what_a_further_reading_would_tell_can_be_followed() -> None:
    """Independent readings add as weights, 1 / s^2 (Gauss); the tape's mark strays by a / sqrt 12.

    The uniform law of a mark: JCGM 100:2008, 4.3.7.
    """
    nodes = chain_with(_room(example("kitchen")), f"{FORM}.x").nodes

    def of(name: str) -> float:
        return float(nodes[f"{FORM}.garden.next.{name}"].value)

    strays = math.hypot(of("tape"), 25.4 / 16 / math.sqrt(12))
    assert of("strays") == pytest.approx(strays, abs=1e-5)
    joint = 1 / math.sqrt(1 / of("spread") ** 2 + 1 / strays**2)
    assert of("spread_then") == pytest.approx(joint, abs=1e-5)
    assert abs(of("known_now") - 2 * of("spread")) <= 25.4 / 64
    assert abs(of("known_then") - 2 * joint) <= 25.4 / 64
    assert {dim.path for dim in nodes[f"{FORM}.garden.next.spread"].followed} == {
        *(f"survey.wall.garden.station_{n}.down" for n in range(1, 8)),
        "survey.wall.garden.station_1.whole",
    }


def test_how_far_a_wall_runs_off_can_be_followed() -> None:
    """24 in over the tangent of the angle, by the law of cosines: 48, 36 and 61 across."""
    found = reasons(_room(ODD), f"{FORM}.corner.nw.off_exact")
    angle = math.acos((48**2 + 36**2 - 61**2) / (2 * 48 * 36))
    assert float(found[0].wanted) == pytest.approx(24 * 25.4 / abs(math.tan(angle)), abs=1e-4)
    walked = {node.path for node in found}
    assert {
        f"survey.corner.nw.{name}" for name in ("along_left", "along_right", "across")
    } <= walked


def test_what_a_doubt_works_out_stands_on_the_chain() -> None:
    """20 + 30 + 47 = 97, 2 7/8 less than 99 7/8."""
    room = _room(ODD)
    [doubt] = room.survey.doubts
    assert "of west wall do not sum" in doubt.says
    told = {part.path.removeprefix("survey.wall.west."): part
            for part in parts_of(doubt.says) if isinstance(part, Measure)}  # fmt: skip
    assert told["fixed.window.right.sum"].value == length("97")
    assert told["fixed.window.right.off"].value == length("2 7/8")
    walked = [node.path for node in reasons(room, "survey.wall.west.fixed.window.right.off")]
    assert "survey.wall.west.width_2" in walked
    assert "survey.wall.west.fixed.window.left" in walked
