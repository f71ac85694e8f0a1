"""Order of work: the stages from buying to hanging, and what is measured before each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from casewright.breakdown import Breakdown
from casewright.casework.cases import Case
from casewright.outputs.blocks import CheckList, Paragraph, Step
from casewright.outputs.document import Section
from casewright.outputs.inlines import Blank, Inline, Link, PageNumber, Rich
from casewright.packet.cut_places import cutting_places
from casewright.packet.hold_pages import HoldPages
from casewright.packet.key import key_blocks
from casewright.packet.readings import BOXES, OPENINGS, STOCK, reading_blocks
from casewright.packet.wall_page import HANGING
from casewright.packet.what_is_left import Left
from casewright.room.model import Room

__all__ = ["finish_step", "order_section"]

_LIFTING = (
    "A sheet is heavy and catches the wind: carry it with a second person or a panel carrier, "
    "gloves on, and stack sheets flat or lashed upright."
)
_DUST = (
    "A hot iron burns and a trimming knife slips: hands behind it. Fine dust harms lungs, that of "
    "fibreboard above all: extraction and a dust mask."
)
_FINISHING = (
    "Mist and vapour harm lungs, waterborne too: moving air and the mask that the maker's sheet "
    "names; for solvents one with cartridges for vapour. Solvent vapour burns: no flame, pilot "
    "light, heater or spark, and a fan made for vapour. Two-part finishes with isocyanates are "
    "not for a home shop. Gloves and eyes protected. Dry oily rags flat, outdoors: in a heap "
    "they catch fire by themselves. The maker's sheet and local rules come first."
)
_HANGING = (
    "Take doors and shelves off first, and lift heavy cases with a second person or a jack; "
    "nobody holds a case up while its screws are driven. Screw into the framing; look for pipes "
    "and cables before boring into a wall. Local codes and the makers' instructions come first."
)


def order_section(left: Left, breakdown: Breakdown, holds: HoldPages) -> Section:
    """The stages of the job, each with the pages it is done from; then readings and key.

    Of what is left only the stages at which something is to be done.
    """
    return Section(
        "Order of work, and how to read this packet",
        (
            Paragraph("Tick each stage. Do not pass a blank: what comes after it hangs on it."),
            CheckList(tuple(_stages(left, breakdown, holds))),
            *holds.blocks(),
            *reading_blocks(left.floor),
            *key_blocks(),
        ),
        "order",
    )


def _stages(left: Left, breakdown: Breakdown, holds: HoldPages) -> Iterator[Step]:
    cards = _leads({"part-cards": "the part cards"})
    if left.saw.parts or not left.is_part:
        yield from _at_the_saw(left.saw, breakdown, holds)
    if left.bench.parts or not left.is_part:
        yield Step("Machine the parts: rabbets, dadoes, pockets, holes", (("From ", *cards, "."),))
        yield Step("Band, lip or fill the edges; sand the insides", (), (_DUST,))
    boxes = [case for case in left.floor.cases if not left.is_part or _is_open(case)]
    if boxes:
        yield _together(boxes)
    stop = holds.stage()
    if stop is not None:
        yield stop
    room = left.floor
    if any(case.fronts for case in room.cases):
        _, doors = _cutting(left.saw, breakdown)
        yield Step(f"Measure the openings before the {_hung(room)} are cut", (_reading(OPENINGS),))
        yield Step(f"Cut, put together, bore and fit the {_hung(room)}", (doors or cards,))
    yield finish_step(left.wall)
    if left.wall.cases:
        hang = any(case.spec.is_hung for case in left.wall.boxes)
        words = "Hang and set" if hang else "Set in place"
        yield Step(words, (_placing(left.wall),), (_HANGING,))


def _at_the_saw(room: Room, breakdown: Breakdown, holds: HoldPages) -> Iterator[Step]:
    first, _ = _cutting(room, breakdown)
    wait = "Cut nothing that is marked to wait."
    if any(case.fronts for case in room.cases):
        wait += f" Leave the pieces of {_hung(room)} until their openings are measured."
    if holds.stage() is not None:
        wait += " Leave what waits at a hold point, too."
    yield Step("Buy", (("From ", *_leads({"buy": "the buy list"}), "."),), (_LIFTING,))
    yield Step("Measure the thickness of the sheets and boards", (_reading(STOCK),))
    yield Step(
        "Cut by setting, and label every piece as it comes off the saw",
        ((*first, ", ", *_leads({"labels": "labels"})), wait),
    )


def _is_open(case: Case) -> bool:
    """Whether something of its box is not put together yet."""
    apart = ("planned", "cut", "machined")
    return any(part.state in apart and not part.front for part in case.parts)


def _together(cases: Sequence[Case]) -> Step:
    many = len(cases) > 1
    box = "one box" if many else "the box"
    after = "write it down, then put the others together" if many else "write it down"
    pages = _leads({f"assembly:{case.key}": case.spec.title for case in cases})
    return Step(
        f"Put {box} together first and measure it; {after}",
        ((*pages, "; ", *_leads({BOXES: "readings"})),),
    )


def _hung(room: Room) -> str:
    """What is made to measured openings: doors, drawers, or both."""
    drawers = any(case.drawers for case in room.cases)
    if not drawers:
        return "doors" if any(case.doors for case in room.cases) else "fronts"
    return "doors and drawers" if any(case.doors for case in room.cases) else "drawers"


def _reading(anchor: str) -> Rich:
    return ("Into the ", *_leads({anchor: "readings"}), ".")


def finish_step(room: Room) -> Step:
    """How what is put together gets its coats, with the usual cautions."""
    hinged = any(case.fronts for case in room.cases)
    off = "take hinges and pulls off, mask the bores, " if hinged else ""
    return Step(
        f"Finish: {off}try it on a test piece first",
        (
            "Fill, sand, prime, sand; then as many coats as the tin says, sanded between.",
            ("By the tin: recoat after ", Blank(), " handle after ", Blank(), " hard after ",
             Blank()),
        ),
        (_FINISHING,),
    )  # fmt: skip


def _cutting(room: Room, breakdown: Breakdown) -> tuple[tuple[Inline, ...], tuple[Inline, ...]]:
    """Where boxes are cut, and where doors are, which wait for their openings."""
    leaves = {path for case in room.cases for front in case.fronts for path in front.parts}
    leaves |= {path for case in room.cases for drawer in case.drawers for path in drawer.parts}
    places = cutting_places(room, breakdown)
    boxes = {anchor: each.title for anchor, each in places.items() if each.pieces - leaves}
    doors = {anchor: each.title for anchor, each in places.items() if each.pieces & leaves}
    return _leads(boxes), _leads(doors)


def _leads(places: dict[str, str]) -> tuple[Inline, ...]:
    found: list[Inline] = []
    for anchor, title in places.items():
        found += [", " if found else "", Link(title, anchor), " p. ", PageNumber(anchor)]
    return tuple(found)


def _placing(room: Room) -> tuple[Inline, ...]:
    """How it is done; runs, then the cases that stand alone."""
    placed = {case.key for run in room.runs for case in run.cases}
    wall = {HANGING: "at the wall"}
    places = wall | {f"run:{run.spec.key}": run.spec.title for run in room.runs}
    alone = {case.key: case.spec.title for case in room.cases if case.key not in placed}
    return _leads(places | alone)
