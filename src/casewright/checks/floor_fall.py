"""Floors that fall more than shims can take up.

Base cases are levelled from the highest place of the floor, so they stand high over the lowest
one. Up to about 3/4 in (20 mm) shims under the sides take that up, and the toe board hides it.
Over that the shims lean, the toe space opens, and the base wants to be scribed to the floor.

Passes
------
A floor that falls 1/2 in along the wall.

Fails
-----
A floor that falls 1 in.

Sources
-------
`common practice`: over 3/4 in, or 20 mm, a base is scribed rather than shimmed.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.on_walls import cases_on_walls

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    standing = {each.wall.spec.key for each in cases_on_walls(room) if not each.bottom}
    most = by_unit(room, "3/4", "20")
    for key, wall in room.survey.walls.items():
        if key not in standing or wall.fall is None or wall.fall.value <= most:
            continue
        fall = length(room, wall.fall.value)
        yield Breach(
            wall.fall.path,
            f"the floor along {wall.spec.title} falls {fall} from its highest place: that is more "
            "than shims under the cases take up",
            measured=fall,
            limit=length(room, most),
            remedies=(
                'a plinth (toe = "plinth"), scribed to the floor before the cases stand on it',
                f"a toe at least {fall} higher, and a toe board scribed to the floor",
            ),
        )


RULE = Rule("floor fall", Severity.CARE, __doc__ or "", "common practice", _examine)
