"""Wall cases too narrow to have two studs behind them.

A wall case hangs on two columns of screws. One that is narrower than the studs are apart has one
stud behind it at the most, and perhaps none; all its weight then hangs on one column, and it can
turn about it. Where the studs are is not known until they are found. What a wall carries is not
worked out here.

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

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.wall_fixing import wall_fixings

__all__ = ["RULE"]

_COLUMNS = 2


def _examine(room: Room) -> Iterator[Breach]:
    cases = {case.key: case for case in room.cases}
    in_runs = {case.key for run in room.runs if len(run.cases) > 1 for case in run.cases}
    spacing = length(room, room.spec.style["stud_spacing"].value)
    for fixing in wall_fixings(room):
        case = cases[fixing.case]
        if case.spec.kind != "wall" or fixing.studs >= _COLUMNS:
            continue
        joined = ("screw it to its neighbours too, before they are let go",)
        yield Breach(
            case.key,
            f"{case.spec.title}, {length(room, case.width.value)} wide, has one stud behind it at "
            f"the most, perhaps none: they stand {spacing} apart until they are found",
            measured=length(room, case.width.value),
            limit=spacing,
            remedies=(
                "a rail across two studs, flush with the wall's board, behind each nailer",
                *(joined if case.key in in_runs else ()),
                "a wider case",
            ),
        )


RULE = Rule("studs behind", Severity.CARE, __doc__ or "", "common practice", _examine)
