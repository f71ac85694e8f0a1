"""Outer hinges at least as far apart as the door is wide.

The wider a leaf for the distance between its hinges, the harder it pulls at the upper one and the
more it drops at the free corner. A door little higher than it is wide, or lower, cannot keep this
with its hinges at the usual distance from its ends. It is let pass while it pulls no harder than
the heaviest door of its number of hinges may, hung by this rule: weight x width / distance is
held against that weight.

Passes
------
A leaf 16 3/8 wide with its outer hinges 31 15/16 apart. A glass leaf 17 7/8 x 14 7/8 over a
divider, about 3 lb: 7 lb in effect, where two hinges carry 15.

Fails
-----
A leaf 20 in wide with its outer hinges 15 in apart.

Sources
-------
`common practice`; that a low door may pull as hard as a tall one is this house's own judgement.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case, Door
from casewright.checks.front_weights import front_weights
from casewright.checks.hinge_number import heaviest
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import greatest, least, tell
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "hinge spread"


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        for front in case.doors:
            if len(front.hinges) < 2:
                continue
            heights = [hinge.on_door.value for hinge in front.hinges]
            spread, width = max(heights) - min(heights), front.width.value
            if spread >= width or _is_low_and_light(room, case, front, spread):
                continue
            yield _breach(room, front)


def _breach(room: Room, front: Door) -> Breach:
    own = reckoning(room, _NAME, front.path)
    heights, wide = [hinge.on_door for hinge in front.hinges], front.width
    spread = own.let("spread", greatest(*heights) - least(*heights))
    apart, width = own.length(spread), own.length(wide)
    tall = own.length(front.height + wide - spread, "tall")
    return Breach(
        front.path,
        tell(
            "the outer hinges of the {} are {} apart, less than its width of {}; its free corner "
            "will drop",
            front.title, apart, width,
        ),
        measured=apart.text,
        limit=width.text,
        remedies=(
            tell("two leaves, {} wide", own.length(wide / 2, "half")),
            tell("the outer hinges {} nearer the ends",
                 own.length((wide - spread) / 2, "nearer")),
            tell("a door at least {} tall", tall),
        ),
        own=own,
    )  # fmt: skip


def _is_low_and_light(room: Room, case: Case, front: Door, spread: Fraction) -> bool:
    """Whether a door too low for the rule pulls at its hinges no harder than they may bear."""
    end = case.spec.overrides.get("hinge_end", room.spec.style["hinge_end"])
    if front.height.value - 2 * end.value >= front.width.value:
        return False
    weight = front_weights(room, case).get(front.path, Fraction(0))
    pull = weight * front.width.value / spread
    return 0 < pull <= heaviest(len(front.hinges))


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
