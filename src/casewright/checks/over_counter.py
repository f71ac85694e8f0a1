"""Wall cases too low over the counter of the base cases.

Between counter and wall cases one works, and things stand there. The counter is reckoned 1 1/2 in
(40 mm) thick on the highest base case. What a cooker or its hood asks for is more, stands in its
own manual and in local code, and is not reckoned here. Under a wall case on a surveyed wall a
counter that stands already counts too, at its highest place.

Passes
------
Wall cases 54 above the floor over base cases 34 1/2 high: 18 in between.

Fails
-----
The same wall cases 50 above the floor.

Sources
-------
`common practice`: 18 in, or 450 mm. The height of wall cases is style 'wall_bottom'.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.walls import SurveyedWall

__all__ = ["RULE"]

_NAME = "over counter"
_FREE = Limit("over_counter.free", "18", "450", "to work on a counter under wall cases")
_THICK = Limit("over_counter.thick", "3/2", "40", "what a counter is reckoned thick")


def _examine(room: Room) -> Iterator[Breach]:
    yield from _over_own_cases(room)
    least = _FREE.of(room.spec.unit)
    for each in cases_on_walls(room):
        for thing in each.wall.things:
            top = _counter_top(each.wall, thing)
            if not each.bottom or top is None or thing.left is None or thing.right is None:
                continue
            beside = each.right <= thing.left.value or thing.right.value <= each.left
            if not beside and each.bottom - top.value < least:
                yield _over_thing(room, each, thing, top)


def _over_thing(room: Room, each: CasePlace, thing: PlacedThing, top: Dim) -> Breach:
    own = reckoning(room, _NAME, f"{each.case.key}.{thing.spec.key}")
    bottom, least = room.wall_bottom, own.limit(_FREE)
    free = (bottom + each.case.standing if each.case.spec.hood else bottom) - top
    left, asked = own.length(free, "free"), own.length(least)
    return Breach(
        each.case.key,
        tell(
            "{} hangs {} over {} at its highest place",
            each.case.spec.title,
            left,
            thing.spec.title,
        ),
        measured=left.text,
        limit=asked.text,
        remedies=(
            tell("hang it {} higher: wall_bottom in [style]", own.length(least - free, "higher")),
            "nothing to do where nobody works on it",
        ),
        own=own,
    )


def _counter_top(wall: SurveyedWall, thing: PlacedThing) -> Dim | None:
    """Of a counter that stands there: its highest place above the highest floor [mm]."""
    if thing.spec.kind != "counter" or thing.highest is None or wall.floor is None:
        return None
    return wall.floor - thing.highest


def _over_own_cases(room: Room) -> Iterator[Breach]:
    above = [case for case in room.boxes if case.spec.kind == "wall"]
    most = room.wall_bottom.value - _THICK.of(room.spec.unit)
    below = [c for c in room.boxes if c.spec.kind == "base" and c.height.value <= most]
    if not above or not below:
        return
    highest = max(below, key=lambda case: case.height.value)
    if most - highest.height.value < _FREE.of(room.spec.unit):
        own, bottom = reckoning(room, _NAME, highest.key), room.wall_bottom
        free, least = bottom - own.limit(_THICK) - highest.height, own.limit(_FREE)
        left, asked = own.length(free, "free"), own.length(least)
        yield Breach(
            above[0].key,
            tell(
                "wall cases hang {} above the floor: {} over a counter on {}",
                own.length(bottom), left, highest.spec.title,
            ),
            measured=left.text,
            limit=asked.text,
            remedies=(
                tell(
                    "wall_bottom = {} or more in [style]",
                    own.length(bottom + least - free, "wall_bottom"),
                ),
                "nothing to do where they hang over no counter",
            ),
            own=own,
        )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
