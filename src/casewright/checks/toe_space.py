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
from casewright.checks.words import reckoning, style_of, style_value
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "toe space"
_LIMITS = (
    (
        "high",
        "toe_height",
        Limit("toe_space.high", "3", "75", "a lower one is no room for a shoe"),
    ),
    ("deep", "toe_setback", Limit("toe_space.deep", "2", "50", "a shallower one meets toes")),
)


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.boxes:
        if not case.spec.has_toe or case.spec.toe == "none":
            continue
        for word, key, least in _LIMITS:
            if style_value(room, case, key) < least.of(room.spec.unit):
                own = reckoning(room, _NAME, f"{case.key}.{word}")
                size, asked = (
                    own.length(style_of(room, own, key, case)),
                    own.length(own.limit(least)),
                )
                says = "the toe space of {} is only {} {}: toes meet it"
                yield Breach(
                    case.key,
                    tell(says, case.spec.title, size, word),
                    measured=size.text,
                    limit=asked.text,
                    remedies=(tell("{} = {} or more", key, asked),),
                    own=own,
                )


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
