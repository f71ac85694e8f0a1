"""The words at the head of a part's card: what it is, how large, how many, where they go."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from casewright.casework.features import Bores, Cut
from casewright.casework.parts import Part
from casewright.outputs.inlines import Inline, Link, Rich, SignMark, Strong
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.mark_words import mark_list
from casewright.packet.part_groups import PartGroup
from casewright.packet.places import place_words
from casewright.packet.words import edge_words, place_titles, sizes
from casewright.room.matched import matched_slabs
from casewright.room.model import Room

__all__ = ["card_facts", "card_heading", "held_up_words", "open_holes", "pieces_words"]

_LONG_LIST = 40  # letters of a list of marks that still fits a heading
_MANY_PLACES = 12  # past which their names would take more room than they help


def card_heading(group: PartGroup) -> str:
    """Marks and names: '1: left side; 2: right side', '4, 23: stretcher, make 2'."""
    singles = [each for each in (group.parts, group.mirrored) if each]
    if all(len(each) == 1 for each in singles):
        return "; ".join(f"{each[0].mark}: {each[0].title}" for each in singles)
    marks = mark_list(part.mark for part in group.pieces)
    roles = ", ".join(dict.fromkeys(part.role for part in group.pieces))
    count = f"{roles}, make {len(group.pieces)}"
    if group.mirrored:
        hands = sorted((each[0].hand or "", len(each)) for each in singles)
        count += f", {' and '.join(f'{many} {hand}' for hand, many in hands)}"
    return f"{marks}: {count}" if len(marks) <= _LONG_LIST else count


def card_facts(group: PartGroup, room: Room, at: str = "", holds: HoldMarks | None = None) -> Rich:
    """What the pieces wait for, their sizes and stock, and which they are, in one paragraph.

    Parameters
    ----------
    at
        Key of the place the card stands under, which then need not be named again.
    holds
        What pieces wait for that go by a reading; None: none does.
    """
    found = [*_waiting(group, room), *_not_bored(group, room)]
    found += holds.in_full(group.pieces) if holds else ()
    found += _sizes(group.first, room)
    found += _matched(group, room)
    for pieces in sorted((group.parts, group.mirrored), key=_left_first):
        if not pieces:
            continue
        found.append(" ")
        if pieces[0].hand is not None:
            found += [SignMark(pieces[0].hand), "\u00a0"]
        alone = {part.case for part in group.pieces} == {at}
        found += [*(_links(pieces) if alone else pieces_words(pieces, room)), "."]
    return tuple(found)


def _left_first(pieces: Sequence[Part]) -> bool:
    return bool(pieces) and pieces[0].hand == "right"


def pieces_words(pieces: Sequence[Part], room: Room) -> tuple[Inline, ...]:
    """Pieces by their marks with the places they go to: '1, 3 pot store; 20 potting bench'.

    Each leads to the cut list, and is where others that lead to the piece arrive.
    """
    titles = place_titles(room)
    places = [(key, list(same)) for key, same in groupby(pieces, key=lambda part: part.case)]
    if len(places) > _MANY_PLACES:
        return (*_links(pieces), f", in {len({key for key, _ in places})} places")
    found: list[Inline] = []
    for key, same in places:
        found += [*(["; "] if found else []), *_links(same), f" {titles[key]}"]
    return tuple(found)


def _links(pieces: Sequence[Part]) -> Iterator[Inline]:
    for number, part in enumerate(pieces):
        if number:
            yield ", "
        yield Link(part.mark, f"cut:{part.path}", part.path)


def _sizes(part: Part, room: Room) -> Iterator[Inline]:
    unit, size, blank = room.spec.unit, part.finished, part.blank
    yield "Finished "
    yield from sizes(size.length, size.width, size.thickness, unit=unit, strong=True)
    if (blank.length.value, blank.width.value) != (size.length.value, size.width.value):
        yield "; cut "
        yield from sizes(blank.length, blank.width, unit=unit, strong=True)
    if part.edges:
        yield f"; {edge_words(part)}"
    yield f". Stock: {room.spec.stock[part.stock].title}"
    if part.grain:
        yield "; grain along the length"
    if part.milled_from:
        yield f"; {part.milled_from}, saw to length when it is fitted"
    yield f".{_lapped(part)}"


def _matched(group: PartGroup, room: Room) -> Iterator[Inline]:
    """Which others the grain runs on through."""
    own = {part.path for part in group.pieces}
    marks = {part.path: part.mark for part in room.parts} if room.spec.matches else {}
    for name, slabs in matched_slabs(room).items():
        if own.intersection(slabs):
            words = mark_list(marks[slab] for slab in slabs)
            yield f" Match {name}: the grain runs on through {words}, as the triangle shows."


def _lapped(part: Part) -> str:
    """Which members of a half-lapped frame run full length on the show face."""
    faces = {f.face for f in part.features if isinstance(f, Cut) and f.kind == "lap"}
    if faces == {"B"}:
        return " It runs its full length on the show face."
    return " On the show face it ends at the boards that lie over it." if faces == {"A"} else ""


_BORED: Mapping[str, tuple[str, ...]] = {
    "hardware.hinge": ("hinge cup", "hinge plate"),
    "hardware.hinge.half_crank": ("hinge cup", "hinge plate"),
    "hardware.hinge.inset_crank": ("hinge cup", "hinge plate"),
    "hardware.pull": ("pull", "pull play"),
    "hardware.slide": ("slide",),
    "hardware.undermount": ("slide", "slide hook"),
}
"""Holes that a data sheet says the places of, by the path of what is asked for."""


def open_holes(part: Part, room: Room) -> dict[str, str]:
    """Kinds of its holes that wait for a data sheet, each with the path of the question."""
    kinds = {feature.kind for feature in part.features if isinstance(feature, Bores)}
    return {
        kind: question.path
        for question in room.questions
        for kind in _BORED.get(question.path, ())
        if kind in kinds and part.path in question.waiting
    }


def held_up_words(group: PartGroup, room: Room) -> str:
    """That pieces which wait for an answer are not cut: which ones, where others may be."""
    names = dict.fromkeys(place_words(room, path) for path in group.waits_for)
    which = f" {group.held_up}" if group.held_up else ""
    states = {part.state for part in group.pieces if part.waits_for}
    do = "cut" if "planned" in states else "machine"
    return f"Do not {do}{which} yet: a question is open about {'; '.join(names)}."


def _not_bored(group: PartGroup, room: Room) -> Iterator[Inline]:
    """Which holes wait, where the piece itself may be cut."""
    paths = dict.fromkeys(open_holes(group.first, room).values())
    if paths and not group.waits_for:
        names = dict.fromkeys(place_words(room, path) for path in paths)
        yield SignMark("ask")
        yield " "
        yield Strong(
            f"Cut it, but bore nothing for {' and '.join(names)} yet: a question is open."
        )
        yield " "


def _waiting(group: PartGroup, room: Room) -> Iterator[Inline]:
    if group.waits_for:
        yield SignMark("ask")
        yield " "
        yield Strong(held_up_words(group, room))
        yield " "
