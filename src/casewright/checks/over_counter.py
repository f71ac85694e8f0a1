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
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import cases_on_walls
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.walls import SurveyedWall

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    yield from _over_own_cases(room)
    least = by_unit(room, "18", "450")
    for each in cases_on_walls(room):
        for thing in each.wall.things:
            top = _counter_top(each.wall, thing)
            if not each.bottom or top is None or thing.left is None or thing.right is None:
                continue
            beside = each.right <= thing.left.value or thing.right.value <= each.left
            free = each.bottom - top
            if beside or free >= least:
                continue
            yield Breach(
                each.case.key,
                f"{each.case.spec.title} hangs {length(room, free)} over {thing.spec.title} at "
                "its highest place",
                measured=length(room, free),
                limit=length(room, least),
                remedies=(
                    f"hang it {length(room, least - free)} higher: wall_bottom in [style]",
                    "nothing to do where nobody works on it",
                ),
            )


def _counter_top(wall: SurveyedWall, thing: PlacedThing) -> Fraction | None:
    """Of a counter that stands there: its highest place above the highest floor [mm]."""
    if thing.spec.kind != "counter" or thing.highest is None or wall.floor is None:
        return None
    return wall.floor.value - thing.highest.value


def _over_own_cases(room: Room) -> Iterator[Breach]:
    above = [case for case in room.boxes if case.spec.kind == "wall"]
    most = room.wall_bottom.value - by_unit(room, "3/2", "40")
    below = [c for c in room.boxes if c.spec.kind == "base" and c.height.value <= most]
    if not above or not below:
        return
    highest = max(below, key=lambda case: case.height.value)
    free, least = most - highest.height.value, by_unit(room, "18", "450")
    if free < least:
        yield Breach(
            above[0].key,
            f"wall cases hang {length(room, room.wall_bottom.value)} above the floor: "
            f"{length(room, free)} over a counter on {highest.spec.title}",
            measured=length(room, free),
            limit=length(room, least),
            remedies=(
                (
                    f"wall_bottom = {length(room, room.wall_bottom.value + least - free)} or more "
                    "in [style]"
                ),
                "nothing to do where they hang over no counter",
            ),
        )


RULE = Rule("over counter", Severity.NOTE, __doc__ or "", "common practice", _examine)
