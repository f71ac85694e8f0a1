"""The day of hanging on paper."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.jobs import example
from tests.unit.install.test_hanging import WALL, hung_room

from casewright.dims import Measure, measure_of
from casewright.drawing import Plot
from casewright.drawing.marks import Stroke, Word
from casewright.drawing.room_plan import plan_scene
from casewright.drawing.scene import plot
from casewright.drawing.shapes import Arc
from casewright.drawing.story_stick import Stick, StickMark, stick_plots, strip_length
from casewright.job.reasons import number_text, reasons
from casewright.outputs.blocks import Block, Callout, Caution, CheckList, Heading, Keep, Table
from casewright.outputs.document import LETTER, Section
from casewright.outputs.inlines import Blank, rich_text
from casewright.packet.hanging_pages import hanging_sections
from casewright.packet.stick_pages import stick_section
from casewright.packet.tape_page import tape_section
from casewright.packet.trim_pages import trim_section
from casewright.packet.wall_page import wall_section
from casewright.packet.words import unfold
from casewright.sources import INCH

MM = 25.4


@cache
def sheet() -> Section:
    """What is done at the north wall, which follows its picture."""
    room, day = hung_room(WALL)
    found = [each for each in hanging_sections(room, day, LETTER) if "north" in each.title]
    picture, work = found
    assert picture.paper == LETTER.turned  # 120 in wide, 84 high
    return work


def flat(blocks: tuple[Block, ...]) -> Iterator[Block]:
    for block in blocks:
        if isinstance(block, Keep):
            yield from flat(block.blocks)
        else:
            yield block


def rows(section: Section) -> list[str]:
    return [
        " ".join(rich_text(cell) for cell in row.cells)
        for block in flat(section.blocks)
        if isinstance(block, Table)
        for row in block.rows
    ]


def test_a_case_without_two_columns_is_never_called_held() -> None:
    """It asks for a rail or blocking instead, by name."""
    asked = {b.title for b in flat(sheet().blocks) if isinstance(b, Callout) and b.sign == "ask"}
    assert asked == {"A rail for plates, spice"}
    heads = [row for row in rows(sheet()) if ": " in row]
    assert "cups: screws at two studs or more" in heads
    assert "plates: one stud, a rail is asked for" in heads
    assert "spice: one stud, a rail is asked for" in heads


@pytest.mark.parametrize(("screw", "says"), [("2", "too shallow"), ("3 1/2", "deep")])
def test_a_screw_that_bites_wrongly_is_pointed_at(screw: str, says: str) -> None:
    """A screw that the job names is not changed behind its back."""
    named = f'[hardware.wall_screw]\nlength = "{screw}"\n'
    room, day = hung_room(WALL + named)
    made = hanging_sections(room, day, LETTER)[1]
    found = [b.title for b in flat(made.blocks) if isinstance(b, Callout) and b.sign == "look"]
    assert any(title.endswith(says) for title in found)


def test_no_screw_is_told_where_a_cable_may_run() -> None:
    """The stud at 52 under the outlet has a row, and no length in it."""
    barred = [row for row in rows(sheet()) if "none here" in row]
    assert barred
    assert all("kettle" in row and "52" in row and "2 1/2" not in row for row in barred)


def test_a_tap_of_which_nobody_knows_where_it_is_is_asked_for() -> None:
    """No strip can be kept free for it: the sheet says so instead of passing it over."""
    text = WALL.replace("centre = 53\nbottom = 42", "bottom = 42")
    room, day = hung_room(text)
    work = hanging_sections(room, day, LETTER)[1]
    asked = [b.title for b in flat(work.blocks) if isinstance(b, Callout) and b.sign == "ask"]
    assert "Where is: kettle" in asked


def test_cautions_stand_where_the_step_is() -> None:
    """Lifting beside the lifts, cables beside the screws; both defer to codes and trades."""
    cautions = [rich_text(b.text) for b in flat(sheet().blocks) if isinstance(b, Caution)]
    assert any("no permission to lift" in text for text in cautions)
    assert any("licensed trades" in text and "local codes" in text for text in cautions)


def test_marks_to_tape_out_name_every_case() -> None:
    """Each case of each wall has a row with its edges."""
    room, day = hung_room(WALL)
    section = tape_section(room, day, LETTER)
    assert section is not None
    titles = {row.split()[0] for row in rows(section)}
    assert titles == {"cups", "plates", "spice", "sink", "pans", "east"}


def test_what_is_still_to_come_is_taped_out_too() -> None:
    """A neighbour that is not built yet stands in the room for who walks through it."""
    neighbour = """[wall.north.fixed.larder]
kind = "tall case"
left = 100
width = 18
height = 84
built = false
"""
    room, day = hung_room(WALL.replace("[wall.east]", f"{neighbour}[wall.east]"))
    section = tape_section(room, day, LETTER)
    assert section is not None
    assert "larder 100 118  84 " in rows(section)


def test_a_room_without_walls_has_no_such_pages() -> None:
    """Nothing is made up for cases that stand nowhere yet."""
    room, day = hung_room('format = 1\nunit = "in"\n[case.upper]\nkind = "wall"\nwidth = 30\n')
    assert hanging_sections(room, day, LETTER) == ()
    assert tape_section(room, day, LETTER) is None
    assert stick_section(room, day, LETTER) is None


def _lines(drawn: Plot) -> set[float]:
    """Heights of the lines that cross a whole strip [mm on paper]."""
    found = set()
    for group in drawn.groups:
        for mark in group.marks:
            if isinstance(mark, Stroke) and len(mark.points) == 2:
                (x0, y0), (x1, y1) = mark.points
                if y0 == y1 and y0 >= 0 and x1 - x0 > 40:  # the check bar lies below
                    found.add(round(y0, 6))
    return found


@given(st.lists(st.fractions(0, 100, max_denominator=16), min_size=1, max_size=12, unique=True))
def test_a_stick_is_true_to_size(places: list[Fraction]) -> None:
    """Each mark lies on its strip as far up as it is from where the strip begins, and once."""
    marks = [StickMark(Measure(at * INCH, "in", f"m{n}"), "seam") for n, at in enumerate(places)]
    end = max(places) * INCH
    if not end:
        return
    long = strip_length(200, "in")
    drawn = list(stick_plots([Stick(marks, end)], "in", (186, 200)))
    found = {y for each in drawn for y in _lines(each)}
    wanted = {
        round(float(at * INCH - min(at * INCH // long, -(-end // long) - 1) * long), 6)
        for at in places
    }
    assert found == wanted
    assert all(each.area.height <= 200 for each in drawn)


def test_the_steps_name_the_screws_that_the_sheet_lists() -> None:
    """A wall that leans away wants longer ones than usual: no other length stands in the steps."""
    room, day = hung_room(
        'format = 1\nunit = "mm"\n[wall.n]\nwidth = 2000\nstuds = [200, 600]\n'
        'plumb = [{ of = "face", over = 1200, off = 5, leans = "out" }]\n'
        '[case.pantry]\nkind = "tall"\nwidth = 600\n'
        '[run.r]\ncases = ["pantry"]\non = "n"\nleft = "open"\nright = "open"\n'
    )
    lengths = {
        measure_of(screw.length, "mm").text
        for hang in day.walls.values() for case in hang.screws for screw in case.screws
    }  # fmt: skip
    told = " ".join(
        rich_text(note)
        for block in wall_section(room, day).blocks if isinstance(block, CheckList)
        for step in block.steps for note in step.notes
    )  # fmt: skip
    assert measure_of(room.chain.nodes["pantry.wall_screw"], "mm").text not in lengths
    assert set(re.findall(r"two wall screws of (\S+) at every stud", told)) == lengths


def test_strips_without_a_mark_are_not_printed() -> None:
    """Of eleven strips of nine inches two bear marks; each says where its foot lies."""
    marks = [StickMark(Measure(at * INCH, "in", f"m{at}"), "seam") for at in (3, 96)]
    (drawn,) = stick_plots([Stick(marks, 96 * INCH)], "in", (186, 245.4))
    words = {mark.text for group in drawn.groups for mark in group.marks if isinstance(mark, Word)}
    assert {'strip 1 of 2, foot at 0"', 'strip 2 of 2, foot at 90"'} <= words


@pytest.mark.parametrize("height", [150.0, 199.9, 245.4])
def test_strips_end_at_whole_inches(height: float) -> None:
    """So that the rule along the edge goes on from one to the next."""
    assert strip_length(height, "in") % INCH == 0
    assert strip_length(height, "mm") % 10 == 0


def test_the_plan_joins_walls_at_their_corner() -> None:
    """North runs 120 in to the right, east 90 in down from its right end: 120 by 90 in all.

    Two wall thicknesses and the names beside the walls are all that comes on top.
    """
    room, _ = hung_room(WALL)
    drawn = plot(plan_scene(room, "in"), 10)
    assert drawn.area.width == pytest.approx(120 * MM / 10 + 50, abs=50)
    assert drawn.area.height == pytest.approx(90 * MM / 10 + 50, abs=50)
    assert drawn.area.width > 120 * MM / 10
    assert drawn.area.height > 90 * MM / 10


def test_doors_that_hang_swing_in_broken_lines() -> None:
    """Each door of the room has its arc, broken where its case hangs (ISO 128, from memory)."""
    room, _ = hung_room(WALL)
    arcs = [each for each in plan_scene(room, "in").elements if isinstance(each, Arc)]
    hung = sum(len(case.doors) for case in room.cases if case.spec.is_hung)
    assert hung
    assert sum(arc.pen is not None and bool(arc.pen.dash_mm) for arc in arcs) == hung


def test_rows_are_whole() -> None:
    """Every row of every table has as many cells as its head, or is a heading alone."""
    for block in flat(sheet().blocks):
        if isinstance(block, Table):
            assert {len(row.cells) for row in block.rows} <= {1, len(block.columns)}


def _steps(text: str) -> list[str]:
    room, day = hung_room(text)
    lists = [b for b in wall_section(room, day).blocks if isinstance(b, CheckList)]
    return [
        " ".join(rich_text(each) for each in (step.text, *step.notes))
        for each in lists
        for step in each.steps
    ]


def test_lines_are_drawn_from_the_level_line_and_gaps_to_caulk_are_told() -> None:
    """40 in above the highest floor, by hand: the ledger 14 up, tops at 34 1/2 are 5 1/2 down.

    Fillers at a wall are caulked along their length.
    """
    steps = _steps(WALL)
    ledger = next(step for step in steps if "ledger's line" in step)
    assert "from the level line: 14 up" in ledger
    tops = next(step for step in steps if "for the tops" in step)
    assert "from the level line: 5 1/2 down" in tops
    room, _ = hung_room(WALL)
    scribed = [f for run in room.runs for f in run.fillers if not f.beyond.value]
    caulk = next(step for step in steps if step.startswith("Caulk"))
    assert scribed
    assert all(filler.part.title in caulk for filler in scribed)


def test_the_saw_is_set_to_no_corner_that_was_not_read() -> None:
    """Blanks, with the planned angle in small beside them; as read it stands by itself."""
    text = example("kitchen")
    room, _ = hung_room(text)
    section = trim_section(room, LETTER)
    assert section is not None
    cuts = [
        row
        for block in flat(section.blocks)
        if isinstance(block, Table) and "Mitre" in [c.title for c in block.columns]
        for row in block.rows
    ]
    assert cuts
    for row in cuts:
        blank = any(isinstance(item, Blank) for item in unfold(row.cells[3]))
        assert blank is rich_text(row.cells[2]).endswith("not read")


def test_a_shim_that_no_tape_shows_is_none() -> None:
    """Two thousandths of an inch behind a straight edge: the row bears there as well."""
    text = WALL
    for along, old, new in ((36, '"3/16"', '"0.002"'), (52, '"1/8"', "0")):
        place = f"along = {along}, height = 81, off = "
        text = text.replace(place + old, place + new)
    room, day = hung_room(text)
    told = [row for each in hanging_sections(room, day, LETTER) for row in rows(each)]
    assert "36 0 bears" in told
    assert not [row for row in told if "~0" in row.split()]


def test_marks_on_a_wall_are_those_of_a_metric_tape() -> None:
    """Sheets of 17.8 mm, half a millimetre left beside the row, doors 1.5 mm before their box."""
    room, day = hung_room(
        'format = 1\nunit = "mm"\n[stock.plywood]\nmeasured = 17.8\n[wall.n]\nwidth = 1200\n'
        'studs = [100, 500]\n[case.cups]\nkind = "wall"\nwidth = 601\n[case.mugs]\nkind = "wall"\n'
        'width = 520\n[run.r]\ncases = ["cups", "mugs"]\non = "n"\n'
    )
    assert any(mark.at.value.denominator != 1 for mark in day.walls["n"].marks)
    for section in (tape_section(room, day, LETTER), stick_section(room, day, LETTER)):
        assert section is not None
        assert not re.search(r"\d\.\d", " ".join(rows(section)))


def _words(drawn: Plot) -> set[str]:
    return {mark.text for group in drawn.groups for mark in group.marks if isinstance(mark, Word)}


def test_no_page_of_strips_holds_one_alone() -> None:
    """Four strips along and one up fit a page four wide: three and two, each named."""
    along = Stick([StickMark(Measure(at * INCH, "in"), "seam") for at in (4, 13, 22, 31)],
                  31 * INCH, "along")  # fmt: skip
    up = Stick([StickMark(Measure(5 * INCH, "in"), "top")], 5 * INCH, "up")
    pages = list(stick_plots([along, up], "in", (186, 245.4)))
    assert [page.title for page in pages] == [
        "along strips 1 to 3 of 4", "along strip 4 of 4; up strip 1 of 1",
    ]  # fmt: skip
    assert 'along 4 of 4, foot at 27"' in _words(pages[1])
    assert 'up 1 of 1, foot at 0"' in _words(pages[1])


def test_marks_at_one_place_are_one_line() -> None:
    """Upper and lower case begin at one place: the number stands once, with both."""
    marks = [
        StickMark(Measure(2 * INCH, "in"), "stud"),
        StickMark(Measure(2 * INCH, "in"), "left of cups", bold=True),
    ]
    [drawn] = stick_plots([Stick(marks, 9 * INCH)], "in", (186, 245.4))
    assert len(_lines(drawn)) == 1
    assert {"stud; left of cups"} <= _words(drawn)


def test_what_a_screw_is_worth_is_told_once() -> None:
    """Behind the last of the walls, and for all of them: each length and wood has one row."""
    room, day = hung_room(WALL)
    assert len(day.walls) > 1
    sections = hanging_sections(room, day, LETTER)
    heads = [
        [block.text for block in flat(section.blocks) if isinstance(block, Heading)]
        for section in sections
    ]
    told = [any("worth by the equations" in text for text in each) for each in heads]
    assert told == [False] * (len(told) - 1) + [True]
    worth = [row for row in rows(sections[-1]) if "diameters deep" in row or ", G 0." in row]
    lengths = {
        screw.length.value for hang in day.walls.values() for case in hang.screws
        for screw in case.screws if screw.strip is None
    }  # fmt: skip
    assert len(worth) == 3 * len(lengths)


def test_what_a_screw_holds_rests_on_its_bite_and_its_source() -> None:
    """Pulled and across, each leads to its equations; newtons and pounds are both shown."""
    room, day = hung_room(WALL)
    for worth in day.worths:
        for force in filter(None, (worth.pulled, worth.across)):
            why = {node.path: node for node in reasons(room, force.path)}
            assert worth.screw.bite.path in why
            origin = why[force.path].origin
            assert origin is not None
            assert origin.source == "nds"
            told = number_text(force.value, "in", force.power, force.path)
            newton, pounds = (float(text) for text in re.findall(r"[\d.]+", told))
            assert newton / 4.44822 == pytest.approx(pounds, rel=0.01)


def test_the_height_of_a_straight_edge_is_that_of_its_reading() -> None:
    """'81" above the floor' leads to the place that the job file gives."""
    room, day = hung_room(WALL)
    for shim in day.walls["north"].wall_shims:
        assert shim.height == 81 * INCH
        assert room.chain.nodes[shim.level.path].value == shim.height
