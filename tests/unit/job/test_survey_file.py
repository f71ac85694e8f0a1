"""What a job file says of the room, and what it cannot say."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import INCH
from tests.jobs import problem, read
from tests.surveyed_room import BESIDE_WINDOW, SURVEYED_ROOM

from casewright.job.editor_schema import job_schema
from casewright.job.worked import work_out
from casewright.room.on_walls import cases_on_walls


def _changed(old: str, new: str) -> str:
    assert SURVEYED_ROOM.count(old) == 1
    return SURVEYED_ROOM.replace(old, new)


def test_readings_come_with_their_tool_and_how_far_it_strays() -> None:
    """A tape strays 0.5 mm, a laser 0.7, a steel rule 0.2 (common practice), unless it is said."""
    window, _ = read(SURVEYED_ROOM).survey.walls
    sigmas = [each.reading.accuracy.sigma for each in window.widths]
    assert sigmas == [Fraction(1, 2), INCH / 16, Fraction(1, 2), Fraction(7, 10)]
    assert window.widths[1].reading.accuracy.limit == INCH / 8
    width = window.thing("big_window").width
    assert width is not None
    assert width.accuracy.sigma == Fraction(1, 5)
    assert window.widths[3].reading.given.origin.note == "laser"
    assert window.widths[3].depth == "front"


def test_a_tool_of_the_shop_strays_as_the_shop_says() -> None:
    """A worn tape, told once."""
    text = f'{SURVEYED_ROOM}[shop.tool.tape]\nstrays = "1/16"\n'
    assert read(text).survey.walls[0].widths[0].reading.accuracy.sigma == INCH / 16


def test_a_wall_that_leans_out_has_a_lean_below_nothing() -> None:
    """In is towards the room."""
    window, _ = read(SURVEYED_ROOM).survey.walls
    assert [each.lean.value / INCH for each in window.plumbs] == [Fraction(1, 8), Fraction(-1, 4)]


def test_a_run_on_a_surveyed_wall_takes_its_readings() -> None:
    """Base cases: 4 in, 36 in at the back and front, and the one of unknown height; least first.

    100 1/8 governs: the reading at the front.
    """
    room = work_out(read(SURVEYED_ROOM)).room
    assert room.chain.nodes["run.below.wall"].value == 100 * INCH + INCH / 8
    assert room.runs[0].length.value == 100 * INCH + INCH / 8


BESIDE = SURVEYED_ROOM + BESIDE_WINDOW


def test_runs_beside_a_window_stand_between_its_casing_and_the_wall() -> None:
    """To its left 30 1/8, the less of 30 1/4 read and 100 1/8 - 30 - 40.

    Right of it 29 7/8: 100 1/8 less 70 1/4, the more of 30 1/4 + 40 and 100 1/8 - 30.
    """
    worked = work_out(read(BESIDE))
    nodes = worked.room.chain.nodes
    assert nodes["run.left_of_window.wall"].value / INCH == Fraction(241, 8)
    assert nodes["run.beside_window.wall"].value / INCH == Fraction(239, 8)
    [cups] = [each for each in cases_on_walls(worked.room) if each.case.key == "cups"]
    assert cups.left / INCH == Fraction(281, 4)
    in_the_way = [f.path for f in worked.findings if f.rule == "in the way"]
    assert not {"cups", "tins"} & set(in_the_way)


@pytest.mark.parametrize(
    ("new", "want"),
    [
        ('before = "windw"', "did you mean big_window?"),
        ('before = "big_window"\nafter = "outlet"', "swap the two"),
        ('before = "cupboard"', "write bench, big_window, cups, drain, outlet or pots"),
    ],
)
def test_a_run_between_what_is_not_there_is_told(new: str, want: str) -> None:
    """A name that is not on the wall, and two that leave nothing."""
    found = problem(BESIDE.replace('before = "big_window"', new))
    assert want in found.want


def test_parts_wait_for_a_doubtful_width() -> None:
    """A wall read as 100 and as 181 is asked about, and the cases that share it wait."""
    text = _changed('{ read = "100 1/4", height = 4 }', '{ read = "181 1/4", height = 4 }')
    worked = work_out(read(text))
    [asked] = [q for q in worked.questions if q.path == "survey.wall.window.width_1"]
    assert "181" in asked.because
    assert any(path.startswith("pots.") for path in asked.waiting)
    waiting = {part.path: part.waits_for for part in worked.room.parts}
    assert "survey.wall.window.width_1" in waiting[asked.waiting[0]]


def test_a_reading_that_is_sure_is_not_asked_about() -> None:
    """Written as sure, it counts."""
    text = _changed(
        '{ read = "100 1/4", height = 4 }', '{ read = "96 1/4", height = 4, sure = true }'
    )
    for line in ('left = "30 1/4"\n', 'diagonal = "166 1/4"\n'):
        text = text.replace(line, "")
    assert not [q for q in work_out(read(text)).questions if q.path.startswith("survey.")]


@pytest.mark.parametrize(
    ("old", "new", "word", "want"),
    [
        ('on = "window"', 'on = "windw"', '"windw"', "did you mean window?"),
        ('on = "window"', 'on = "window"\nwall = "100"', '"window"', "take one of them out"),
        ('walls = ["window", "range"]', 'walls = ["window", "window"]', '"window"', "the other"),
        ('after = "big_window"', 'after = "outle"', '"outle"', "did you mean outlet?"),
        ('after = "big_window"', 'after = "drain"', '"drain"', "from the wall's left end"),
        ('across = "60 1/4"', "across = 90", "90", 'over 12" and under 84"'),
        ('diagonal = "166 1/4"', "diagonal = 30", "30", "would close"),
        ('"62 5/8"', '"162 5/8"', '"162 5/8"', "from the wall's left end"),
        ("along = 80", "along = 180", "180", "from the wall's left end"),
        ('{ read = 40, tool = "steel rule" }', "140", "140", "correct the width of the wall"),
        ('top = "82 1/2"', "top = 41", "41", "read up from the floor"),
        ('centre = "80 1/2"', 'centre = "80 1/2"\nright = 19', '"80 1/2"', "one of them"),
        ('kind = "outlet"', 'kind = "outlet"\nswing = "left"', '"left"', "only a door"),
        ("height = { read = 80", "height = { read = 8", "8", "write 24 in to 240 in"),
        ('bottom = "44"', 'bottom = "-44"', '"-44"', "write 0 in to 240 in"),
        ('"100 5/8",', '"100 5/8 mm",', '"100 5/8 mm"', ""),
        ("probed = true", "probd = true", "probd", "did you mean probed?"),
        ('tool = "level"', 'tool = "string"', '"string"', "write"),
        ('bench = "big_window"', 'benhc = "big_window"', '"big_window"', "did you mean bench?"),
        ('bench = "big_window"', 'bench = "window"', '"window"', "did you mean big_window?"),
        ('left_filler = "1 1/2"', 'left_filler = 1\nleft = "open"', "1", "take it out"),
        ("outside = false", 'outside = false\n[corner.twice]\nwalls = ["window", "range"]',
         '"window"', "the left one first"),
    ],
)  # fmt: skip
def test_what_has_no_meaning_is_told_at_its_word(old: str, new: str, word: str, want: str) -> None:
    """A wrong name, a window wider than its wall, sides that cannot close: where, what then."""
    found = problem(_changed(old, new))
    assert found.location.word.startswith(word[:40])
    assert want in found.want


def test_a_wall_without_a_width_cannot_be_shared_out() -> None:
    """The run says what to write, and where."""
    text = "\n".join(
        line
        for line in SURVEYED_ROOM.splitlines()
        if not line.startswith(('width = ["132', "centre = {"))
    ).replace('on = "window"', 'on = "range"')
    found = problem(text)
    assert "wall range has no width yet" in found.what
    assert "[wall.range]" in found.want


def test_editors_know_the_words_of_a_survey() -> None:
    """A reading may be a bare length or a table."""
    schema = job_schema()
    assert {"wall", "corner", "way_in"} <= set(schema["properties"])
    station = schema["$defs"]["StationTable"]["properties"]["down"]
    assert {"type": ["string", "number"]}.items() <= station["anyOf"][0].items()
