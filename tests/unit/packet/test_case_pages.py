"""Pages of cases: every step and every caution is there, however often it is said."""

from __future__ import annotations

import re
from collections import Counter
from functools import cache

import pytest
from tests.jobs import HEAD, read
from tests.unit.packet.test_packet import EXAMPLES, packet, planned

from casewright.casework.cases import Case
from casewright.casework.cautions import CAUTIONS
from casewright.dims import measure_of
from casewright.outputs.blocks import Block, CheckList, Heading
from casewright.outputs.document import Section
from casewright.outputs.inlines import Blank, Tick, rich_text
from casewright.packet.assembly_steps import assembly_blocks
from casewright.packet.case_parts import drawer_table, part_tables
from casewright.packet.cut_places import rough_lengths
from casewright.packet.words import unfold
from casewright.room.build import build


@cache
def cases(name: str) -> list[tuple[Case, Section]]:
    sections = {section.anchor: section for section in packet(name).sections}
    return [(case, sections[case.key]) for case in planned(name).worked.room.cases]


def stages(blocks: tuple[Block, ...]) -> list[CheckList]:
    return [block for block in blocks if isinstance(block, CheckList)]


def told(checklist: CheckList, number: int) -> str:
    step = checklist.steps[number]
    return " ".join(rich_text(line) for line in (step.text, *step.notes))


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_step_of_assembly_has_a_box_to_tick(name: str) -> None:
    """One for each thing made: two where doors are told once; and one for the dry fit."""
    for case, section in cases(name):
        boxes = 0
        for checklist in stages(section.blocks):
            for step in checklist.steps:
                ticks = sum(isinstance(item, Tick) for item in unfold(step.text))
                boxes += checklist.boxes + ticks
        assert boxes == len(case.assembly) + 1, case.key


@pytest.mark.parametrize("name", EXAMPLES)
def test_steps_are_numbered_through(name: str) -> None:
    """From one, over every heading."""
    for _, section in cases(name):
        number = 1
        for checklist in stages(section.blocks):
            assert checklist.start == number
            number += len(checklist.steps)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_caution_is_said_in_full_or_points_to_where_it_is(name: str) -> None:
    """No step loses one: counted over all steps, each caution is where the model puts it."""
    for case, section in cases(name):
        found: Counter[str] = Counter()
        for checklist in stages(section.blocks):
            texts = [told(checklist, number) for number in range(len(checklist.steps))]
            full = [{key for key, words in CAUTIONS.items() if words in text} for text in texts]
            for number, text in enumerate(texts):
                pointed = re.search(r"as\xa0at\xa0step\xa0([\d, ]+)", text)
                numbers = map(int, pointed.group(1).split(",")) if pointed else ()
                places = [each - (checklist.start or 0) for each in numbers]
                assert all(0 <= each < number for each in places), text
                ticks = sum(isinstance(i, Tick) for i in unfold(checklist.steps[number].text))
                times = checklist.boxes + ticks
                for key in full[number].union(*(full[each] for each in places)):
                    found[key] += times
        wanted = Counter(key for step in case.assembly for key in step.cautions)
        assert all(found[key] >= count for key, count in wanted.items()), case.key


@pytest.mark.parametrize("name", EXAMPLES)
def test_readings_of_what_is_made_twice_have_blanks_twice(name: str) -> None:
    """Two diagonals for each thing whose diagonals are measured."""
    for case, section in cases(name):
        blanks = sum(
            isinstance(item, Blank)
            for checklist in stages(section.blocks)
            for step in checklist.steps
            for note in step.notes
            for item in unfold(note)
        )
        assert blanks == 2 * sum(step.verb == "check square" for step in case.assembly)


def test_doors_that_are_alike_are_told_once() -> None:
    """A pair of doors under one heading that names both; a single door under its own."""
    titles = {
        case.key: [b.text for b in section.blocks if isinstance(b, Heading) and b.level == 3]
        for case, section in cases("garden_room")
    }
    (pair, hanging) = titles["pots"]
    assert pair.startswith("Left door and right door: made alike")
    assert hanging == "Hanging"
    assert titles["small_tools"] == ["Door", "Hanging"]


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_parts_of_a_case_stand_once_in_its_table(name: str) -> None:
    """Every mark, whatever row it shares."""
    room = planned(name).worked.room
    for case, _ in cases(name):
        marks: list[str] = []
        for column in part_tables(room, case).columns:
            for block in column:
                rows = getattr(block, "rows", ())
                cells = (rich_text(row.cells[0]) for row in rows if len(row.cells) > 1)
                marks += [mark for cell in cells for mark in cell.split(", ")]
        assert sorted(marks, key=int) == sorted((p.mark for p in case.parts), key=int)


def test_pieces_that_go_on_alike_share_a_step() -> None:
    """Named after the first: the other stile, the nosings of the other shelves, the other door."""
    texts = {
        case.key: [
            rich_text(step.text) for block in stages(section.blocks) for step in block.steps
        ]
        for case, section in cases("garden_room")
    }
    (stiles,) = [text for text in texts["pots"] if "left stile" in text]
    assert stiles.replace("\xa0", "").rstrip(".").endswith("Likewise right stile")
    (rails,) = [text for text in texts["pots"] if "bottom rail" in text]
    others, _, last = rails.replace("\xa0", "").partition("Likewise ")[2].partition(". ")
    assert others == "top rail"
    assert last.startswith("When it is dry, sand the edges flush")
    (nosings,) = [text for text in texts["catalogues"] if "nosing of shelf 1" in text]
    assert [f"shelf\xa0{number}" in nosings.split("Likewise")[1] for number in range(2, 6)] == [
        True
    ] * 4
    (hanging,) = [text for text in texts["pots"] if text.startswith("Press")]
    assert "at the left side" in hanging.split("Likewise")[0]
    assert "right door at the right side" in hanging.split("Likewise")[1]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_mark_of_a_step_is_told(name: str) -> None:
    """Also where shelves that go on alike share a step: each with the distance of its own line."""
    for case, section in cases(name):
        told_steps = [
            told(block, number).replace("\xa0", " ")
            for block in stages(section.blocks)
            for number in range(len(block.steps))
        ]
        for step in case.assembly:
            title = next((part.title for part in case.parts if part.path == step.part), "")
            for _, dim in step.marks:
                text = measure_of(dim, planned(name).worked.room.spec.unit).text
                assert not dim.value or any(
                    text in each and title.partition(" of ")[0] in each for each in told_steps
                ), (step.part, text)


def test_fixed_shelves_share_a_step_with_a_place_and_a_box_each() -> None:
    """Five shelves of a bookcase: four boxes and four distances behind the first."""
    ((case, section),) = [pair for pair in cases("garden_room") if pair[0].key == "catalogues"]
    steps = [step for block in stages(section.blocks) for step in block.steps]
    (shared,) = [step for step in steps if "push shelf 1 home" in rich_text(step.text)]
    lines = [step.marks[0][1] for step in case.assembly if "in its dado" in step.words][-4:]
    others = rich_text(shared.text).partition("Likewise")[2]
    for number, line in enumerate(lines, 2):
        words = f"shelf\xa0{number}"
        assert words in others
        assert measure_of(line, "in").text in others.partition(words)[2].partition(",")[0]
    assert sum(isinstance(item, Tick) for item in unfold(shared.text)) == len(lines)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_place_at_nothing_is_flush(name: str) -> None:
    """Nobody has to guess where a board sits because its distance is zero."""
    for case, section in cases(name):
        text = " ".join(
            told(block, number)
            for block in stages(section.blocks)
            for number in range(len(block.steps))
        )
        for step in case.assembly:
            for words, dim in step.marks:
                start = words.partition(" above ")[0] if " above " in words else "front edges"
                if not dim.value and ("above" in words or "behind" in words):
                    assert f"{start} flush" in text, (case.key, words)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_strip_cut_long_is_told_its_length_where_it_goes_on(name: str) -> None:
    """What is sawn off is on no cut sheet: the step says what stays."""
    unit = planned(name).worked.room.spec.unit
    rough = rough_lengths(planned(name).breakdown)
    for case, section in cases(name):
        text = " ".join(
            told(block, number)
            for block in stages(section.blocks)
            for number in range(len(block.steps))
        )
        for part in case.parts:
            if part.path in rough:
                length = measure_of(part.finished.length, unit).text
                sawn = re.findall(r"strips sawn to length first: ([^;]*)", text)
                assert any(f"{part.role} {length}" in each for each in sawn), part.path


def test_a_nailer_held_with_brads_says_where_they_go() -> None:
    """Its step prints the row: from which edge, how far from the ends, how far apart."""
    room = build(
        read(
            HEAD + '[style]\ngroove_inset = "1/2"\n[boxes]\nback = "grooved"\n'
            '[case.upper]\nkind = "wall"\nwidth = 30\ndepth = "12 1/4"\nfront = "none"\n'
        )
    )
    (case,) = room.cases
    lists = [block for block in assembly_blocks(case, "in") if isinstance(block, CheckList)]
    texts = [told(block, number) for block in lists for number in range(len(block.steps))]
    (step,) = [text for text in texts if "set the top nailer" in text]
    assert "drive the brads" in step
    row = next(
        each
        for joint in case.joints
        if joint.path == "upper.joint_nailer_top_left"
        for each in joint.fastenings
        if each.kind == "brad"
    )
    assert row.line is not None
    off = measure_of(row.line[1], "in").text
    assert f"{row.count} brads into the top nailer" in step
    assert f"back edge of the left side: {off}" in step
    assert "; from the ends: " in step


def test_drawers_have_a_table_and_steps_of_their_own() -> None:
    """Box, slides, the line of their holes; boxes put together apart, hung, then fronts."""
    text = f'{HEAD}[case.low]\nkind = "base"\nwidth = 24\ndrawers = 2\n'
    room = build(read(text))
    [case] = room.cases
    table = drawer_table(room, case)
    assert [rich_text(row.cells[0]) for row in table.rows] == ["drawer 1", "drawer 2"]
    line = measure_of(room.chain.nodes["low.drawer_1.slide_line"], "in").text
    assert line in rich_text(table.rows[0].cells[-1])
    blocks = tuple(assembly_blocks(case, "in"))
    titles = [block.text for block in blocks if isinstance(block, Heading)]
    assert titles[0] == "Drawer 1"
    assert titles[-1] == "Hanging"
    hanging = stages(blocks)[-1]
    told_last = [told(hanging, number) for number in range(len(hanging.steps))]
    assert told_last[0].startswith("Screw the slides to both sides")
    assert "drawer 1: line of its holes above the bottom ends of the sides" in told_last[0]
    assert told_last[-1].startswith("Set the front of drawer 2 with spacers")
    ticks = sum(
        checklist.boxes + sum(isinstance(item, Tick) for item in unfold(step.text))
        for checklist in stages(blocks)
        for step in checklist.steps
    )
    assert ticks == len(case.assembly) + 1
