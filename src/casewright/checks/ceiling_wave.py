"""Ceilings that wave more than a crown tight to them can take up.

A crown is set level, its foot on one line. Where the ceiling rises from its lowest place a gap
opens over the moulding. Up to about 1/8 in (3 mm) it is caulked, or a slim moulding is bent to it;
over that the gap shows.

Passes
------
A ceiling that rises 1/8 in along the wall, with a crown up to it.

Fails
-----
One that rises 3/8 in.

Sources
-------
`common practice`: over 1/8 in, or 3 mm, a crown is bent, scribed, or hung lower with a frieze.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    most = by_unit(room, "1/8", "3")
    for run in room.runs:
        wall, crown = room.survey.walls.get(run.spec.on), run.spec.trims.crown
        if wall is None or crown is None or not crown.to_ceiling:
            continue
        ups = _over(run, wall)
        rises = max(ups) - min(ups) if ups else Fraction(0)
        if rises > most:
            yield Breach(
                f"run.{run.spec.key}.crown",
                f"the ceiling over {run.spec.title} rises {length(room, rises)} from its lowest "
                "place: a level crown leaves that gap over it",
                measured=length(room, rises),
                limit=length(room, most),
                remedies=(
                    "bend a slim moulding to it, or scribe its head",
                    f"hang it {length(room, rises)} lower, a strip scribed to the ceiling over it",
                    "to_ceiling = false: let it stand free",
                ),
            )


def _over(run: Run, wall: SurveyedWall) -> list[Fraction]:
    """Heights of the ceiling over the level line, read over a run and next to it [mm]."""
    low = run.begins.value
    high = low + run.length.value
    read = sorted(
        (station.along, up.value)
        for n, station in enumerate(wall.spec.stations, start=1)
        if (up := wall.read.get(f"station_{n}.up")) is not None
    )
    before = [value for along, value in read if along < low][-1:]
    after = [value for along, value in read if along > high][:1]
    return [*before, *(value for along, value in read if low <= along <= high), *after]


RULE = Rule("ceiling wave", Severity.CARE, __doc__ or "", "common practice", _examine)
