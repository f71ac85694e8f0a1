"""Labels for the parts as they come off the saw: what it is, and what happens to it next."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from casewright.breakdown import Breakdown
from casewright.casework.features import Bores
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.drawing import SignKind
from casewright.outputs.blocks import Label, Labels, LabelSheet
from casewright.outputs.document import Section
from casewright.outputs.inlines import Inline, PageNumber, Rich
from casewright.packet.cut_places import rough_lengths
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.wall_page import HANGING
from casewright.packet.words import edge_words, place_titles, plane_word, sizes, unfold
from casewright.room.matched import match_names
from casewright.room.model import Room
from casewright.stock import Glazing

__all__ = ["labels_section"]

_ON_THE_LEAF = ("hinge cup", "pull")


def labels_section(
    room: Room,
    breakdown: Breakdown,
    sheet: LabelSheet,
    holds: HoldMarks | None = None,
    pages: str = "",
) -> Section:
    """A label for every piece, in the order of the cut list.

    Parameters
    ----------
    holds
        What pieces wait for that go by a reading; None: none does.
    pages
        Address that the job's pages are served at; empty: labels bear no code.
    """
    holds = holds or HoldMarks(room)
    titles, rough, matches = place_titles(room), rough_lengths(breakdown), match_names(room)
    labels = tuple(
        replace(
            _label(room, part, titles[part.case], rough.get(part.path), holds, matches),
            opens=_opens(pages, part),
        )
        for part in room.parts
    )
    size = "4 × 1 in" if room.spec.paper == "letter" else "99.1 × 33.9 mm"
    note = (
        f"Labels. On plain paper: cut along the lines, fix with tape. Or on label sheets of "
        f"{sheet.across} × {sheet.down}, {size}. Print at full size."
    )
    if pages:
        note += f" The codes open a part on a phone while the job is served at {pages}."
    return Section("Labels", (Labels(sheet, labels, note=note),), "labels", plain=True)


def _opens(pages: str, part: Part) -> str:
    """Short and in capitals, which makes the dots of the code larger."""
    return f"{pages.rstrip('/')}/P/{part.mark}".upper() if pages else ""


def _label(
    room: Room,
    part: Part,
    case: str,
    rough: Dim | None,
    holds: HoldMarks,
    matches: Mapping[str, str],
) -> Label:
    unit = room.spec.unit
    goods = room.spec.stock[part.stock]
    verb = "order " if isinstance(goods, Glazing) else "cut "
    lines: tuple[Rich, ...] = (
        case,
        unfold(verb, sizes(rough or part.blank.length, part.blank.width, unit=unit, strong=True)),
    )
    finished = sizes(part.finished.length, part.finished.width, unit=unit)
    match = f"; match {matches[part.path]}" if part.path in matches else ""
    aside: tuple[Rich, ...] = (
        unfold("fitted " if rough else "finished ", finished, match),
        goods.title,
        edge_words(part),
    )
    if reading := holds.on_label(part.path):
        aside += (reading,)
    signs: list[SignKind] = [] if part.hand is None else [part.hand]
    if part.waits_for:
        signs.append("ask")
    if reading:
        signs.append("measure first")
    return Label(
        part.mark, part.title, lines, tuple(signs), toward=plane_word(part, "w0"),
        target=part.path, aside=aside, after=_next(room, part),
    )  # fmt: skip


def _next(room: Room, part: Part) -> Rich:
    """What is done with it, in order, with the page it is done from."""
    before = [f for f in part.features if not _after_gluing(part, f.kind)]
    after = any(_after_gluing(part, f.kind) for f in part.features)
    work: list[Rich] = []
    if before:
        verb = "bore" if all(isinstance(f, Bores) for f in before) else "machine"
        work.append((f"{verb} p. ", PageNumber(part.path)))
    if part.edges:
        work.insert(0 if part.role == "door" else len(work), "edges")
    if any(case.key == part.case for case in room.cases):
        verb = "hang" if part.role == "door" else "put together"
        work.append((f"{verb} p. ", PageNumber(f"assembly:{part.case}")))
    else:
        work.append(("fit at the wall p. ", PageNumber(HANGING)))
    if after:
        work.append(("bore p. ", PageNumber(part.path)))
    found: list[Inline] = []
    for number, item in enumerate(work):
        found += ["then " if not number else ", ", *unfold(item)]
    return tuple(found)


def _after_gluing(part: Part, kind: str) -> bool:
    """Whether holes go through a whole leaf, after its frame is on."""
    return bool(part.front) and part.role != "door" and kind in _ON_THE_LEAF
