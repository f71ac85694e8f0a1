"""Wall cases too near over a surface that is cooked on.

Grease flares up, and wood over a burner chars long before it burns. What has to stay free stands
in the appliance's own sheet; while nobody has given it, the code's 30 in (762 mm) up to wood that
nothing protects is kept. Under 24 in (610 mm), the code's figure for what is protected or does not
burn, no sheet is followed here. The surface is reckoned as high as the appliance, or as a counter
1 1/2 in (40 mm) thick on the base cases beside it where that is higher. Wall cases of which nobody
has said where they hang are told of too. A hood and its own sheet come on top of this, and so does
the local code.

Passes
------
No wall case over the cooktop: a hood hangs there, its underside by both sheets.

Fails
-----
A wall case 54 in above the floor over a cooktop in a counter of 36: 18 in.

Sources
-------
`irc`: M1901.1, 30 in to unprotected and 24 in to protected or noncombustible material above, read
in a secondary copy.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.hoods import BARE, PROTECTED
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Appliance, Room, Run

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    in_runs = {case.key for run in room.runs for case in run.cases}
    for run in room.runs:
        for each in run.appliances:
            if each.spec.cooks:
                yield from _hoods(room, run, each)
                yield from _above(room, run, each)
                loose = [case for case in room.boxes if case.key not in in_runs]
                loose += [c for r in room.runs if not (run.spec.on and r.spec.on) for c in r.cases]
                yield from _anywhere(room, run, each, loose)


def _hoods(room: Room, run: Run, cooking: Appliance) -> Iterator[Breach]:
    """Hoods over it: their undersides, as they were built, against its sheet and their own."""
    free, least = _heights(room, run, cooking)
    for case in room.boxes:
        hood = case.spec.hood
        if hood is None or not _is_its_hood(case, cooking):
            continue
        own = free + case.standing.value
        most = max(least, hood.liner_clear.value if hood.liner_clear else least)
        if own < most:
            says = f"{case.spec.title} hangs {length(room, own)} over {cooking.spec.title}"
            yield replace(
                _breach(room, case, says, cooking, (own, most)),
                remedies=(f"hang it {length(room, most - own)} higher", "a lower case"),
            )


def _is_its_hood(case: Case, cooking: Appliance) -> bool:
    return case.spec.hood is not None and case.spec.hood.over == cooking.spec.key


def _above(room: Room, run: Run, cooking: Appliance) -> Iterator[Breach]:
    begins = run.begins.value
    grid = room.spec.style["cut_step"].value  # where they meet, parts may be rounded over it
    left = begins + cooking.start.value + grid
    right = left + cooking.width.value - 2 * grid
    free, least = _heights(room, run, cooking)
    for other in room.runs:
        if not run.spec.on or other.spec.on != run.spec.on:
            continue
        for case, start in zip(other.cases, other.starts, strict=True):
            at = other.begins.value + start.value
            over = at < right and left < at + case.overall_width.value
            own = free + case.standing.value
            if case.spec.is_hung and over and own < least and not _is_its_hood(case, cooking):
                says = f"{case.spec.title} hangs {length(room, own)} over {cooking.spec.title}"
                yield _breach(room, case, says, cooking, (own, least))


def _anywhere(room: Room, run: Run, cooking: Appliance, cases: list[Case]) -> Iterator[Breach]:
    """One word for all wall cases that may hang over it."""
    hung = [case for case in cases if case.spec.kind == "wall"]
    free, least = _heights(room, run, cooking)
    if free >= least or not hung:
        return
    names = ", ".join(case.spec.title for case in hung)
    says = (
        f"nobody has said where {names} hang{'' if len(hung) > 1 else 's'}: "
        f"over {cooking.spec.title} it would leave {length(room, free)}"
    )
    yield replace(
        _breach(room, hung[0], says, cooking, (free, least)),
        remedies=(
            "on = the wall that it hangs on, in both runs",
            f"hang it anywhere but over {cooking.spec.title}",
        ),
        severity=Severity.CARE,
    )


def _heights(room: Room, run: Run, cooking: Appliance) -> tuple[Fraction, Fraction]:
    """What is free under the wall cases, and what has to be [mm]."""
    sheet = cooking.spec.clear_above
    least = BARE if sheet is None else max(sheet.value, PROTECTED)
    return room.wall_bottom.value - _surface(room, run, cooking), least


def _surface(room: Room, run: Run, cooking: Appliance) -> Fraction:
    """Height of the surface above the floor [mm]."""
    beside = [case.height.value for case in run.cases if case.spec.kind == "base"]
    counter = max(beside, default=Fraction(0)) + room.spec.style["counter"].value
    return max(cooking.spec.height.value, counter if beside else Fraction(0))


def _breach(
    room: Room, case: Case, says: str, cooking: Appliance, heights: tuple[Fraction, Fraction]
) -> Breach:
    free, least = heights
    given = cooking.spec.clear_above
    if given is None:
        asks = f"until its sheet says more or less, {length(room, least)} is kept"
    elif given.value < least:
        asks = f"its sheet wants {length(room, given.value)}, the code never less than this"
    else:
        asks = "its own sheet wants more"
    return Breach(
        case.key,
        f"{says}, and {length(room, least)} has to stay free: {asks}",
        measured=length(room, free),
        limit=length(room, least),
        remedies=(
            "no case over it: a hood, by its own sheet",
            f"a lower case there, hung {length(room, least - free)} higher",
            *((f"clear_above under [appliance.{cooking.spec.key}], from its own sheet",)
              if given is None else ()),
        ),
    )  # fmt: skip


RULE = Rule("over cooking", Severity.STOP, __doc__ or "", "irc", _examine)
