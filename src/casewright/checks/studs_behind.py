"""Wall cases too narrow to have two studs behind them.

A wall case hangs on two columns of screws. One that is narrower than the studs are apart has one
stud behind it at the most, and perhaps none; all its weight then hangs on one column, and it can
turn about it. Where studs were found those are counted, but for those above or below an outlet, a
switch or a pipe, where no screw is driven; else as many as can be there. What a wall carries is
not worked out here.

Passes
------
An upper 33 in wide before studs 16 in apart.

Fails
-----
An upper 15 in wide there.

Sources
-------
`common practice`: two screws through each nailer at two studs, or a rail across the studs. The
distance is style 'stud_spacing', usual spacing of wall framing by `irc`.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, Told, joined, tell
from casewright.findings import Reckoning, Severity
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.room.stud_columns import (
    COLUMNS,
    free_studs,
    inside_edges,
    off_limits,
    studs_behind,
)
from casewright.room.wall_fixing import wall_fixings

__all__ = ["RULE"]

_NAME = "studs behind"


def _examine(room: Room) -> Iterator[Breach]:
    cases = {case.key: case for case in room.cases}
    in_runs = {case.key for run in room.runs if len(run.cases) > 1 for case in run.cases}
    on_walls = {each.case.key: each for each in cases_on_walls(room) if each.wall.studs}
    for fixing in wall_fixings(room):
        case = cases[fixing.case]
        before = on_walls.get(case.key)
        free = None if before is None else free_studs(room, before)
        studs = fixing.studs if free is None else len(free)
        if not case.spec.is_hung or studs >= COLUMNS:
            continue
        own = reckoning(room, _NAME, case.key)
        spacing = own.length(style_of(room, own, "stud_spacing"))
        behind = tell(
            "has one stud behind it at the most, perhaps none: they stand {} apart until they are "
            "found",
            spacing,
        )
        if before is not None:
            behind = _behind(room, own, before)
        wide = own.length(case.width)
        joined = ("screw it to its neighbours too, before they are let go",)
        yield Breach(
            case.key,
            tell("{}, {} wide, {}", case.spec.title, wide, behind),
            measured=wide.text,
            limit=spacing.text,
            remedies=(
                "a rail across two studs, flush with the wall's board, behind each nailer",
                *(joined if case.key in in_runs else ()),
                _wider(room, own, case, before, len(free) if free is not None else 0),
            ),
            own=own,
        )


def _wider(room: Room, own: Reckoning, case: Case, before: CasePlace | None, free: int) -> str:
    """By how much it would reach the next stud; while none are found, over their distance."""
    if before is None:
        over = style_of(room, own, "stud_spacing") - case.width
        wider = over if over.value > 0 else own.none
        return tell("a case {} wider", own.length(wider, "to_spacing"))
    left, right = inside_edges(before)
    strips = off_limits(room, before.wall)
    beyond = [
        stud
        for stud in before.wall.studs
        if not left <= stud.value <= right and not any(s.holds(stud.value) for s in strips)
    ]
    wanted = COLUMNS - free
    if wanted != 1 or not beyond:  # two may lie on either side of it
        return "a wider case"
    stud = min(beyond, key=lambda each: max(left - each.value, each.value - right))
    by = own.let("to_next_stud", _to(before, stud, is_left=stud.value < left))
    return tell("a case {} wider, on the side of the next stud", own.length(by))


def _to(before: CasePlace, stud: Dim, *, is_left: bool) -> Dim:
    """From the inside of a case's side to a stud beside it [mm]."""
    case, start = before.case, before.left_edge + before.case.left_frame
    sides = (part.finished.thickness for part in case.parts if part.role == "side")
    side = max(sides, key=lambda dim: dim.value)
    return start + side - stud if is_left else stud - (start + case.width - side)


def _behind(room: Room, own: Reckoning, before: CasePlace) -> Told:
    """Which studs there are, and which of them are left alone."""
    found, free = studs_behind(before), free_studs(room, before)
    if not found:
        return tell("has none of the studs that were found behind it")
    middles = joined(", ", (own.length(before.wall.studs[n], "stud") for n in found))
    many = f"{len(found)} studs" if len(found) > 1 else "one stud"
    words = tell("has {} behind it, {} from the wall's left end", many, middles)
    if len(free) < len(found):
        words += f", {len(found) - len(free)} of them where a cable or a pipe may run"
    return words


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
