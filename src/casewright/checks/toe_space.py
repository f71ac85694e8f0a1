"""Toe spaces too low or too shallow for a foot.

Whoever works at a counter stands with the toes under the case. A space lower than a shoe or
shallower than its tip makes one lean over.

Passes
------
A base with a toe space 4 in high and 2 3/4 deep.

Fails
-----
The same base with 2 in of height, or 1 1/2 of depth.

Sources
-------
`common practice`, from memory: 3 to 4 in high, 2 to 3 deep.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length, style_value
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    limits = (
        ("high", "toe_height", by_unit(room, "3", "75")),
        ("deep", "toe_setback", by_unit(room, "2", "50")),
    )
    for case in room.boxes:
        if not case.spec.has_toe or case.spec.toe == "none":
            continue
        for word, key, least in limits:
            size = style_value(room, case, key)
            if size < least:
                yield Breach(
                    case.key,
                    f"the toe space of {case.spec.title} is only {length(room, size)} {word}: "
                    "toes meet it",
                    measured=length(room, size),
                    limit=length(room, least),
                    remedies=(f"{key} = {length(room, least)} or more",),
                )


RULE = Rule("toe space", Severity.NOTE, __doc__ or "", "common practice", _examine)
