"""The whole packet: pages in the order they are needed, and the tables that go with it."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.breakdown import Breakdown
from casewright.buying import BuyLine
from casewright.findings import Finding, Question
from casewright.install.hanging import Hanging
from casewright.jigs import Jigs
from casewright.outputs.document import (
    LABELS_A4,
    LABELS_LETTER,
    Document,
    Paper,
    Section,
    paper_named,
)
from casewright.packet.buy_page import buy_section
from casewright.packet.case_cards import case_sections
from casewright.packet.cover import cover_section
from casewright.packet.cut_list import cut_list_section
from casewright.packet.cut_sheets import cut_sheet_sections
from casewright.packet.elevations import elevation_section
from casewright.packet.free_pages import free_sections
from casewright.packet.hanging_pages import hanging_sections
from casewright.packet.hold_pages import HoldPages
from casewright.packet.jig_pages import jig_section
from casewright.packet.labels import labels_section
from casewright.packet.order_page import order_section
from casewright.packet.part_cards import part_section
from casewright.packet.stick_pages import stick_section
from casewright.packet.survey_pages import survey_sections
from casewright.packet.tape_page import tape_section
from casewright.packet.trim_pages import trim_section
from casewright.packet.wall_page import wall_section
from casewright.packet.what_is_left import Left, all_of, left_of, without_dead_ends
from casewright.resolve import HoldPoint
from casewright.room.model import Room

__all__ = ["Cards", "PacketContent", "draw_cards", "packet_document"]


@dataclass(frozen=True, slots=True)
class Cards:
    """The pages that hang on no plan of the cuts: they can be drawn before there is one.

    Parameters
    ----------
    parts
        Of the parts; None where nothing is left to do at the bench.
    cases
        Of the cases, one each.
    """

    parts: Section | None
    cases: tuple[Section, ...]


def draw_cards(room: Room, points: tuple[HoldPoint, ...], *, left_only: bool = False) -> Cards:
    """The cards of parts and cases, which take longest to draw.

    Parameters
    ----------
    points
        The hold points of the room.
    left_only
        Whether they are for what is left to do only.
    """
    left = left_of(room) if left_only else all_of(room)
    paper, holds = paper_named(room.spec.paper), _holds(room, points, left)
    has_bench = bool(left.bench.parts) or not left.is_part
    return Cards(
        part_section(left.bench, paper, holds.marks) if has_bench else None,
        case_sections(left.floor, paper, holds, left_only=left.is_part),
    )


def _holds(room: Room, points: tuple[HoldPoint, ...], left: Left) -> HoldPages:
    """The hold points; of what is left only those that are still open."""
    if left.is_part:
        points = tuple(point for point in points if point.read is None)
    return HoldPages(room, points)


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
    jigs
        What is worth making before the work begins.
    left_only
        Whether it is for what is left to do only.
    cards
        Its cards, where they are drawn already; None: they are drawn with the rest.
    pages
        Address that the job's pages are served at, for the codes of labels; empty: none.
    """

    room: Room
    breakdown: Breakdown
    buying: tuple[BuyLine, ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    fingerprint: str
    points: tuple[HoldPoint, ...] = ()
    day: Hanging | None = None
    jigs: Jigs | None = None
    left_only: bool = False
    cards: Cards | None = None
    pages: str = ""


def packet_document(content: PacketContent) -> Document:
    """The packet as a printed document."""
    room = content.room
    spec = room.spec
    paper = paper_named(spec.paper)
    left = left_of(room) if content.left_only else all_of(room)
    sections = _sections(content, left, paper)
    title = "Shop packet of what is left to do" if left.is_part else "Shop packet"
    cover = cover_section(
        room, content.findings, content.questions, paper, sections=len(sections), title=title
    )
    unit = "inches" if spec.unit == "in" else "millimetres"
    document = Document(
        title=title,
        job=spec.name,
        fingerprint=content.fingerprint,
        unit=spec.unit,
        paper=paper,
        sections=(cover, *sections),
        unit_note=f"Sizes in {unit}; a size in another unit says so",
    )
    return without_dead_ends(document) if left.is_part else document


def _sections(content: PacketContent, left: Left, paper: Paper) -> list[Section]:
    """All but the cover; of what is left only those that still have something on them."""
    breakdown, day = content.breakdown, content.day or Hanging({})
    cards = content.cards or draw_cards(content.room, content.points, left_only=left.is_part)
    holds = _holds(content.room, content.points, left)
    found = [order_section(left, breakdown, holds), elevation_section(left.wall, paper)]
    if not (left.is_part and any(part.state != "planned" for part in content.room.parts)):
        found.append(tape_section(left.wall, day, paper))  # it is for before anything is bought
    if left.saw.parts or not left.is_part:
        found.append(buy_section(content.buying, content.room.spec.unit))
        found.append(cut_list_section(left.bench, breakdown, holds.marks))
        found += cut_sheet_sections(left.saw, breakdown, paper, holds.marks)
    if left.bench.parts or not left.is_part:
        found.append(jig_section(content.room, content.jigs, paper) if content.jigs else None)
    found += (cards.parts, *cards.cases)
    if left.wall.cases or not left.is_part:
        found += survey_sections(content.room)
        found += _at_the_wall(left.wall, day, paper)
    if left.saw.parts or not left.is_part:
        labels = LABELS_LETTER if content.room.spec.paper == "letter" else LABELS_A4
        found.append(labels_section(left.saw, breakdown, labels, holds.marks, content.pages))
    return [section for section in found if section is not None]


def _at_the_wall(room: Room, day: Hanging, paper: Paper) -> list[Section | None]:
    return [
        *hanging_sections(room, day, paper),
        *free_sections(room),
        wall_section(room, day),
        trim_section(room, paper),
        stick_section(room, day, paper),
    ]
