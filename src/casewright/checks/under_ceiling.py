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
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    clear = room.survey.clear
    if clear is None:
        return
    for case in room.boxes:
        low = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
        top = low + case.height.value
        if top > clear.value:
            over = length(room, top - clear.value)
            yield Breach(
                case.key,
                f"{case.spec.title} reaches {length(room, top)} above the floor: {over} more than "
                "from the highest floor to the lowest ceiling",
                measured=length(room, top),
                limit=length(room, clear.value),
                remedies=(f"make it {over} lower, or more, for a gap to scribe or trim",),
            )


RULE = Rule("under ceiling", Severity.STOP, __doc__ or "", "common practice", _examine)
