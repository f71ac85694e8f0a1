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

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, Way, root, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "tilt up"
_AIR = Limit("tilt_up.air", "1/2", "12", "kept free under the ceiling")


def _box_height(case: Case) -> Dim:
    """Height of the box as it is stood up: its sides, without a plinth of its own [mm]."""
    sides = (part.finished.length for part in case.parts if part.role == "side")
    return max(sides, key=lambda dim: dim.value)


def _examine(room: Room) -> Iterator[Breach]:
    measured = room.survey.clear
    ceiling = room.spec.style["ceiling"].value if measured is None else measured.value
    free = ceiling - _AIR.of(room.spec.unit)
    for case in room.boxes:
        if not case.spec.is_hung:
            high, deep = _box_height(case), case.depth
            if high.value**2 + deep.value**2 > free**2:
                yield _breach(room, case, high)


def _breach(room: Room, case: Case, high: Dim) -> Breach:
    own, deep = reckoning(room, _NAME, case.key), case.depth
    measured, air = room.survey.clear, own.limit(_AIR)
    ceiling = style_of(room, own, "ceiling") if measured is None else measured
    free = own.let("free", ceiling - air)
    diagonal = own.about(root(high * high + deep * deep), "diagonal")
    left = free * free - deep * deep
    highest = root(left) if left.value > 0 else own.none
    most = own.about(highest, "highest", Way.DOWN)
    word = "is reckoned" if measured is None else "is"
    ask = ("measure the ceiling at its lowest: write it as ceiling in [style]",)
    return Breach(
        case.key,
        tell(
            "{} cannot be tilted up: from corner to corner its side measures {}, over {}: the "
            "ceiling {} {} high, {} of it kept free",
            case.spec.title, diagonal, own.length(free), word, own.length(ceiling),
            own.length(air),
        ),
        measured=diagonal.text,
        limit=own.length(free).text,
        remedies=(
            tell("a box at most {} high at this depth, on a plinth of its own", most),
            tell("two boxes, one on the other, each at most {} high", most),
            *(ask if measured is None else ()),
            "carry it in upright, or put it together standing",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
