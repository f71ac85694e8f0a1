"""Whatever is done to the survey of a job file: a located message or a finding."""

from __future__ import annotations

import copy
from typing import Any

import tomlkit
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.jobs import read
from tests.odd_files import ODD, holder_of, is_told, spots
from tests.surveyed_room import BESIDE_WINDOW, SURVEYED_ROOM

from casewright.errors import JobFileError
from casewright.job.layouts import layouts
from casewright.job.surveying import survey_sheets, walls_to_survey
from casewright.outputs.document import check_links
from casewright.packet.survey_pages import survey_document
from casewright.room.build import build

_DATA: dict[str, Any] = tomlkit.parse(SURVEYED_ROOM + BESIDE_WINDOW).unwrap()
_MEASURED = [path for path in spots(_DATA) if path[0] in ("wall", "corner", "way_in", "run")]
_PLAUSIBLE = st.one_of(
    st.integers(0, 160),
    st.sampled_from([[], {}, True, "left", "back", "window", "60 1/2", ["100", "181"]]),
    st.lists(st.integers(0, 160), max_size=5),
)
_FEW = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@_FEW
@given(st.lists(st.sampled_from(_MEASURED), min_size=1, max_size=3), st.data())
def test_a_word_of_the_survey_deleted_or_made_odd(
    paths: list[tuple[Any, ...]], draw: st.DataObject
) -> None:
    """Up to three of its words are gone or hold a value of another kind."""
    changed = copy.deepcopy(_DATA)
    for path in paths:
        if path not in spots(changed):
            continue
        holder = holder_of(changed, path)
        if draw.draw(st.booleans()):
            del holder[path[-1]]
        else:
            holder[path[-1]] = copy.deepcopy(draw.draw(ODD))
    is_told(tomlkit.dumps(changed))


@_FEW
@given(st.integers(0, len(SURVEYED_ROOM) - 1), st.sampled_from(["", '"', "[", "=", "7", "é", "}"]))
def test_a_character_of_the_survey_changed(place: int, slip: str) -> None:
    """A slip of the fingers anywhere in the file."""
    is_told(SURVEYED_ROOM[:place] + slip + SURVEYED_ROOM[place + 1 :])


@_FEW
@given(st.lists(st.fractions(0, 620, max_denominator=16), min_size=4, max_size=4))
def test_readings_of_any_size(sizes: list[Any]) -> None:
    """A triangle and a window of any size: they close, or it is said where they do not."""
    left, right, across, width = (f'"{each.numerator}/{each.denominator}"' for each in sizes)
    text = SURVEYED_ROOM.replace(
        'left = 36, right = 48, across = "60 1/4"',
        f"left = {left}, right = {right}, across = {across}",
    ).replace('{ read = 40, tool = "steel rule" }', width)
    is_told(text)


@_FEW
@given(st.lists(st.sampled_from(_MEASURED), min_size=1, max_size=3), st.data())
def test_whatever_is_understood_can_be_printed(
    paths: list[tuple[Any, ...]], draw: st.DataObject
) -> None:
    """The form of any room that makes sense is drawn; its runs are laid out or said not to fit."""
    changed = copy.deepcopy(_DATA)
    for path in paths:
        if path in spots(changed):
            holder = holder_of(changed, path)
            if draw.draw(st.booleans()):
                del holder[path[-1]]
            else:
                holder[path[-1]] = draw.draw(_PLAUSIBLE)
    try:
        room = build(read(tomlkit.dumps(changed)))
    except JobFileError:
        return
    document = survey_document(room, walls_to_survey(room), "0" * 12)
    check_links(document)
    assert len(document.sections) == 1 + len(walls_to_survey(room))
    assert all(sheet.title for sheet in survey_sheets(room))
    for run in layouts(room):
        assert bool(run.answers) != bool(run.conflicts or run.in_it or run.corners)
