"""Cases that reach higher than the ceiling as measured.

Heights count from the highest floor, and the ceiling at its lowest: what stands level on the one
must pass under the other.

Passes
------
A wall case that ends 93 above the floor, under 96 from the highest floor to the lowest ceiling.

Fails
-----
The same wall case under 92.

Sources
-------
`common practice`: highest floor, lowest ceiling.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "under ceiling"


def _examine(room: Room) -> Iterator[Breach]:
    clear = room.survey.clear
    if clear is None:
        return
    for case in room.boxes:
        low = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
        if low + case.height.value > clear.value:
            own = reckoning(room, _NAME, case.key)
            reached = room.wall_bottom + case.height if case.spec.is_hung else case.height
            top, over = own.length(reached, "top"), own.length(reached - clear, "over")
            yield Breach(
                case.key,
                tell(
                    "{} reaches {} above the floor: {} more than from the highest floor to the "
                    "lowest ceiling",
                    case.spec.title, top, over,
                ),
                measured=top.text,
                limit=own.length(clear).text,
                remedies=(tell("make it {} lower, or more, for a gap to scribe or trim", over),),
                own=own,
            )  # fmt: skip


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "common practice", _examine)
