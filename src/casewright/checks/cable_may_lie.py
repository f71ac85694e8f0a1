"""Wall screws where a cable may run sideways, between two outlets or switches of a wall.

From outlet to outlet cables go sideways through the studs, mostly as high as the outlets are. A
screw that goes in there may meet one, and a screw through a cable can kill or set fire to the
house. A zone is reckoned between outlets and switches next to one another on a wall whose places
were read, as high as each of them and style 'cable_zone' over and under it, but not past a door
between them. Strips straight over and under them are left without screws anyhow. A wall says
nothing of what runs elsewhere in it: probe everywhere. Local codes differ and come first; wiring
is for licensed trades.

Passes
------
A wall case 54 in above the floor, and two outlets over the counter.

Fails
-----
The same case, and an outlet on either side of it as high as its upper nailer.

Sources
-------
`common practice`: cables run sideways between outlets. The air over and under them is style
'cable_zone', this house's judgement.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.levels import extent
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, greatest, tell
from casewright.findings import Reckoning, Severity
from casewright.room.cable_runs import CableRun, cable_runs
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls, edges_of
from casewright.room.stud_columns import free_studs, inside_edges
from casewright.room.wall_fixing import WallFixing, wall_fixings

__all__ = ["RULE"]

_NAME = "cable may lie"

_UP, _OUT = 1, 2
"""Axes y and z of a case."""


def _examine(room: Room) -> Iterator[Breach]:
    runs = {key: found for key, wall in room.survey.walls.items()
            if (found := cable_runs(room, wall))}  # fmt: skip
    if not runs:
        return
    fixings = {fixing.case: fixing for fixing in wall_fixings(room)}
    for place in cases_on_walls(room):
        fixing = fixings.get(place.case.key)
        for run in runs.get(place.wall.spec.key, ()) if fixing is not None else ():
            if fixing is not None and _meets(room, place, fixing, run):
                yield _breach(room, place, run)


def _meets(room: Room, place: CasePlace, fixing: WallFixing, run: CableRun) -> bool:
    """Whether a screw of the case goes in there, at any place while no studs are found."""
    heights = [up for low, high in _rows(room, place, fixing)
               for up in (low + (high - low) / 4, high - (high - low) / 4)]  # fmt: skip
    if not any(run.low <= up <= run.high for up in heights):
        return False
    if place.wall.studs:
        studs = (place.wall.studs[n].value for n in free_studs(room, place))
        return any(run.left <= stud <= run.right for stud in studs)
    left, right = inside_edges(place)
    return left < run.right and run.left < right


def _rows(room: Room, place: CasePlace, fixing: WallFixing) -> Iterator[tuple[Fraction, Fraction]]:
    """Lower and upper edges of the boards that screws go through, as on the sheet of the wall."""
    case = place.case
    bottom = place.bottom - (case.standing.value if case.spec.hood else Fraction(0))
    for part in (part for part in case.parts if part.path in fixing.rows):
        low, high = (bottom + end.value for end in extent(part, _UP))
        if len(set(fixing.rows)) < len(fixing.rows):  # a thick back
            board = room.spec.style["nailer"].value
            yield from ((high - board, high), (low, low + board))
        elif part.placed.orientation.thickness.axis == _OUT:
            yield low, high


def _breach(room: Room, place: CasePlace, run: CableRun) -> Breach:
    between = f"{run.one.spec.key}.{run.other.spec.key}.{round(run.low)}"
    own = reckoning(room, _NAME, f"{place.case.key}.{between}")
    left, right, low, high = (
        own.length(edge, name)
        for edge, name in zip(
            _edges(room, own, run), ("left", "right", "low", "high"), strict=True
        )
    )
    return Breach(
        place.case.key,
        tell(
            "wall screws of {} go in where a cable may lie between {}: {} to {} above the floor, "
            "{} to {} from the wall's left end",
            place.case.spec.title, run.says, low, high, left, right,
        ),
        measured=f"{low.text} to {high.text}",
        limit="no cable met",
        remedies=(
            "switch the circuit off and find the cable before boring",
            tell("screws below {} or over {} above the floor, or a rail", low, high),
            "the trade asked, where you cannot tell",
        ),
        own=own,
    )  # fmt: skip


def _edges(room: Room, own: Reckoning, run: CableRun) -> tuple[Dim, Dim, Dim, Dim]:
    """Left, right, lower and upper end of a run, as they follow from what it lies between."""
    zone = style_of(room, own, "cable_zone")
    one, other = (edges for thing in (run.one, run.other) if (edges := edges_of(room, thing)))
    lows, highs = (one[2] - zone, other[2] - zone), (one[3] + zone, other[3] + zone)
    return (
        one[0], greatest(one[1], other[1]),
        next(low for low in lows if low.value == run.low),
        next(high for high in highs if high.value == run.high),
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
