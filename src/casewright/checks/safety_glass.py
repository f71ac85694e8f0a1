"""Panes where the code asks for safety glass of a category.

All glass here is tempered or plastic. Where somebody may walk into it the code asks for more:
glass tested for its place, with the mark of its category etched in. A pane over 9 sq ft that
begins under 18 in and ends over 36 in from the floor is one such place, taken to have a way past
it; a pane that begins under 60 in, within 24 in of a door of the room on its wall, another.
Category I does up to 9 sq ft (0.84 m2), category II over that. Whether doors of cabinets count
is the building inspector's word: ask before the glass is ordered, for tempered glass cannot be
cut.

Passes
------
Glass doors of an upper, far from any door.

Fails
-----
A glass door beside the door of the room.

Sources
-------
`irc`: R308.4.2 and R308.4.3; 16 CFR 1201 for the categories. The area of 9 sq ft, 24 in and 60 in
read in secondary copies, 18 and 36 in from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.checks.rods import outer_box
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.sources import FOOT, INCH
from casewright.stock import Glazing

__all__ = ["RULE"]

_LARGE = 9 * FOOT**2
_LOW, _HIGH = 18 * INCH, 36 * INCH
_BESIDE, _DOOR_LOW = 24 * INCH, 60 * INCH


def _examine(room: Room) -> Iterator[Breach]:
    places: Mapping[str, CasePlace] | None = None
    for case in room.cases:
        told: set[str] = set()
        for part in case.parts:
            goods = room.spec.stock.get(part.stock)
            if not isinstance(goods, Glazing) or part.group in told:
                continue
            if places is None:
                places = {each.case.key: each for each in cases_on_walls(room)}
            why = _asked(room, case, part, places.get(case.key))
            if why:
                told.add(part.group)
                yield _breach(room, case, part, why)


def _asked(room: Room, case: Case, part: Part, place: CasePlace | None) -> str:
    """Why the code asks for a category, in words; empty where it does not."""
    box = outer_box(part)
    foot = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
    low, high = foot + box.y0, foot + box.y1
    area = part.finished.length.value * part.finished.width.value
    if area > _LARGE and low < _LOW and high > _HIGH:
        return f"is over 9 sq ft and begins {length(room, Fraction(low))} above the floor"
    if place is None or low >= _DOOR_LOW:
        return ""
    left, right = place.left + box.x0, place.left + box.x1
    for thing in place.wall.things:
        if thing.spec.kind != "door" or thing.left is None or thing.right is None:
            continue
        apart = max(thing.left.value - right, left - thing.right.value)
        if apart < _BESIDE:
            return (
                f"lies {length(room, max(Fraction(apart), Fraction(0)))} beside {thing.spec.title}"
            )
    return ""


def _breach(room: Room, case: Case, part: Part, why: str) -> Breach:
    area = part.finished.length.value * part.finished.width.value
    category = "II" if area > _LARGE else "I"
    return Breach(
        part.path,
        f"the {part.title} of {case.spec.title} {why}: the code asks for safety glass of category "
        f"{category} there",
        measured=f"{float(area / FOOT**2):.1f} sq ft",
        limit=f"category {category}",
        remedies=(
            f"ask the inspector, then order it tested to category {category}, its mark etched in",
            "a panel of wood or plastic instead of glass",
        ),
    )


RULE = Rule("safety glass", Severity.CARE, __doc__ or "", "irc", _examine)
