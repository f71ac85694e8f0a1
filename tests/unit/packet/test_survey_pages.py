"""The survey form: every reading in its place, a blank for each that is missing."""

from __future__ import annotations

from functools import cache
from io import BytesIO

import pytest
from pypdf import PdfReader
from tests.jobs import FIVE_LINES, example, read
from tests.surveyed_room import SURVEYED_ROOM

from casewright.drawing import clashes, plot
from casewright.drawing.wall_elevation import thing_box, wall_scene
from casewright.job.surveying import survey_files, survey_sheets, walls_to_survey
from casewright.outputs.blocks import Beside, Block, Callout, Figure, Keep, Paragraph, Table
from casewright.outputs.document import Document, anchors, check_links
from casewright.outputs.inlines import Blank, rich_text
from casewright.packet.survey_pages import survey_document, survey_sections
from casewright.packet.words import unfold
from casewright.room.build import build
from casewright.room.model import Room
from casewright.sources import INCH
from casewright.survey.form import survey_form

SWAPPED = SURVEYED_ROOM.replace('"132 3/8"', '"123 3/8"')


@cache
def _room(text: str) -> Room:
    return build(read(text))


def _document(text: str) -> Document:
    room = _room(text)
    return survey_document(room, walls_to_survey(room), "0" * 12)


def _tables(blocks: tuple[Block, ...]) -> list[Table]:
    found: list[Table] = []
    for block in blocks:
        if isinstance(block, Table):
            found.append(block)
        elif isinstance(block, Beside):
            for column in block.columns:
                found += _tables(column)
        elif isinstance(block, Keep):
            found += _tables(block.blocks)
    return found


def _blanks(table: Table) -> int:
    cells = [cell for row in table.rows for cell in row.cells]
    return sum(isinstance(item, Blank) for cell in cells for item in unfold(cell))


def test_a_page_for_each_wall_and_one_for_corners() -> None:
    """In the order of the file; every link arrives."""
    document = _document(SURVEYED_ROOM)
    titles = [section.title for section in document.sections]
    assert titles == ["window wall", "range", "Corners and the way in"]
    check_links(document)


def test_what_was_read_stands_in_its_place_and_the_rest_is_blank() -> None:
    """Of the window wall two usual widths at the front are missing, and the height of one read."""
    widths, stations, things = _tables(_document(SURVEYED_ROOM).sections[0].blocks)
    assert [rich_text(row.cells[3]).split(" ±")[0] for row in widths.rows][:3] == [
        "100 1/4",
        "100 3/8",
        "100 5/8",
    ]
    assert _blanks(widths) == 3
    assert rich_text(stations.rows[0].cells[2]) == "40"
    assert rich_text(things.rows[0].cells[2]) == "30 1/4"
    told = [rich_text(row.cells[3]) for row in widths.rows]
    assert "laser" in " ".join(told)
    assert told[1] == '100 3/8 ± 1/8"'


def test_a_room_without_a_survey_gets_a_bare_form() -> None:
    """Six widths, floor and ceiling at each station, three lines of things: all blank."""
    document = _document(FIVE_LINES)
    widths, stations, _ = _tables(document.sections[0].blocks)
    assert _blanks(widths) == 6
    assert _blanks(stations) == 3 * len(stations.rows) == 3 * 6


def test_doubts_stand_above_the_drawing() -> None:
    """181 among 118s is told where one fills in the form."""
    callouts = [b for b in _document(SWAPPED).sections[1].blocks if isinstance(b, Callout)]
    assert [callout.sign for callout in callouts] == ["ask", "measure first"]
    assert "two figures swapped" in rich_text(callouts[0].text)


@pytest.mark.parametrize("text", [SURVEYED_ROOM, FIVE_LINES, example("garden_room")])
def test_no_lettering_of_the_drawing_lies_over_another(text: str) -> None:
    """Numbers and marks keep clear of each other at the scale of the page."""
    room = _room(text)
    for wall in walls_to_survey(room):
        scene = wall_scene(survey_form(wall, room.spec.unit), room.spec.unit)
        for scale in (32, 48, 64):
            assert not clashes(plot(scene, scale).groups)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_usual_wall_takes_one_page(paper: str) -> None:
    """On either paper, so that it can be pinned up whole."""
    text = SURVEYED_ROOM.replace('unit = "in"', f'unit = "in"\npaper = "{paper}"')
    reader = PdfReader(BytesIO(survey_files(_room(text))["survey.pdf"]))
    assert len(reader.pages) == 3
    words = reader.pages[0].extract_text()
    assert "window over the sink" in words
    assert "Read next" in words


def test_a_wall_with_much_on_it_takes_one_page() -> None:
    """Eight stations, three things, ten studs: the next page belongs to the next wall."""
    reader = PdfReader(BytesIO(survey_files(_room(example("kitchen")))["survey.pdf"]))
    assert "north wall" in reader.pages[1].extract_text().splitlines()[0]


def test_what_is_missing_is_told_in_words() -> None:
    """Each wall by itself, with the further reading that would tell most."""
    window, other = survey_sheets(_room(SURVEYED_ROOM))
    assert any("at the front" in words for words in window.missing)
    assert "its studs" in other.missing
    assert "its studs" not in window.missing
    assert window.next_reading
    assert "known only by eye" in other.next_reading


def test_a_width_in_doubt_is_not_told_as_what_counts() -> None:
    """Nothing is built on it, on paper either."""
    sheet = survey_sheets(_room(SWAPPED))[1]
    assert sheet.counts[0] == "width in doubt"
    assert sheet.doubts


def test_the_packet_has_the_walls_as_measured() -> None:
    """Where it is hung from: studs, outlets and blanks at hand; nothing without a survey."""
    [section] = survey_sections(_room(SURVEYED_ROOM))
    assert "wall:window" in anchors(section)
    assert len(_tables(section.blocks)) == 2 * 3 + 2
    assert survey_sections(_room(FIVE_LINES)) == ()


HALF = """\
format = 1
unit = "in"

[wall.west]
width = ["118 1/4"]
stations = [{ along = 0, down = "40 1/4", up = "55 3/4" }]
studs = ["10", "26"]
hollows = [{ along = 10, height = 81, off = "1/8" }]

[wall.west.fixed.soffit]
kind = "soffit"
left = 40
width = 60
bottom = 84

[wall.west.fixed.window]
kind = "window"
left = 50
width = 30

[wall.west.fixed.larder]
kind = "tall case"
left = 0
width = 24
height = 84
built = false

[wall.west.fixed.back_door]
kind = "door"
right = 0
width = 12

[wall.west.fixed.worktop]
kind = "counter"
left = 60
width = 30
tops = [{ along = 62, down = "4 1/8" }]

[case.tins]
kind = "wall"
width = 24
"""
"""A wall of which half was read."""


def test_a_wall_half_read_has_its_picture_and_its_blanks() -> None:
    """Hinges, hollows at the other stud, two more tops: blank; the hollow and the top as read."""
    section = _document(HALF).sections[0]
    assert any(isinstance(block, Figure) for block in section.blocks)
    lines = {rich_text(b.text): b.text for b in section.blocks if isinstance(b, Paragraph)}
    flat = next(text for words, text in lines.items() if words.startswith("Flat"))
    assert "1/8 at 10" in rich_text(flat)
    assert sum(isinstance(item, Blank) for item in unfold(flat)) == 1
    tops = next(text for words, text in lines.items() if words.startswith("worktop"))
    assert "4 1/8 at 62" in rich_text(tops)
    assert sum(isinstance(item, Blank) for item in unfold(tops)) == 4
    door = next(
        row.cells[1] for row in _tables(section.blocks)[2].rows
        if "door" in rich_text(row.cells[1])
    )  # fmt: skip
    assert any(isinstance(item, Blank) for item in unfold(door))


def test_what_a_thing_has_not_is_not_asked_for() -> None:
    """A soffit ends at the ceiling; what stands on the floor ends at its height."""
    [sheet] = survey_sheets(_room(HALF))
    told = " ".join(sheet.missing)
    assert "soffit" not in told
    assert "larder" not in told
    assert "how high window reaches" in told
    assert "how high back door reaches" in told
    assert "probed" in told


def test_things_are_drawn_on_their_wall() -> None:
    """From its lower edge to the ceiling at 96 in; 84 in from the floor; nothing beyond the wall.

    By hand: 40 1/4 down and 55 3/4 up.
    """
    [wall] = walls_to_survey(_room(HALF))
    ceiling = 96 * INCH
    boxes = {thing.spec.key: thing_box(thing, ceiling) for thing in wall.things}
    assert boxes["soffit"][2:] == (84 * INCH, ceiling)
    assert boxes["larder"][2:] == (0 * INCH, 84 * INCH)
    assert all(0 <= low < high <= ceiling for _, _, low, high in boxes.values())
