"""A packet for what is left: no page for what is done, every link of it leads somewhere."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from tests.jobs import loaded
from tests.unit.install.test_hanging import WALL, hung_room

from casewright.breakdown import Breakdown, break_down
from casewright.casework.parts import Part
from casewright.cutting.engine import Stop
from casewright.job.worked import WorkedJob, work_out
from casewright.outputs.blocks import CheckList, Heading, Labels
from casewright.outputs.document import Document, check_links
from casewright.outputs.inlines import rich_text
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.packet import PacketContent, packet_document
from casewright.resolve import hold_points
from casewright.room.model import Room

JOB = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.709"
[stock.thin_plywood]
measured = "0.207"
[stock.drawer_plywood]
measured = "0.472"
[stock.fibreboard]
measured = "0.748"
[hardware.pull]
centres = "96 mm"
[case.pans]
kind = "base"
width = "18"
drawers = 4
[case.upper]
kind = "wall"
width = "18"
"""


@cache
def worked() -> WorkedJob:
    """A case of drawers and one with doors."""
    return work_out(loaded(JOB).spec)


def planned(room: Room) -> Breakdown:
    """Plans that are good enough for pages."""
    return break_down(room, stop=Stop(nodes=500))


def left(states: dict[str, str]) -> Document:
    """The packet of what is left when cases, or pieces, have come so far."""

    def marked(part: Part) -> Part:
        state = states.get(part.path, states.get(part.case, states.get("", "planned")))
        return replace(part, state=state)  # type: ignore[arg-type]

    room = worked().room
    cases = tuple(
        replace(case, parts=tuple(marked(part) for part in case.parts)) for case in room.cases
    )
    room = replace(room, cases=cases)
    content = PacketContent(
        room, planned(room), (), (), (), "0" * 12, hold_points(room), left_only=True
    )
    return packet_document(content)


def titles(document: Document) -> list[str]:
    return [section.title for section in document.sections]


def stages(document: Document) -> str:
    (section,) = [s for s in document.sections if s.anchor == "order"]
    return " | ".join(
        rich_text(step.text)
        for block in section.blocks
        if isinstance(block, CheckList)
        for step in block.steps
    )


@pytest.mark.parametrize("state", ["cut", "machined", "assembled", "hung"])
def test_every_link_leads_somewhere_however_far_the_job_is(state: str) -> None:
    check_links(left({"": state}))
    check_links(left({"pans": state, "pans.back": "planned"}))


def test_what_is_put_together_has_no_page() -> None:
    """A case that stands ready is neither cut, nor machined, nor put together again."""
    found = left({"pans": "assembled"})
    assert "pans" not in titles(found)
    assert "upper" in titles(found)
    assert "Cut list" in titles(found)


def test_what_is_cut_is_only_machined_and_put_together() -> None:
    found = left({"": "cut"})
    assert "Part cards" in titles(found)
    assert not {"Buy", "Labels"} & set(titles(found))
    assert "Cut by setting" not in stages(found)
    assert "Machine the parts" in stages(found)


def test_what_stands_is_only_finished_and_set_in_place() -> None:
    found = left({"": "assembled"})
    assert "Part cards" not in titles(found)
    assert "Machine" not in stages(found)
    assert "Hang and set" in stages(found)


def test_of_a_box_that_stands_only_its_drawers_are_told() -> None:
    """Its sides are in; the drawers are still to be made."""
    sides = {
        part.path: "assembled"
        for part in worked().room.parts
        if part.case == "pans" and ".drawer" not in part.path
    }
    found = left(sides)
    (section,) = [s for s in found.sections if s.title == "pans"]
    at = next(n for n, b in enumerate(section.blocks)
              if isinstance(b, Heading) and b.text == "Putting it together")  # fmt: skip
    told = [
        rich_text(step.text)
        for block in section.blocks[at:]
        if isinstance(block, CheckList)
        for step in block.steps
    ]
    assert any("drawer" in words for words in told)
    assert not any("toe board" in words or "nailer" in words for words in told)


def test_open_hold_points_are_in_and_moot_ones_are_not() -> None:
    """Once the drawers are cut, measuring before they are cut comes too late."""
    assert "Stop at hold point 1" in stages(left({}))
    assert "hold point" not in stages(left({"": "cut"}))


def test_a_stop_stands_before_the_step_that_brings_in_what_waits() -> None:
    """The back waits for the opening: it is measured before the back goes on."""
    room = worked().room
    document = packet_document(
        PacketContent(room, planned(room), (), (), (), "0" * 12, hold_points(room))
    )
    (section,) = [s for s in document.sections if s.title == "pans"]
    told = [
        rich_text(step.text)
        for block in section.blocks
        if isinstance(block, CheckList)
        for step in block.steps
    ]
    stop = next(n for n, words in enumerate(told) if "Stop, hold point 1" in words)
    back = next(n for n, words in enumerate(told) if words.startswith("Lay the back"))
    assert stop < back
    assert "clear width" in told[stop]


def shown_at(document: Document, anchor: str) -> str:
    """All words of a section that speak of hold points."""
    (section,) = [s for s in document.sections if s.anchor == anchor]
    return repr([block for block in section.blocks if "hold" in repr(block)])


def test_a_piece_that_waits_for_a_reading_says_so_with_a_blank_wherever_it_is_shown() -> None:
    """Cut list, part cards and label of a drawer's end; none of a piece that does not wait."""
    room = worked().room
    points = hold_points(room)
    marks = HoldMarks(room, points)
    waits = "pans.drawer_1.back_end"
    assert [point.number for point in marks.points(waits)] == [1]
    assert not marks.points("pans.side_left")
    document = packet_document(PacketContent(room, planned(room), (), (), (), "0" * 12, points))
    for anchor in ("cut-list", "part-cards", "labels"):
        told = shown_at(document, anchor)
        assert "Blank(" in told
        assert "measure first" in told
    # In the cut list each reading is asked for once, whatever number of pieces wait for it.
    assert shown_at(document, "cut-list").count("Blank(") == len(
        marks.points(*(part.path for part in room.parts))
    )
    (labels,) = [
        block
        for section in document.sections
        for block in section.blocks
        if isinstance(block, Labels)
    ]
    signed = {label.target for label in labels.labels if "measure first" in label.signs}
    assert signed == set(points[0].parts)


def test_what_waits_at_a_hold_point_is_all_that_is_cut_to_its_reading() -> None:
    """A drawer's back end goes by the opening as its front end does, and so does its bottom."""
    (point,) = [each for each in hold_points(worked().room) if each.path == "pans.clear_width"]
    drawer = {f"pans.drawer_1.{name}" for name in ("front_end", "back_end", "bottom")}
    assert drawer <= set(point.parts)
    assert not {"pans.drawer_1.side_left", "pans.bottom", "upper.back"} & set(point.parts)


def test_what_is_read_passes_its_hold_point_on_every_page() -> None:
    points = [replace(point, read=point.planned) for point in hold_points(worked().room)]
    assert not HoldMarks(worked().room, points).points("pans.drawer_1.back_end")


@pytest.mark.parametrize("state", ["planned", "cut"])
def test_nothing_is_taped_out_once_something_is_made(state: str) -> None:
    """The marks to try the room with are for before anything is bought."""
    room, day = hung_room(WALL)
    first, *others = room.cases
    parts = tuple(replace(part, state=state) for part in first.parts)  # type: ignore[arg-type]
    room = replace(room, cases=(replace(first, parts=parts), *others))
    content = PacketContent(room, planned(room), (), (), (), "0" * 12, (), day=day, left_only=True)
    taped = [title for title in titles(packet_document(content)) if title.startswith("Taped out")]
    assert bool(taped) is (state == "planned")
