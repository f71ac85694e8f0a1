"""What each page of the desk shows: the sections of the packet, in the order of the work."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import partial

from casewright.breakdown import Desk
from casewright.casework.cases import Case
from casewright.install.hanging import hanging
from casewright.jigs import jigs
from casewright.job.packets import Purchases
from casewright.outputs.blocks import (
    Block,
    CheckList,
    Column,
    Heading,
    Paragraph,
    Row,
    Table,
)  # fmt: skip
from casewright.outputs.document import Paper, Section, paper_named
from casewright.outputs.html import section_html
from casewright.outputs.inlines import Link
from casewright.packet.buy_page import buy_section
from casewright.packet.case_cards import case_sections
from casewright.packet.case_parts import door_table, drawer_table
from casewright.packet.cut_list import cut_list_section
from casewright.packet.cut_sheets import cut_sheet_sections
from casewright.packet.door_sections import door_sections
from casewright.packet.free_pages import free_sections
from casewright.packet.hanging_pages import hanging_sections
from casewright.packet.hold_pages import HoldPages
from casewright.packet.jig_pages import jig_section
from casewright.packet.order_page import finish_step, order_section
from casewright.packet.part_cards import part_section
from casewright.packet.stick_pages import stick_section
from casewright.packet.survey_pages import survey_sections
from casewright.packet.tape_page import tape_section
from casewright.packet.trim_pages import trim_section
from casewright.packet.wall_page import wall_section
from casewright.packet.what_is_left import all_of
from casewright.resolve import hold_points
from casewright.room.model import Room
from casewright.web.anchors import Anchors
from casewright.web.snapshot import Snapshot

__all__ = ["PLANNED", "RUNS", "chapter_html"]

PLANNED = ("buy", "cut", "assemble")
"""Pages that wait for the cuts to be planned."""

RUNS = "runs"
"""In the place of a case: what belongs to no case, fillers and trims."""


def chapter_html(snapshot: Snapshot, page: str, of: str) -> str | None:
    """A page as HTML; None when there is none of that name.

    Parameters
    ----------
    snapshot
        With its purchases for a page of `PLANNED`.
    of
        Key of a case, or empty.
    """
    room = snapshot.worked.room
    if page in PLANNED:
        make = None if snapshot.purchases is None else _planned(page, snapshot.purchases)
    else:
        make = _worked(page, room, of)
    if make is None:
        return None
    leads = Anchors(room).address
    return "".join(section_html(section, leads) for section in make())


def _planned(page: str, purchases: Purchases) -> Callable[[], Iterable[Section]] | None:
    room, breakdown = purchases.worked.room, purchases.breakdown
    made: Mapping[str, Callable[[], Iterable[Section]]] = {
        "buy": lambda: [buy_section(purchases.buying, room.spec.unit)],
        "cut": lambda: [
            cut_list_section(room, breakdown),
            *cut_sheet_sections(room, breakdown, _paper(room)),
        ],
        "assemble": lambda: [
            order_section(all_of(room), breakdown, HoldPages(room, hold_points(room)))
        ],
    }
    return made.get(page)


def _worked(page: str, room: Room, of: str) -> Callable[[], Iterable[Section]] | None:
    whole: dict[str, tuple[bool, Callable[[Room], Iterable[Section]]]] = {
        "survey": (bool(room.survey.walls), survey_sections),
        "fronts": (any(case.fronts for case in room.cases), _fronts),
        "finish": (bool(room.boxes), _finish),
        "install": (bool(room.runs or room.free), _install),
    }
    if page in whole:
        is_there, make = whole[page]
        return partial(make, room) if is_there else None
    case = next((case for case in room.cases if case.key == of), None)
    if page == "cases" and case is not None:
        return partial(_case, room, case)
    if page == "machine":
        if not of:
            return partial(_jigs, room)
        if case is not None or of == RUNS:
            return partial(_cards, room, case)
    return None


def _paper(room: Room) -> Paper:
    return paper_named(room.spec.paper)


def _case(room: Room, case: Case) -> Iterable[Section]:
    # An island is drawn with the cases that stand in it.
    shown = room if case.spec.kind == "island" else replace(room, cases=(case,))
    return case_sections(shown, _paper(room), HoldPages(room, ()), only=case.key)


def _cards(room: Room, case: Case | None) -> Iterator[Section]:
    """Cards of the parts of a case, or of those that belong to none."""
    runs = room.runs if case is None else ()
    alone = replace(room, cases=() if case is None else (case,), runs=runs)
    section = part_section(alone, _paper(room))
    title = "Fillers and trims" if case is None else f"{case.spec.title}: part cards"
    yield replace(section, title=title)


def _jigs(room: Room) -> Iterator[Section]:
    section = jig_section(room, jigs(room, room.chain), _paper(room))
    if section is not None:
        yield section


def _fronts(room: Room) -> Iterator[Section]:
    """Doors and drawers of every case, as they stand on its card."""
    width, unit = _paper(room).text_width_mm, room.spec.unit
    for case in room.cases:
        blocks: list[Block] = []
        if case.doors:
            blocks += [Heading("Doors", 3), door_table(case, unit)]
            blocks += door_sections(room, case, width)
        if case.drawers:
            blocks += [Heading("Drawers", 3), drawer_table(room, case)]
        if blocks:
            where = Paragraph((Link("The case with its parts and steps", case.key), "."))
            yield Section(case.spec.title, (*blocks, where), f"fronts:{case.key}")


def _finish(room: Room) -> Iterator[Section]:
    """How it is done, then all that gets its coats, to be looked through."""
    rows = [Row((case.spec.title, ", ".join(_coated(case)))) for case in room.cases if case.parts]
    rows += [
        Row((run.spec.title, ", ".join(sorted({part.title for part in run.own_parts}))))
        for run in room.runs
        if run.own_parts
    ]
    columns = (Column("Of", share=1.0), Column("What of it shows gets its coats", share=3.0))
    yield Section(
        "Finish", (CheckList((finish_step(room),)), Table(columns, tuple(rows))), "finish"
    )


def _coated(case: Case) -> Iterator[str]:
    if any(not part.front for part in case.parts):
        yield "the box" if case.spec.is_box else "its pieces"
    yield from (front.title for front in case.fronts)


def _install(room: Room) -> Iterator[Section]:
    day, paper = hanging(room, Desk(room).chain), _paper(room)
    made = (
        tape_section(room, day, paper),
        *hanging_sections(room, day, paper),
        *free_sections(room),
        wall_section(room, day),
        trim_section(room, paper),
        stick_section(room, day, paper),
    )
    return (section for section in made if section is not None)
