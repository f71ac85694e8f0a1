"""The packet of every example job: whole, linked, traceable and readable by another program."""

from __future__ import annotations

import io
from functools import cache
from importlib.resources import as_file, files

import pypdf
import pytest
from tests.jobs import FIVE_LINES, read
from tests.printed_numbers import is_told

from casewright.breakdown import break_down, saw_cards
from casewright.cutting.engine import Stop
from casewright.findings import entered
from casewright.job import packets
from casewright.job.fingerprint import fingerprint
from casewright.job.load import load_job
from casewright.job.numbers import chain_with
from casewright.job.packets import Purchases, draw_packet, purchases_of
from casewright.job.worked import work_out
from casewright.outputs.blocks import Callout
from casewright.outputs.document import Document, anchors, check_links, measures
from casewright.outputs.pdf import pdf_bytes
from casewright.packet.packet import PacketContent, packet_document

EXAMPLES = ("bookcase", "garden_room", "paint_store_metric")
MM_PER_POINT = 25.4 / 72


@cache
def planned(name: str) -> Purchases:
    """With plans that are good enough for pages: little is searched for, no other depth tried."""
    source = files("casewright.job") / "examples" / f"{name}.toml"
    with as_file(source) as path:
        worked = work_out(load_job(path).spec)
    return purchases_of(worked, break_down(worked.room, stop=Stop(nodes=2_000)))


@cache
def packet(name: str) -> Document:
    made = planned(name)
    room = made.worked.room
    return packet_document(
        PacketContent(
            room, made.breakdown, made.buying, made.findings, made.questions,
            fingerprint(room.spec), day=made.day,
        )
    )  # fmt: skip


@cache
def printed(name: str) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf_bytes(packet(name))))


def test_another_process_may_plan_the_cuts(monkeypatch: pytest.MonkeyPatch) -> None:
    """The packet is the same, whoever planned."""
    worked = work_out(read(FIVE_LINES))
    here = draw_packet(worked).document
    monkeypatch.setattr(packets, "pays_apart", lambda _: True)
    assert draw_packet(worked).document == here


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_part_can_be_led_to(name: str) -> None:
    """Each physical piece has one place in the packet, and every link arrives."""
    document = packet(name)
    paths = {part.path for part in planned(name).worked.room.parts}
    assert paths
    assert paths <= set(anchors(document))
    check_links(document)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_printed_number_answers_why(name: str) -> None:
    """Each length on paper, drawings included, stands on the chain with that very value."""
    made = planned(name)
    room = made.worked.room
    nodes = dict(made.breakdown.chain.nodes)
    entered((dim for line in made.buying for dim in line.numbers), nodes)
    printed_numbers = list(measures(packet(name)))
    assert len(printed_numbers) > 3 * len(room.parts)
    for number in printed_numbers:
        if number.path not in nodes:
            nodes |= chain_with(room, number.path).nodes
        assert is_told(number, nodes, room.spec.unit), number


@pytest.mark.parametrize("name", ["bookcase", "paint_store_metric"])
def test_printed_pages_name_every_part_and_have_the_papers_size(name: str) -> None:
    """Another program reads every mark and title back, from pages of the job's paper."""
    room = planned(name).worked.room
    reader = printed(name)
    words = " ".join(" ".join(page.extract_text().split()) for page in reader.pages)
    assert "edge edge" not in words
    for part in room.parts:
        assert part.title in words
        assert part.mark in words.split() or f"{part.mark}:" in words or f"{part.mark}," in words
    want = (215.9, 279.4) if room.spec.paper == "letter" else (210.0, 297.0)
    for page in reader.pages:
        box = page.mediabox
        sides = sorted((float(box.width) * MM_PER_POINT, float(box.height) * MM_PER_POINT))
        assert sides == pytest.approx(want, abs=0.1)


def test_waiting_parts_are_asked_about_and_not_cut() -> None:
    """What hangs on an unmeasured thickness stands on the cover and on no cut sheet."""
    made = planned("garden_room")
    thick = [q for q in made.questions if q.path.endswith(".thickness")]
    assert thick
    cover = packet("garden_room").sections[0]
    asked = {block.title.lower() for block in cover.blocks if isinstance(block, Callout)}
    assert {question.needs.lower() for question in thick} <= asked
    waiting = {path for question in thick for path in question.waiting}
    cut = {
        given.piece.id
        for plan in made.breakdown.plans
        for card in saw_cards(plan)
        for step in card.steps
        for given in step.gives
        if given.piece is not None
    }
    assert waiting
    assert cut
    assert not waiting & cut
