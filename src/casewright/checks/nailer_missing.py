"""Wall cases with nothing for the wall screws to hold.

A thin back tears out. A wall case hangs by nailers behind or in front of its back, the top one
glued and screwed at both ends, or by a back of full thickness.

Passes
------
An upper with a rabbeted 1/4 back and nailers at top and bottom.

Fails
-----
The same upper without its top nailer.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        if not case.spec.is_hung or case.spec.back == "inset":
            continue
        height = case.height.value
        nailers = [part for part in case.parts if part.role == "nailer"]
        if not any(nailer.placed.y.value > height / 2 for nailer in nailers):
            yield Breach(
                case.key,
                f"{case.spec.title} has no nailer at its top: a thin back does not hold it on "
                "the wall",
                measured=str(len(nailers)),
                limit="2",
                remedies=("a nailer under the top", 'back = "inset"'),
            )


RULE = Rule("nailer missing", Severity.STOP, __doc__ or "", "common practice", _examine)
