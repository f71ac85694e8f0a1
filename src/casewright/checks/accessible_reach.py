"""Storage, counters and sinks out of reach of somebody in a wheelchair.

Looked at only where the job says `accessible = true`. The accessible-design standard wants half of
the shelf space within reach, 15 to 48 in (380 to 1220 mm) above the floor; a stretch of counter 30
in (760 mm) wide no higher than 34 in (865 mm), with room for the knees under it; and the sink no
higher than that either. Shelf space is the surface of bottoms and shelves, where they are drawn,
and of drawers, by their rims. A counter is reckoned 1 1/2 in (40 mm) thick. Room for the knees, to
turn, and what stands in the way of an arm are not looked at: measure with who is to work there.

Passes
------
A kitchen of drawer bases 32 1/2 in high.

Fails
-----
The same bases 34 1/2 high: the counter is at 36.

Sources
-------
`ada`: 308, 804.3, 804.5, 606.3. The thickness of a counter is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "accessible reach"

_LOW = Limit("accessible.low", "15", "380", "lowest an arm reaches from a wheelchair", "ada")
_HIGH = Limit("accessible.high", "48", "1220", "highest an arm reaches from a wheelchair", "ada")
_COUNTER = Limit("accessible.counter", "34", "865", "highest counter and sink", "ada")
_WIDE = Limit("accessible.wide", "30", "760", "counter to work at, along the wall", "ada")
_THICK = Limit("accessible.thick", "3/2", "40", "what a counter is reckoned thick")

_SHELVES = ("shelf", "fixed shelf", "divider")


def _examine(room: Room) -> Iterator[Breach]:
    if room.spec.accessible:
        yield from _storage(room)
        yield from _counters(room)


def _storage(room: Room) -> Iterator[Breach]:
    low, high = _LOW.of(room.spec.unit), _HIGH.of(room.spec.unit)
    within = whole = Fraction(0)
    farthest: tuple[Fraction, str] = Fraction(-1), ""
    for case in room.boxes:
        beyond = Fraction(0)
        for height, area in _surfaces(room, case):
            whole += area
            if low <= height <= high:
                within += area
            else:
                beyond += area
        farthest = max(farthest, (beyond, case.key), key=lambda pair: pair[0])
    if 2 * within < whole:
        share = f"{round(100 * within / whole)} in 100"
        own = reckoning(room, _NAME, "storage")
        yield Breach(
            farthest[1],
            tell(
                "{} of the shelf space lie between {} and {} above the floor, where an arm "
                "reaches from a wheelchair; half is asked for",
                share, own.length(own.limit(_LOW)), own.length(own.limit(_HIGH)),
            ),
            measured=share,
            limit="50 in 100",
            remedies=(
                "drawers or roll-outs in place of shelves near the floor",
                "wall cases hung lower where no counter is under them",
                "more cases below, fewer above",
            ),
            own=own,
        )  # fmt: skip


def _surfaces(room: Room, case: Case) -> Iterator[tuple[Fraction, Fraction]]:
    """Heights above the floor [mm] and sizes [mm2] of what things are put on."""
    foot = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
    shelves = [part for part in case.parts if part.role in _SHELVES]
    if shelves or not case.drawers:
        shelves += [part for part in case.parts if part.role == "bottom"]
    for part in shelves:
        size = part.finished
        height = foot + part.placed.y.value + size.thickness.value
        yield height, size.length.value * size.width.value
    for drawer in case.drawers:
        rim = foot + drawer.y.value + drawer.height.value
        yield rim, drawer.inside_width.value * drawer.depth.value


def _counters(room: Room) -> Iterator[Breach]:
    unit = room.spec.unit
    most, thick, wide = _COUNTER.of(unit), _THICK.of(unit), _WIDE.of(unit)
    bases = [case for case in room.boxes if case.spec.kind == "base" and case.spec.lid is None]
    sinks = [case for case in bases if case.spec.sink]
    low = [case for case in bases if case.height.value + thick <= most]
    if bases and sum((case.overall_width.value for case in low), Fraction(0)) < wide:
        lowest = min(bases, key=lambda case: case.height.value)
        yield _too_high(room, lowest, "no stretch of counter is low enough to work at")
    for case in sinks:
        if case not in low:
            yield _too_high(room, case, f"{case.spec.title} holds its sink too high")


def _too_high(room: Room, case: Case, says: str) -> Breach:
    own = reckoning(room, _NAME, case.key)
    most, thick = own.limit(_COUNTER), own.limit(_THICK)
    top, at_most = own.length(case.height + thick, "top"), own.length(most)
    lower = own.length(case.height + thick - most, "lower")
    return Breach(
        case.key,
        tell(
            "{} from a wheelchair: with {} of counter it is {} above the floor; {} at most is "
            "asked for",
            says, own.length(thick), top, at_most,
        ),
        measured=top.text,
        limit=at_most.text,
        remedies=(
            tell("height = {} or less, {} lower", own.length(most - thick, "height"), lower),
            "a table or a board that pulls out, at that height",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "ada", _examine)
