"""Cards of cases in corners: a diagonal one at the wall, a blind and a diagonal base."""

from __future__ import annotations

from functools import cache

from tests.jobs import HEAD, read
from tests.printed_numbers import is_told

from casewright.buying.edges import edges
from casewright.casework.cautions import CAUTIONS
from casewright.job.numbers import chain_with
from casewright.job.worked import work_out
from casewright.outputs.blocks import Paragraph
from casewright.outputs.document import LETTER, Document, anchors, measures
from casewright.outputs.inlines import rich_text
from casewright.packet.case_cards import case_sections
from casewright.packet.feature_rows import feature_rows
from casewright.packet.hold_pages import HoldPages
from casewright.packet.part_cards import part_section
from casewright.room.model import Room

CORNERS = f"""{HEAD}[stock.plywood]
measured = "0.72"
[stock.thin_plywood]
measured = "0.2"
[stock.fibreboard]
measured = "0.75"
[case.up]
kind = "wall"
width = 24
diagonal = "left"
edge = "band"
[case.low]
kind = "base"
width = 36
diagonal = "right"
[case.blind]
kind = "base"
width = 42
blind = "left"
"""


@cache
def room() -> Room:
    return work_out(read(CORNERS)).room


@cache
def cards() -> Document:
    """The cards of the cases and of their parts; nothing is planned at the saw."""
    own = (part_section(room(), LETTER), *case_sections(room(), LETTER, HoldPages(room(), ())))
    return Document("Cards", "corners", "0", "in", LETTER, own)


def words(anchor: str) -> str:
    """What the paragraphs of a section say."""
    [section] = [section for section in cards().sections if section.anchor == anchor]
    blocks = [b for block in section.blocks for b in getattr(block, "blocks", (block,))]
    return " ".join(rich_text(b.text) for b in blocks if isinstance(b, Paragraph))


def test_every_printed_number_answers_why() -> None:
    """Also those of drawings at 45 degrees; each part is there."""
    nodes = dict(room().chain.nodes)
    for number in measures(cards()):
        if number.path not in nodes:
            nodes |= chain_with(room(), number.path).nodes
        assert is_told(number, nodes, "in"), number
    assert {part.path for part in room().parts} <= set(anchors(cards()))


def test_cards_tell_what_their_corners_ask_of_the_room() -> None:
    """A diagonal one its neighbours' depth; a blind one how far it stands off the wall."""
    assert "its neighbours are 12 deep" in words("up")
    assert "it stands 3 off the corner wall" in words("blind")


def test_a_clip_is_an_operation_of_its_own() -> None:
    """With its caution, after the blank is cut, and a slant to measure."""
    assert CAUTIONS["saw_guided"] in words("part-cards")
    [bottom] = [part for part in room().parts if part.path == "up.bottom"]
    [row] = feature_rows(bottom, "in")
    told = " ".join(rich_text(cell) for cell in row.cells)
    assert "clipped at 45°, when the blank is cut" in told
    assert "along a guide on both marks" in told
    assert "along the slant, from edge to edge" in told


def test_slants_are_banded_and_bought_for() -> None:
    """The band of the upper: its sides, its strips, and the slants of its boards and shelves."""
    [band] = [line for line in edges(room()) if "up.side_left" in line.paths]
    assert {"up.bottom", "up.top", "up.shelf.1"} <= set(band.paths)
