"""The order of work: what is read, in which order, and what can hurt."""

from __future__ import annotations

from itertools import pairwise

import pytest
from tests.unit.packet.test_packet import EXAMPLES, packet, planned

from casewright.dims import measure_of, shop_text
from casewright.outputs.blocks import Block, CheckList, Heading, Paragraph, Step, Table
from casewright.outputs.inlines import Blank, Link, rich_text
from casewright.packet.wall_page import HANGING
from casewright.packet.words import unfold
from casewright.room.wall_fixing import wall_fixings


def blocks(name: str) -> tuple[Block, ...]:
    (section,) = [s for s in packet(name).sections if s.anchor == "order"]
    return section.blocks


def stages(name: str) -> list[Step]:
    return [step for block in blocks(name) if isinstance(block, CheckList) for step in block.steps]


def tables(name: str) -> list[Table]:
    return [block for block in blocks(name) if isinstance(block, Table)]


@pytest.mark.parametrize("name", EXAMPLES)
def test_each_box_is_read_beside_its_wanted_size_and_band(name: str) -> None:
    """Width, height, depth as planned, how far off they may be, and a blank for each."""
    room = planned(name).worked.room
    unit = room.spec.unit
    boxes = tables(name)[1]
    assert len(boxes.rows) == len(room.cases)
    for case, row in zip(room.cases, boxes.rows, strict=True):
        assert shop_text(case.tolerance.value, unit) in rich_text(row.cells[1])
        for dim, cell in zip((case.width, case.height, case.depth), row.cells[2:], strict=True):
            assert rich_text(cell).startswith(shop_text(dim.value, unit))
            assert sum(isinstance(item, Blank) for item in unfold(cell)) == 1


@pytest.mark.parametrize("name", EXAMPLES)
def test_openings_are_read_where_there_are_doors(name: str) -> None:
    """A row for each case with doors, a blank for each clear height and for the width."""
    room = planned(name).worked.room
    with_doors = [case for case in room.cases if case.fronts]
    assert len(tables(name)) == (3 if with_doors else 2)
    for case, row in zip(with_doors, tables(name)[2].rows if with_doors else (), strict=True):
        assert rich_text(row.cells[0]) == case.spec.title
        blanks = sum(isinstance(item, Blank) for cell in row.cells for item in unfold(cell))
        assert blanks == 1 + len(case.clear_heights)


@pytest.mark.parametrize("name", EXAMPLES)
def test_what_is_measured_leads_to_its_own_table(name: str) -> None:
    """Stock, boxes and openings each to the heading over their blanks; no mean is left to work."""
    under = {
        block.anchor: after
        for block, after in pairwise(blocks(name))
        if isinstance(block, Heading) and block.anchor.startswith("readings:")
    }
    assert all(isinstance(after, Table) for after in under.values())
    led = {
        item.target
        for step in stages(name)
        for note in step.notes
        for item in unfold(note)
        if isinstance(item, Link) and item.target.startswith("readings:")
    }
    assert led == set(under)
    stock = tables(name)[0]
    assert [column.title for column in stock.columns[2:]] == list("123456")


@pytest.mark.parametrize("name", EXAMPLES)
def test_one_box_is_read_before_the_others_and_finishing_warns(name: str) -> None:
    """Stages in the order of a careful person; what can hurt stands at its stage."""
    words = [rich_text(step.text) for step in stages(name)]
    first = next(i for i, each in enumerate(words) if each.startswith("Put"))
    finish = next(i for i, each in enumerate(words) if each.startswith("Finish"))
    assert words[0] == "Buy"
    assert first < finish < len(words) - 1
    if len(planned(name).worked.room.cases) > 1:
        assert "one box" in words[first]
        assert "then put the others together" in words[first]
    told = " ".join(map(rich_text, stages(name)[finish].cautions))
    for need in ("mask", "Solvent", "flame", "rags", "maker's sheet"):
        assert need in told


def test_what_belongs_to_doors_is_cut_after_the_openings_are_read() -> None:
    """Fibreboard slabs are cut with the doors only; boards serve both."""
    steps = {rich_text(step.text): step for step in stages("garden_room")}
    boxes = next(step for text, step in steps.items() if text.startswith("Cut by setting"))
    doors = next(step for text, step in steps.items() if text.startswith("Cut, put together"))

    def leads(step: Step) -> set[str]:
        return {
            item.target for note in step.notes for item in unfold(note) if isinstance(item, Link)
        }

    assert "cutting:plan.thin_fibreboard" in leads(doors) - leads(boxes)
    assert "cutting:plan.plywood" in leads(boxes) - leads(doors)
    assert "cutting:solid" in leads(boxes) & leads(doors)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_case_and_filler_goes_to_the_wall(name: str) -> None:
    """Named with what its screws go through; what a wall carries is claimed nowhere."""
    room = planned(name).worked.room
    section = next(each for each in packet(name).sections if each.anchor == HANGING)
    text = " ".join(
        " ".join(rich_text(line) for line in (step.text, *step.notes))
        for block in section.blocks
        if isinstance(block, CheckList)
        for step in block.steps
    )
    for case in room.boxes:
        assert case.spec.title in text
    for run in room.runs:
        for filler in run.fillers:
            assert f"{filler.part.mark}, {filler.part.title}: " in text
    screws = {measure_of(room.chain.nodes[f"{f.case}.wall_screw"], room.spec.unit).text
              for f in wall_fixings(room)}  # fmt: skip
    for screw in screws:
        assert f"wall screws of {screw}" in text
    hung = [case for case in room.boxes if case.spec.kind == "wall"]
    assert ("ledger" in text) == bool(hung)
    assumed = section.blocks[0]
    assert isinstance(assumed, Paragraph)
    assert "not worked out here" in rich_text(assumed.text)


@pytest.mark.parametrize("name", EXAMPLES)
def test_what_can_hurt_at_the_wall_is_said_at_its_step(name: str) -> None:
    """Cables before boring; nobody under a hanging case; what stands loose can tip."""
    room = planned(name).worked.room
    section = next(each for each in packet(name).sections if each.anchor == HANGING)
    said = " ".join(
        rich_text(caution)
        for block in section.blocks
        if isinstance(block, CheckList)
        for step in block.steps
        for caution in step.cautions
    )
    assert "Cables" in said
    kinds = {case.spec.kind for case in room.boxes}
    assert ("Nobody holds a case up" in said) == ("wall" in kinds)
    assert ("can tip" in said) == bool(kinds - {"wall"})
