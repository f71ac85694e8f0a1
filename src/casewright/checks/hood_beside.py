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
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Appliance, Room, Run

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        for cooking in run.appliances:
            for case in room.boxes:
                hood = case.spec.hood
                if hood is not None and hood.over == cooking.spec.key:
                    yield from _wide(room, case, cooking)
                    yield from _middle(room, case, run, cooking)


def _wide(room: Room, case: Case, cooking: Appliance) -> Iterator[Breach]:
    wide, below = case.width.value, cooking.width.value
    if wide >= below:
        return
    yield Breach(
        case.key,
        f"{case.spec.title} is {length(room, wide)} wide over {cooking.spec.title} of "
        f"{length(room, below)}",
        measured=length(room, wide),
        limit=length(room, below),
        remedies=(f"a hood {length(room, below - wide)} wider", "a liner that its sheet lets so"),
    )


def _middle(room: Room, case: Case, run: Run, cooking: Appliance) -> Iterator[Breach]:
    most = by_unit(room, "1/2", "13")
    for other in room.runs:
        if not run.spec.on or other.spec.on != run.spec.on or case not in other.cases:
            continue
        at = other.begins.value + other.starts[other.cases.index(case)].value
        off = at + case.overall_width.value / 2
        off -= run.begins.value + cooking.start.value + cooking.width.value / 2
        if abs(off) > most:
            way, back = ("right", "left") if off > 0 else ("left", "right")
            far = length(room, abs(off))
            yield Breach(
                case.key,
                f"the middle of {case.spec.title} hangs {far} to the {way} of that of "
                f"{cooking.spec.title}",
                measured=far,
                limit=length(room, most),
                remedies=(f"move it, or what it hangs over, {far} to the {back}",),
            )


RULE = Rule("hood beside", Severity.CARE, __doc__ or "", "common practice", _examine)
