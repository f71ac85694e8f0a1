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

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, greatest, least, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room, Run
from casewright.survey.walls import SurveyedWall

__all__ = ["RULE"]

_NAME = "ceiling wave"
_MOST = Limit("ceiling_wave.most", "1/8", "3", "widest gap over a crown that is caulked or bent")


def _examine(room: Room) -> Iterator[Breach]:
    most = _MOST.of(room.spec.unit)
    for run in room.runs:
        wall, crown = room.survey.walls.get(run.spec.on), run.spec.trims.crown
        if wall is None or crown is None or not crown.to_ceiling:
            continue
        ups = _over(run, wall)
        values = [up.value for up in ups]
        if ups and max(values) - min(values) > most:
            own = reckoning(room, _NAME, run.spec.key)
            rises = own.length(greatest(*ups) - least(*ups), "rises")
            yield Breach(
                f"run.{run.spec.key}.crown",
                tell(
                    "the ceiling over {} rises {} from its lowest place: a level crown leaves "
                    "that gap over it",
                    run.spec.title,
                    rises,
                ),
                measured=rises.text,
                limit=own.length(own.limit(_MOST)).text,
                remedies=(
                    "bend a slim moulding to it, or scribe its head",
                    tell("hang it {} lower, a strip scribed to the ceiling over it", rises),
                    "to_ceiling = false: let it stand free",
                ),
                own=own,
            )


def _over(run: Run, wall: SurveyedWall) -> list[Dim]:
    """Heights of the ceiling over the level line, read over a run and next to it [mm]."""
    low = run.begins.value
    high = low + run.length.value
    read = sorted(
        (station.along, n, up)
        for n, station in enumerate(wall.spec.stations, start=1)
        if (up := wall.read.get(f"station_{n}.up")) is not None
    )
    before = [up for along, _, up in read if along < low][-1:]
    after = [up for along, _, up in read if along > high][:1]
    return [*before, *(up for along, _, up in read if low <= along <= high), *after]


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
