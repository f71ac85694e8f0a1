"""Cases before what is on the wall.

A case cannot stand before a window, a door, a soffit or what already stands there. Before an
outlet, a switch, a pipe or a vent it can, when its back gets an opening for it and it stays within
reach: local codes and the licensed trades come first, above all for gas and wiring.

Passes
------
A base case under a window whose casing begins 42 in above the floor.

Fails
-----
A wall case before the same window.

Sources
-------
`common practice`: casings count to their outer edges, read in the direction that leaves less.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import FixedKind, is_small

__all__ = ["RULE"]

_FROM_FLOOR: tuple[FixedKind, ...] = ("door", "base case", "tall case", "radiator", "appliance")


def _examine(room: Room) -> Iterator[Breach]:
    for each in cases_on_walls(room):
        for thing in each.wall.things:
            edges = _edges(room, thing)
            if edges is not None and _meet(each, edges):
                yield _breach(room, each, thing, edges)


_Edges = tuple[Fraction, Fraction, Fraction, Fraction]


def _edges(room: Room, thing: PlacedThing) -> _Edges | None:
    """Left, right, lower and upper edge; None while one of them is not known."""
    if thing.left is None or thing.right is None or thing.spec.kind == "counter":
        return None
    low = thing.bottom.value if thing.bottom is not None else None
    high = thing.top.value if thing.top is not None else None
    if low is None and thing.spec.kind in _FROM_FLOOR:
        low = Fraction(0)
    if high is None and thing.spec.kind == "soffit" and room.survey.clear is not None:
        high = room.survey.clear.value
    if is_small(thing.spec.kind):
        box = by_unit(room, "4", "100")
        low = low if low is not None else (None if high is None else high - box)
        high = high if high is not None else (None if low is None else low + box)
    if low is None or high is None:
        return None
    return thing.left.value, thing.right.value, low, high


def _meet(each: CasePlace, edges: _Edges) -> bool:
    left, right, low, high = edges
    along = each.left < right and left < each.right if left < right else (
        each.left < left < each.right
    )  # fmt: skip
    return along and each.bottom < high and low < each.top


def _breach(room: Room, each: CasePlace, thing: PlacedThing, edges: _Edges) -> Breach:
    left, right, low, high = edges
    title, name = each.case.spec.title, thing.spec.title
    if is_small(thing.spec.kind):
        middle, own = (left + right) / 2, each.left + each.case.left_frame.value
        where = f"{length(room, middle - own)} from its left side"
        gas = ("a licensed trade looks at it first",) if thing.spec.kind == "gas" else ()
        return Breach(
            each.case.key,
            f"{title} stands before the {thing.spec.kind} {name}, {where} and "
            f"{length(room, low)} above the floor",
            remedies=(
                *gas,
                "cut its back out there, larger than the thing, and keep it within reach",
                "have it moved by the trade whose it is",
            ),
            severity=Severity.CARE,
        )
    lap = min(each.right, right) - max(each.left, left)
    return Breach(
        each.case.key,
        f"{title} stands before {name}: {length(room, lap)} of its width lies before it, from "
        f"{length(room, max(each.bottom, low))} to {length(room, min(each.top, high))} above the "
        "floor",
        measured=length(room, lap),
        limit=length(room, Fraction(0)),
        remedies=("move or narrow the case", "a lower one, or one that hangs higher"),
    )


RULE = Rule("in the way", Severity.STOP, __doc__ or "", "common practice", _examine)
