"""Where on a wall a cable may run sideways, from one outlet or switch to the next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from casewright.room.model import Room
from casewright.room.on_walls import thing_edges
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.walls import SurveyedWall

__all__ = ["CableRun", "cable_runs"]

_Edges = tuple[Fraction, Fraction, Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class CableRun:
    """A zone of wall between two outlets or switches, as high as one of them and air about it.

    Parameters
    ----------
    one, other
        What is on the wall at its left and at its right end.
    left, right
        From the wall's left end [mm].
    low, high
        Above the floor [mm].
    """

    one: PlacedThing
    other: PlacedThing
    left: Fraction
    right: Fraction
    low: Fraction
    high: Fraction

    def holds(self, along: Fraction, up: Fraction) -> bool:
        """Whether a place on the wall lies in it."""
        return self.left <= along <= self.right and self.low <= up <= self.high

    @property
    def says(self) -> str:
        """Between which two, in words."""
        return f"{self.one.spec.title} and {self.other.spec.title}"


def cable_runs(room: Room, wall: SurveyedWall) -> tuple[CableRun, ...]:
    """Zones between outlets and switches that are next to one another along a wall.

    As high as each of the two, style 'cable_zone' over and under it; one zone where both stand
    equally high. Between two with a door between them none is drawn. That they are known says
    nothing of what else runs in the wall.

    Sources
    -------
    `common practice`: from outlet to outlet cables run sideways through the studs, mostly at
    their height. Local codes differ, and so do old houses.
    """
    wired = [
        (edges, thing)
        for thing in wall.things
        if thing.spec.kind in ("outlet", "switch")
        and (edges := thing_edges(room, thing)) is not None
    ]
    wired.sort(key=lambda each: each[0])
    return tuple(
        run
        for one, other in pairwise(wired)
        if not _door_between(room, wall, one[0], other[0])
        for run in _zones(room, one, other)
    )


def _zones(
    room: Room, one: tuple[_Edges, PlacedThing], other: tuple[_Edges, PlacedThing]
) -> Iterator[CableRun]:
    beside = room.spec.style["cable_zone"].value
    left, right = one[0][0], max(one[0][1], other[0][1])
    spans = [(low - beside, high + beside) for _, _, low, high in (one[0], other[0])]
    first, second = sorted(spans)
    if second[0] <= first[1]:
        spans = [(first[0], max(first[1], second[1]))]
    for low, high in spans:
        yield CableRun(one[1], other[1], left, right, low, high)


def _door_between(room: Room, wall: SurveyedWall, one: _Edges, other: _Edges) -> bool:
    doors = (thing for thing in wall.things if thing.spec.kind == "door")
    edges = (thing_edges(room, door) for door in doors)
    return any(door is not None and one[0] <= door[0] and door[1] <= other[1] for door in edges)
