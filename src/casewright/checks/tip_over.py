"""Standing cases that tip: nothing for the wall screws to hold, or tall on a narrow foot.

A case that reaches over 27 in can fall on a child who climbs it, so the wall must hold its upper
half. One over four times as high as it is deep tips at a small lean, and does so before its wall
screws are in: it is never left standing loose. Doors and shelves go in afterwards. A tall case
that has none of the studs behind it that were found on its wall has nothing to be screwed to.

Passes
------
A base 34 1/2 high and 23 1/4 deep, its nailer under the rear stretcher.

Fails
-----
A bookcase 84 high and 12 deep; a base without its nailer.

Sources
-------
`common practice`: furniture over 27 in is made to be held against tipping (ASTM F2057), shelving
over 4 to 1 is fastened (makers of steel shelving); both from memory. The lean is that of an empty
case of even weight, on a level floor: half the depth over half the height.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.room.on_walls import cases_on_walls
from casewright.room.stud_columns import free_studs
from casewright.room.wall_fixing import wall_fixings

__all__ = ["RULE"]

_NAME = "tip over"
_HIGH = Limit("tip_over.high", "27", "690", "what is higher is made to be held: ASTM F2057")

_SLENDER = 4
_TALL = ("tall", "bookcase", "surround")


def _examine(room: Room) -> Iterator[Breach]:
    held = {fixing.case: fixing.rows for fixing in wall_fixings(room)}
    free = room.in_islands
    unheld = {
        each.case.key
        for each in cases_on_walls(room)
        if each.wall.studs and each.case.spec.kind in _TALL and not free_studs(room, each)
    }
    for case in room.boxes:
        if case.key in free or case.spec.is_hung or case.height.value <= _HIGH.of(room.spec.unit):
            continue
        if not any(_reaches_up(case, path) for path in held.get(case.key, ())):
            yield _loose(room, case)
            continue
        if case.key in unheld:
            yield _without_stud(room, case)
        elif case.height.value > _SLENDER * case.depth.value:
            yield _slender(room, case)


def _reaches_up(case: Case, path: str) -> bool:
    """Whether what is screwed to the wall is a back, or a nailer in the case's upper half."""
    part = next(p for p in case.parts if p.path == path)
    return part.role == "back" or part.placed.y.value > case.height.value / 2


def _loose(room: Room, case: Case) -> Breach:
    own = reckoning(room, _NAME, case.key)
    high = own.length(case.height)
    return Breach(
        case.key,
        tell(
            "{}, {} high, has nothing in its upper half for wall screws to hold: it can tip on "
            "somebody who climbs it",
            case.spec.title,
            high,
        ),
        measured=high.text,
        limit=own.length(own.limit(_HIGH)).text,
        remedies=("a nailer under the top", 'back = "inset"'),
        severity=Severity.STOP,
        own=own,
    )


def _without_stud(room: Room, case: Case) -> Breach:
    own = reckoning(room, _NAME, case.key)
    return Breach(
        case.key,
        tell(
            "{}, {} high, has none of the studs that were found behind it, or none that a screw "
            "may go into: nothing keeps it from tipping",
            case.spec.title,
            own.length(case.height),
        ),
        measured="0",
        limit="1",
        remedies=(
            "look for a stud there, and write it down",
            "a rail across two studs, flush with the wall's board, behind its top nailer",
            "screw it to neighbours that are held, before it is let go",
        ),
        severity=Severity.CARE,
        own=own,
    )


def _slender(room: Room, case: Case) -> Breach:
    own, high, deep = reckoning(room, _NAME, case.key), case.height, case.depth
    lean = math.degrees(math.atan2(float(deep.value), float(high.value)))
    deeper = own.length(high / _SLENDER - deep, "deeper")
    return Breach(
        case.key,
        tell(
            "{} is {} high on a foot of {}: empty and loose it tips at a lean of about {} degrees",
            case.spec.title, own.length(high), own.length(deep), f"{lean:.0f}",
        ),
        measured=f"{float(Fraction(high.value, deep.value)):.1f} to 1",
        limit=f"{_SLENDER} to 1",
        remedies=(
            "screw it to the studs before anything else goes in, and never let it stand loose",
            tell(
                "a case {} deeper, or {} lower",
                deeper, own.length(high - deep * _SLENDER, "lower"),
            ),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
