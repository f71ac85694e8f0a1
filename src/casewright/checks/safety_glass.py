"""Panes where the code asks for safety glazing of a category.

All glass here is tempered, or it is plastic. Where somebody may walk into it the code asks for
more: glazing tested for its place, with the mark of its category on it. One such place is a pane
over 9 sq ft (0.84 m2) that begins under 18 in (457 mm) and ends over 36 in (914 mm) above the
floor, with a surface to walk on within 36 in of it: all four together. That there is one before a
case is taken for granted. Another is a pane that begins under 60 in (1524 mm) within 24 in (610
mm) of a door of the room, on its wall. A pane counts as it is cut, with the edge that its rebate
hides: it is smaller in sight. Category I does up to 9 sq ft, category II over that; plastic does
where it bears the mark of its own test, and a film glued on makes no safety glass. Panes on the
wall round the corner from a door's hinges, beside tubs, showers, stairs and pools are not looked
at: there the code has more places. Whether doors of cabinets count is the building inspector's
word: ask before the glass is ordered, for tempered glass cannot be cut.

Passes
------
Glass doors of an upper, far from any door.

Fails
-----
A glass door beside the door of the room.

Sources
-------
`irc`: R308.4.2 and R308.4.3, all six figures read in secondary copies; 16 CFR 1201 for the
categories, their area read in a secondary copy. That plastic is judged by ANSI Z97.1, and that
films count for nothing, are from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import NamedTuple

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


class _Asked(NamedTuple):
    """Why a category is asked for, in words, and what takes the pane out of that place."""

    why: str
    ways: tuple[str, ...]


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
            asked = _asked(room, case, part, places.get(case.key))
            if asked is not None:
                told.add(part.group)
                yield _breach(room, case, part, asked)


def _asked(room: Room, case: Case, part: Part, place: CasePlace | None) -> _Asked | None:
    """Why the code asks for a category; None where it does not."""
    box = outer_box(part)
    foot = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
    low, high = foot + box.y0, foot + box.y1
    area = part.finished.length.value * part.finished.width.value
    if area > _LARGE and low < _LOW and high > _HIGH:
        return _Asked(
            f"is over 9 sq ft and begins {length(room, Fraction(low))} above the floor",
            (
                f"glass only from {length(room, _LOW)} up: a divider with other doors below it",
                f"a leaf at most {length(room, _LARGE / max(box.y1 - box.y0, 1))} wide in sight",
            ),
        )
    if place is None or low >= _DOOR_LOW:
        return None
    left, right = place.left + box.x0, place.left + box.x1
    for thing in place.wall.things:
        if thing.spec.kind != "door" or thing.left is None or thing.right is None:
            continue
        apart = max(thing.left.value - right, left - thing.right.value)
        if apart < _BESIDE:
            gap = max(Fraction(apart), Fraction(0))
            return _Asked(
                f"lies {length(room, gap)} beside {thing.spec.title}",
                (f"the glass {length(room, _BESIDE - gap)} farther from {thing.spec.title}",
                 f"glass only from {length(room, _DOOR_LOW)} up"),
            )  # fmt: skip
    return None


def _breach(room: Room, case: Case, part: Part, asked: _Asked) -> Breach:
    area = part.finished.length.value * part.finished.width.value
    category = "II" if area > _LARGE else "I"
    goods = room.spec.stock[part.stock]
    plastic = isinstance(goods, Glazing) and goods.material == "acrylic"
    order = (
        "ask the inspector whether this plastic does, and order it with the mark of its test"
        if plastic
        else f"ask the inspector, then order it tested to category {category}, its mark etched in"
    )
    return Breach(
        part.path,
        f"the {part.title} of {case.spec.title} {asked.why}: the code asks for safety glazing of "
        f"category {category} there",
        measured=f"{float(area / FOOT**2):.1f} sq ft",
        limit=f"category {category}",
        remedies=(order, *asked.ways, "a panel of wood"),
        severity=Severity.NOTE if plastic else Severity.CARE,
    )


RULE = Rule("safety glass", Severity.CARE, __doc__ or "", "irc", _examine)
