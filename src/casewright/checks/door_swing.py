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
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.door_swings import DoorStand, swings_beside
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls

__all__ = ["RULE"]


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
        out = each.case.depth.value + by_unit(room, "3/2", "40")
        if near < swing.sweep and swing.free < out:
            word = "after" if swing.side == "left" else "before"
            past = f'{word} = "{swing.door.spec.key}" and that end "open"'
            yield Breach(
                each.case.key,
                f"{swing.door.spec.title} swings into {each.case.spec.title}: it stands "
                f"{length(room, swing.free)} from {swing.corner.spec.title}, and the case takes "
                f"{length(room, out)} with its pulls",
                measured=length(room, swing.free),
                limit=length(room, out),
                remedies=(
                    "hang the room's door on its other side, or to swing out",
                    f"begin the cases {length(room, swing.sweep - near)} farther away, {past}",
                    f"a case {length(room, out - swing.free)} shallower there",
                ),
            )


RULE = Rule("door swing", Severity.CARE, __doc__ or "", "common practice", _examine)
