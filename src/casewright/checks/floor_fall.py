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
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room
from casewright.room.on_walls import cases_on_walls

__all__ = ["RULE"]

_NAME = "floor fall"
_MOST = Limit("floor_fall.most", "3/4", "20", "as far as shims take up a floor")


def _examine(room: Room) -> Iterator[Breach]:
    standing = {each.wall.spec.key for each in cases_on_walls(room) if not each.bottom}
    most = _MOST.of(room.spec.unit)
    for key, wall in room.survey.walls.items():
        if key not in standing or wall.fall is None or wall.fall.value <= most:
            continue
        own = reckoning(room, _NAME, key)
        fall = own.length(wall.fall)
        yield Breach(
            wall.fall.path,
            tell(
                "the floor along {} falls {} from its highest place: that is more than shims "
                "under the cases take up",
                wall.spec.title,
                fall,
            ),
            measured=fall.text,
            limit=own.length(own.limit(_MOST)).text,
            remedies=(
                'a plinth (toe = "plinth"), scribed to the floor before the cases stand on it',
                tell("a toe at least {} higher, and a toe board scribed to the floor", fall),
            ),
            own=own,
        )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
