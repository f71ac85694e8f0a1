"""Order of work: the stages from buying to hanging, and what is measured before each."""

from __future__ import annotations

from casewright.breakdown import Breakdown
from casewright.casework.cases import Case
from casewright.drawing import measure_of
from casewright.outputs.blocks import Block, Callout, CheckList, Heading, Paragraph, Step
from casewright.outputs.document import Section
from casewright.outputs.inlines import Blank, Inline, Link, PageNumber, Rich
from casewright.packet.cut_places import cutting_anchors
from casewright.packet.words import unfold
from casewright.room.model import Room

__all__ = ["order_section"]

_HANGING = (
    "Take doors and shelves off first, and lift heavy cases with a second person or a jack. Screw "
    "into the framing; look for pipes and cables before boring into a wall. Local codes and the "
    "makers' instructions come first."
)


def order_section(room: Room, breakdown: Breakdown) -> Section:
    """The stages of the job, each with the pages it is done from."""
    parts = _leads({f"parts:{case.key}": case.spec.title for case in room.cases})
    together = _leads({f"assembly:{case.key}": case.spec.title for case in room.cases})
    steps = [
        Step("Buy", (("From ", *_leads({"buy": "the buy list"}), "."),)),
        _sheets(room),
        Step(
            "Cut by setting, and label every piece as it comes off the saw",
            (_leads(cutting_anchors(room, breakdown)), _leads({"labels": "Labels"})),
            ("Cut nothing that is marked to wait.",),
        ),
        Step("Machine the parts: rabbets, dadoes, pockets, holes", (parts,)),
        Step("Band, lip or fill the edges; sand the insides", (parts,)),
        Step("Put one box together, measure it, then the rest", (together, *_boxes(room))),
    ]
    steps += _fronts(room)
    steps += [
        Step("Finish", ("Follow the paint maker's sheet: air, mask, fire, drying times.",)),
        Step(
            "Hang and set",
            (_placing(room),),
            (_HANGING,),
        ),
    ]
    blocks: list[Block] = [
        Paragraph("Tick each stage. Do not pass a blank: what comes after it hangs on it."),
        CheckList(tuple(steps)),
        Heading("When a reading is off", 2),
        Callout(
            "measure first",
            "Write the reading in the job file and print the packet again before the next cut.",
        ),
    ]
    return Section("Order of work", tuple(blocks), "order")


def _leads(places: dict[str, str]) -> tuple[Inline, ...]:
    found: list[Inline] = []
    for anchor, title in places.items():
        found += [", " if found else "", Link(title, anchor), " p. ", PageNumber(anchor)]
    return tuple(found)


def _sheets(room: Room) -> Step:
    """Thickness of every stock that a part is made from."""
    keys = dict.fromkeys(part.stock for part in room.parts)
    notes: list[Rich] = [(f"{room.spec.stock[key].title}: ", Blank()) for key in keys]
    return Step("Measure the sheets and boards before cutting, three places each", tuple(notes))


def _boxes(room: Room) -> tuple[Rich, ...]:
    """Outside of each box: what is wanted, how far off it may be, and a blank."""
    return tuple(_box(room, case) for case in room.cases)


def _box(room: Room, case: Case) -> Rich:
    unit = room.spec.unit
    found: list[Inline] = [f"{case.spec.title}: "]
    for word, dim in (("width", case.width), ("height", case.height), ("depth", case.depth)):
        found += [f" {word} ", measure_of(dim, unit)]
        found += [" (± ", measure_of(case.tolerance, unit), ") ", Blank(13.0)]
    return tuple(found)


def _fronts(room: Room) -> list[Step]:
    """Openings are read before a door is cut."""
    cases = [case for case in room.cases if case.fronts]
    if not cases:
        return []
    notes: list[Rich] = [
        unfold(f"{case.spec.title}, opening: width ", Blank(), " height ", Blank())
        for case in cases
    ]
    doors = _leads({f"parts:{case.key}": case.spec.title for case in cases})
    return [
        Step("Measure the openings before the doors are cut", tuple(notes)),
        Step("Cut, bore and fit the doors", (doors,)),
    ]


def _placing(room: Room) -> Rich:
    places = {f"run:{run.spec.key}": run.spec.title for run in room.runs}
    return _leads(places or {case.key: case.spec.title for case in room.cases})
