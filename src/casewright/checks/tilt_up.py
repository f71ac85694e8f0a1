"""Tall boxes that cannot be stood up under the ceiling.

A box that comes in lying down is tilted up over its lower rear edge, and its upper corner swings
as high as the diagonal of its side. It must clear the ceiling with a little to spare. The ceiling
is reckoned from the style until it is measured: then from the highest floor to the lowest ceiling.

Passes
------
A bookcase 84 high and 12 deep under a ceiling of 96.

Fails
-----
A case 94 high and 24 deep under the same ceiling.

Sources
-------
`common practice`: height at most the root of (ceiling less 1/2 in) squared less depth squared, by
Pythagoras. The ceiling is style 'ceiling'.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import about, by_unit, length
from casewright.dims import Way
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


def _box_height(case: Case) -> Fraction:
    """Height of the box as it is stood up: its sides, without a plinth of its own [mm]."""
    return max(p.finished.length.value for p in case.parts if p.role == "side")


def _examine(room: Room) -> Iterator[Breach]:
    measured = room.survey.clear
    ceiling = room.spec.style["ceiling"].value if measured is None else measured.value
    word = "is reckoned" if measured is None else "is"
    ask = ("measure the ceiling at its lowest: write it as ceiling in [style]",)
    air = by_unit(room, "1/2", "12")
    free = ceiling - air
    for case in room.boxes:
        if case.spec.is_hung:
            continue
        high, deep = _box_height(case), case.depth.value
        if high**2 + deep**2 <= free**2:
            continue
        diagonal = about(room, math.hypot(float(high), float(deep)))
        most = about(room, math.sqrt(max(float(free) ** 2 - float(deep) ** 2, 0.0)), Way.DOWN)
        yield Breach(
            case.key,
            f"{case.spec.title} cannot be tilted up: from corner to corner its side measures "
            f"{diagonal}, over {length(room, free)}: the ceiling {word} {length(room, ceiling)} "
            f"high, {length(room, air)} of it kept free",
            measured=diagonal,
            limit=length(room, free),
            remedies=(
                f"a box at most {most} high at this depth, on a plinth of its own",
                f"two boxes, one on the other, each at most {most} high",
                *(ask if measured is None else ()),
                "carry it in upright, or put it together standing",
            ),
        )


RULE = Rule("tilt up", Severity.CARE, __doc__ or "", "common practice", _examine)
