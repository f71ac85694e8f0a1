"""Outer hinges at least as far apart as the door is wide.

The wider a leaf for the distance between its hinges, the more it drops at the free corner. The
low doors over a divider cannot keep this and are light: they are let pass.

Passes
------
A leaf 16 3/8 wide with its outer hinges 31 15/16 apart.

Fails
-----
A leaf 20 in wide with its outer hinges 15 in apart.

Sources
-------
`common practice`.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        for front in case.fronts:
            if len(front.hinges) < 2 or front.opening == "upper":
                continue
            heights = [hinge.on_door.value for hinge in front.hinges]
            spread = max(heights) - min(heights)
            if spread < front.width.value:
                yield Breach(
                    front.path,
                    f"the outer hinges of the {front.title} are {length(room, spread)} apart, "
                    f"less than its width of {length(room, front.width.value)}; its free corner "
                    "will drop",
                    measured=length(room, spread),
                    limit=length(room, front.width.value),
                    remedies=("two leaves", "hinges nearer the ends"),
                )


RULE = Rule("hinge spread", Severity.NOTE, __doc__ or "", "common practice", _examine)
