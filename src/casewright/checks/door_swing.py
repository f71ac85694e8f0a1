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
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.survey.corners import SurveyedCorner
from casewright.survey.fixed_things import PlacedThing

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    standing = [each for each in cases_on_walls(room) if not each.bottom]
    for corner in room.survey.corners.values():
        if corner.spec.outside:
            continue
        for on, beside in ((corner.spec.left, corner.spec.right),
                           (corner.spec.right, corner.spec.left)):  # fmt: skip
            cases = [each for each in standing if each.wall.spec.key == beside]
            yield from _doors(room, corner, on, cases)


def _doors(
    room: Room, corner: SurveyedCorner, on: str, cases: list[CasePlace]
) -> Iterator[Breach]:
    wall = room.survey.walls.get(on)
    if wall is None or wall.width is None:
        return
    stands_left = on == corner.spec.left  # then the corner is at its right end
    for thing in wall.things:
        if thing.spec.kind != "door" or thing.spec.swing is None:
            continue
        if thing.left is None or thing.right is None:
            continue
        free = wall.width.value - thing.right.value if stands_left else thing.left.value
        yield from _struck(room, (corner, stands_left), thing, (free, cases))


def _struck(
    room: Room,
    where: tuple[SurveyedCorner, bool],
    door: PlacedThing,
    beside: tuple[Fraction, list[CasePlace]],
) -> Iterator[Breach]:
    corner, stands_left = where
    free, cases = beside
    if door.left is None or door.right is None:
        return
    sweep = door.right.value - door.left.value
    for each in cases:
        wide = each.wall.width
        near = each.left if stands_left or wide is None else wide.value - each.right
        out = each.case.depth.value + by_unit(room, "3/2", "40")
        if near < sweep and free < out:
            yield Breach(
                each.case.key,
                f"{door.spec.title} swings into {each.case.spec.title}: it stands "
                f"{length(room, free)} from {corner.spec.title}, and the case takes "
                f"{length(room, out)} with its pulls",
                measured=length(room, free),
                limit=length(room, out),
                remedies=(
                    "hang the room's door on its other side, or to swing out",
                    f"begin the cases {length(room, sweep - near)} farther from the corner",
                    f"a case {length(room, out - free)} shallower there",
                ),
            )


RULE = Rule("door swing", Severity.CARE, __doc__ or "", "common practice", _examine)
