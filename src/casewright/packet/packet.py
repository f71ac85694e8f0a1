"""The whole packet: pages in the order they are needed, and the tables that go with it."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.breakdown import Breakdown
from casewright.buying import BuyLine
from casewright.findings import Finding, Question
from casewright.install.hanging import Hanging
from casewright.outputs.document import A4, LABELS_A4, LABELS_LETTER, LETTER, Document, Section
from casewright.packet.buy_page import buy_section
from casewright.packet.case_cards import case_sections
from casewright.packet.cover import cover_section, elevation_section
from casewright.packet.cut_list import cut_list_section
from casewright.packet.cut_sheets import cut_sheet_sections
from casewright.packet.hanging_pages import hanging_sections
from casewright.packet.hold_pages import HoldPages
from casewright.packet.labels import labels_section
from casewright.packet.order_page import order_section
from casewright.packet.part_cards import part_section
from casewright.packet.stick_pages import stick_section
from casewright.packet.survey_pages import survey_sections
from casewright.packet.tape_page import tape_section
from casewright.packet.trim_pages import trim_section
from casewright.packet.wall_page import wall_section
from casewright.resolve import HoldPoint
from casewright.room.model import Room

__all__ = ["PacketContent", "packet_document"]


@dataclass(frozen=True, slots=True)
class PacketContent:
    """Everything a packet is made from.

    Parameters
    ----------
    room, breakdown, buying
        The model, its cuts, its purchases.
    findings, questions
        All that is open, the gravest first.
    fingerprint
        Of the job.
    points
        Its hold points.
    day
        Of hanging; None: its pages are left out.
    """

    room: Room
    breakdown: Breakdown
    buying: tuple[BuyLine, ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    fingerprint: str
    points: tuple[HoldPoint, ...] = ()
    day: Hanging | None = None


def packet_document(content: PacketContent) -> Document:
    """The packet as a printed document."""
    room = content.room
    spec = room.spec
    paper = LETTER if spec.paper == "letter" else A4
    labels = LABELS_LETTER if spec.paper == "letter" else LABELS_A4
    elevations, trims = elevation_section(room, paper), trim_section(room, paper)
    holds = HoldPages(room, content.points)
    day = content.day or Hanging({})
    taped, sticks = tape_section(room, day, paper), stick_section(room, day, paper)
    sections: list[Section] = [
        order_section(room, content.breakdown, holds),
        *([] if elevations is None else [elevations]),
        *([] if taped is None else [taped]),
        buy_section(content.buying),
        cut_list_section(room, content.breakdown),
        *cut_sheet_sections(room, content.breakdown, paper),
        part_section(room, paper),
        *case_sections(room, paper, holds),
        *survey_sections(room),
        *hanging_sections(room, day, paper),
        wall_section(room, day),
        *([] if trims is None else [trims]),
        *([] if sticks is None else [sticks]),
        labels_section(room, content.breakdown, labels),
    ]
    cover = cover_section(room, content.findings, content.questions, paper, sections=len(sections))
    unit = "inches" if spec.unit == "in" else "millimetres"
    return Document(
        title="Shop packet",
        job=spec.name,
        fingerprint=content.fingerprint,
        unit=spec.unit,
        paper=paper,
        sections=(cover, *sections),
        unit_note=f"Sizes in {unit}; a size in another unit says so",
    )
