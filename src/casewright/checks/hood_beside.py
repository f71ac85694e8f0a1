"""Hoods that do not hang over the whole of what is cooked on.

What rises from a pan at the edge is caught only by a hood at least as wide as what is below it,
middle over middle. Where both stand on one measured wall they are held against each other; else
only their widths are.

Passes
------
A hood 36 in wide over a cooktop of 30, middle over middle.

Fails
-----
A hood 27 in wide over the same cooktop; one whose middle hangs 4 in beside it.

Sources
-------
`common practice`; the liner's own sheet may ask for more.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import tell
from casewright.findings import Limit, Severity
from casewright.room.model import Appliance, Room, Run

__all__ = ["RULE"]

_NAME = "hood beside"
_MOST = Limit("hood_beside.most", "1/2", "13", "as far off the middle as nobody sees")


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        for cooking in run.appliances:
            for case in room.boxes:
                hood = case.spec.hood
                if hood is not None and hood.over == cooking.spec.key:
                    yield from _wide(room, case, cooking)
                    yield from _middle(room, case, run, cooking)


def _wide(room: Room, case: Case, cooking: Appliance) -> Iterator[Breach]:
    if case.width.value >= cooking.width.value:
        return
    own = reckoning(room, _NAME, f"{case.key}.{cooking.spec.key}")
    wide, below = own.length(case.width), own.length(cooking.width)
    wider = own.length(cooking.width - case.width, "wider")
    yield Breach(
        case.key,
        tell("{} is {} wide over {} of {}", case.spec.title, wide, cooking.spec.title, below),
        measured=wide.text,
        limit=below.text,
        remedies=(tell("a hood {} wider", wider), "a liner that its sheet lets so"),
        own=own,
    )


def _middle(room: Room, case: Case, run: Run, cooking: Appliance) -> Iterator[Breach]:
    for other in room.runs:
        if not run.spec.on or other.spec.on != run.spec.on or case not in other.cases:
            continue
        own = reckoning(room, _NAME, f"{case.key}.{cooking.spec.key}.{run.spec.key}")
        middle = other.begins + other.starts[other.cases.index(case)] + case.overall_width / 2
        off = middle - (run.begins + cooking.start + cooking.width / 2)
        if abs(off.value) > own.limit(_MOST).value:
            way, back = ("right", "left") if off.value > 0 else ("left", "right")
            far = own.length(off if off.value > 0 else -off, "off")
            yield Breach(
                case.key,
                tell(
                    "the middle of {} hangs {} to the {} of that of {}",
                    case.spec.title,
                    far,
                    way,
                    cooking.spec.title,
                ),
                measured=far.text,
                limit=own.length(own.limit(_MOST)).text,
                remedies=(tell("move it, or what it hangs over, {} to the {}", far, back),),
                own=own,
            )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
