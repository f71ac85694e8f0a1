"""Room doors that swing into cases on the wall beside them, or into an island.

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
from casewright.room.door_swings import DoorStand, swinging_doors, swings_beside
from casewright.room.footprints import free_footprint
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.room.wall_stands import joined_walls, wall_frames

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    standing = [each for each in cases_on_walls(room) if not each.bottom]
    for key in room.survey.walls:
        cases = [each for each in standing if each.wall.spec.key == key]
        for swing in swings_beside(room, key) if cases else ():
            yield from _struck(room, swing, cases)
    yield from _islands(room)


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


def _islands(room: Room) -> Iterator[Breach]:
    """What stands free where a leaf sweeps."""
    frames = wall_frames(room.survey)
    for key, wall in room.survey.walls.items():
        near = joined_walls(room.survey, key)
        for door, left, right in swinging_doors(wall):
            for stand in room.free if key in near else ():
                spots = [frames[key].seen(spot) for spot in free_footprint(frames, stand)]
                (x0, x1), (z0, z1) = ((min(e), max(e)) for e in zip(*spots, strict=True))
                into = min(right - left - z0, right - x0, x1 - left)
                if stand.wall in near and into > 0 and z1 > 0:
                    yield Breach(
                        stand.key,
                        f"{door.spec.title} swings into {stand.title}: its leaf sweeps "
                        f"{length(room, right - left)} out from {wall.spec.title}, and "
                        f"{stand.title} stands {length(room, max(z0, Fraction(0)))} off it there",
                        measured=length(room, into),
                        limit=length(room, Fraction(0)),
                        remedies=(
                            "hang the room's door to swing out",
                            f"{stand.title} {length(room, into)} farther from the door",
                        ),
                    )


RULE = Rule("door swing", Severity.CARE, __doc__ or "", "common practice", _examine)
