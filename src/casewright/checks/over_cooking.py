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

from casewright.casework.cases import Case
from casewright.casework.hoods import BARE, PROTECTED
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, Given, Origin, Told, greatest, tell
from casewright.findings import Severity
from casewright.room.model import Appliance, Room, Run

__all__ = ["RULE"]

_NAME = "over cooking"
_BARE = Given(BARE, Origin("cited", "the code's figure up to wood that nothing protects", "irc"))
_LEAST = Given(PROTECTED, Origin("cited", "the code's least, whatever a sheet says", "irc"))


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


class _Cooking:
    """What is cooked on, and the numbers of a case over it.

    Parameters
    ----------
    case
        The first of those that a finding tells of.
    """

    def __init__(self, room: Room, run: Run, cooking: Appliance, case: Case) -> None:
        self.case, self.spec = case, cooking.spec
        self.own = reckoning(room, _NAME, f"{case.key}.{cooking.spec.key}")
        free = room.wall_bottom - self._surface(room, run)
        self.free = self.own.let("free", free + case.standing if case.standing.value else free)
        self.least = self._least()

    def _least(self) -> Dim:
        """What has to stay free over it [mm]."""
        sheet = self.spec.clear_above
        if sheet is None:
            return self.own.given("over_cooking.bare", _BARE)
        asked = self.own.given(f"appliance.{self.spec.key}.clear_above", sheet)
        floor = self.own.given("over_cooking.least", _LEAST)
        return (
            asked if asked.value >= floor.value else self.own.let("least", greatest(asked, floor))
        )

    def _surface(self, room: Room, run: Run) -> Dim:
        """Height of the surface above the floor [mm]."""
        own = self.own.given(f"appliance.{self.spec.key}.height", self.spec.height)
        beside = [case.height for case in run.cases if case.spec.kind == "base"]
        if not beside:
            return own
        return greatest(own, greatest(*beside) + style_of(room, self.own, "counter"))


def _hoods(room: Room, run: Run, cooking: Appliance) -> Iterator[Breach]:
    """Hoods over it: their undersides, as they were built, against its sheet and their own."""
    for case in room.boxes:
        hood = case.spec.hood
        if hood is None or not _is_its_hood(case, cooking):
            continue
        it = _Cooking(room, run, cooking, case)
        free, most = it.free, it.least
        if hood.liner_clear is not None:
            most = greatest(most, it.own.given(f"{case.key}.liner_clear", hood.liner_clear))
        if free.value < most.value:
            higher = it.own.length(most - free, "higher")
            yield replace(
                _breach(it, _hangs(it), most),
                remedies=(tell("hang it {} higher", higher), "a lower case"),
            )


def _is_its_hood(case: Case, cooking: Appliance) -> bool:
    return case.spec.hood is not None and case.spec.hood.over == cooking.spec.key


def _hangs(it: _Cooking) -> Told:
    free = it.own.length(it.free)
    return tell("{} hangs {} over {}", it.case.spec.title, free, it.spec.title)


def _above(room: Room, run: Run, cooking: Appliance) -> Iterator[Breach]:
    begins = run.begins.value
    grid = room.spec.style["cut_step"].value  # where they meet, parts may be rounded over it
    left = begins + cooking.start.value + grid
    right = left + cooking.width.value - 2 * grid
    for other in room.runs:
        if not run.spec.on or other.spec.on != run.spec.on:
            continue
        for case, start in zip(other.cases, other.starts, strict=True):
            at = other.begins.value + start.value
            over = at < right and left < at + case.overall_width.value
            if not case.spec.is_hung or not over or _is_its_hood(case, cooking):
                continue
            it = _Cooking(room, run, cooking, case)
            if it.free.value < it.least.value:
                yield _breach(it, _hangs(it), it.least)


def _anywhere(room: Room, run: Run, cooking: Appliance, cases: list[Case]) -> Iterator[Breach]:
    """One word for all wall cases that may hang over it."""
    hung = [case for case in cases if case.spec.kind == "wall"]
    if not hung:
        return
    it = _Cooking(room, run, cooking, hung[0])
    if it.free.value >= it.least.value:
        return
    names = ", ".join(case.spec.title for case in hung)
    says = tell(
        "nobody has said where {} hang{}: over {} it would leave {}",
        names,
        "" if len(hung) > 1 else "s",
        cooking.spec.title,
        it.own.length(it.free),
    )
    yield replace(
        _breach(it, says, it.least),
        remedies=(
            "on = the wall that it hangs on, in both runs",
            f"hang it anywhere but over {cooking.spec.title}",
        ),
        severity=Severity.CARE,
    )


def _breach(it: _Cooking, says: Told, least: Dim) -> Breach:
    own, given, free = it.own, it.spec.clear_above, it.free
    most = own.length(least, "asked")
    asks: str = "its own sheet wants more"
    if given is None:
        asks = tell("until its sheet says more or less, {} is kept", most)
    elif given.value < least.value:
        sheet = own.given(f"appliance.{it.spec.key}.clear_above", given)
        asks = tell("its sheet wants {}, the code never less than this", own.length(sheet))
    lower = tell("a lower case there, hung {} higher", own.length(least - free, "higher"))
    return Breach(
        it.case.key,
        tell("{}, and {} has to stay free: {}", says, most, asks),
        measured=own.length(free).text,
        limit=most.text,
        remedies=(
            "no case over it: a hood, by its own sheet",
            lower,
            *((f"clear_above under [appliance.{it.spec.key}], from its own sheet",)
              if given is None else ()),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.STOP, __doc__ or "", "irc", _examine)
