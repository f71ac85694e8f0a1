"""Room doors that swing into cases on the wall beside them.

A door beside a corner sweeps a quarter circle of its own width out from its wall. Cases on the
other wall of the corner stand out by their depth and their doors' pulls; when the door's edge is
nearer the corner than that, and the cases begin within its sweep, it strikes them.

Passes
------
A door 30 from the corner, base cases 24 deep on the other wall.

Fails
-----
A door 12 from the corner there.

Sources
-------
`common practice`: 1 1/2 in (40 mm) for the case's own doors and pulls. The sweep is taken as a
square of the leaf's width, which is on the safe side.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.door_swings import DoorStand, swings_beside
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls

__all__ = ["RULE"]

_NAME = "door swing"
_PULLS = Limit("door_swing.pulls", "3/2", "40", "a case's own doors and pulls before it")


def _examine(room: Room) -> Iterator[Breach]:
    standing = [each for each in cases_on_walls(room) if not each.bottom]
    for key in room.survey.walls:
        cases = [each for each in standing if each.wall.spec.key == key]
        for swing in swings_beside(room, key) if cases else ():
            yield from _struck(room, swing, cases)


def _struck(room: Room, swing: DoorStand, cases: list[CasePlace]) -> Iterator[Breach]:
    for each in cases:
        wide = each.wall.width
        near = each.left if swing.side == "left" or wide is None else wide.value - each.right
        out = each.case.depth.value + _PULLS.of(room.spec.unit)
        if near < swing.sweep and swing.free < out:
            yield _breach(room, swing, each)


def _breach(room: Room, swing: DoorStand, each: CasePlace) -> Breach:
    own = reckoning(room, _NAME, f"{each.case.key}.{swing.door.spec.key}")
    word = "after" if swing.side == "left" else "before"
    past = f'{word} = "{swing.door.spec.key}" and that end "open"'
    out = own.let("takes", each.case.depth + own.limit(_PULLS))
    wide, free = each.wall.width, own.let("from_corner", swing.from_corner)
    at_left = swing.side == "left" or wide is None
    near = each.left_edge if at_left or wide is None else wide - each.right_edge
    told, takes = own.length(free), own.length(out)
    return Breach(
        each.case.key,
        tell(
            "{} swings into {}: it stands {} from {}, and the case takes {} with its pulls",
            swing.door.spec.title, each.case.spec.title, told, swing.corner.spec.title, takes,
        ),
        measured=told.text,
        limit=takes.text,
        remedies=(
            "hang the room's door on its other side, or to swing out",
            tell(
                "begin the cases {} farther away, {}",
                own.length(swing.leaf - near, "farther"), past,
            ),
            tell("a case {} shallower there", own.length(out - free, "shallower")),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
