"""A packet for what is left: no page for what is done, every link of it leads somewhere."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from tests.jobs import loaded

from casewright.casework.parts import Part
from casewright.job.nudges import plan_job
from casewright.job.worked import WorkedJob, work_out
from casewright.outputs.blocks import CheckList, Heading
from casewright.outputs.document import Document, check_links
from casewright.outputs.inlines import rich_text
from casewright.packet.packet import PacketContent, packet_document
from casewright.resolve import hold_points

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
    job = replace(worked(), room=room)
    content = PacketContent(
        room, plan_job(job), (), (), (), "0" * 12, hold_points(room), left_only=True
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
        PacketContent(room, plan_job(worked()), (), (), (), "0" * 12, hold_points(room))
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
