"""Studs behind a case, and where on a wall cables and pipes may run up and down."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.room.model import Room
from casewright.room.on_walls import CasePlace
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import is_small
from casewright.survey.walls import SurveyedWall

__all__ = ["COLUMNS", "OffLimits", "free_studs", "inside_edges", "off_limits", "studs_behind"]

COLUMNS = 2
"""Columns of screws that a wall case is asked to hang on (common practice)."""


@dataclass(frozen=True, slots=True)
class OffLimits:
    """A strip of wall, from floor to ceiling, in which no wall screw is driven.

    Parameters
    ----------
    thing
        What is on the wall there.
    left, right
        From the wall's left end [mm].
    """

    thing: PlacedThing
    left: Fraction
    right: Fraction

    def holds(self, along: Fraction) -> bool:
        """Whether a place along the wall lies in it."""
        return self.left <= along <= self.right


def off_limits(room: Room, wall: SurveyedWall) -> tuple[OffLimits, ...]:
    """Strips above and below the outlets, switches, pipes, gas pipes and vents of a wall.

    A thing of which only the middle was read counts as wide as an outlet's box, 4 in or 100 mm;
    style 'cable_zone' is added on either side.

    Sources
    -------
    `common practice`: cables and pipes run up and down from what they serve.
    """
    beside = room.spec.style["cable_zone"].value
    box = Fraction(1016, 10) if room.spec.unit == "in" else Fraction(100)
    found: list[OffLimits] = []
    for thing in wall.things:
        if not is_small(thing.spec.kind) or thing.left is None or thing.right is None:
            continue
        left, right = thing.left.value, thing.right.value
        if left == right:
            left, right = left - box / 2, right + box / 2
        found.append(OffLimits(thing, left - beside, right + beside))
    return tuple(found)


def studs_behind(place: CasePlace) -> tuple[int, ...]:
    """Numbers of the found studs whose middles lie between a case's sides, left to right."""
    inside = inside_edges(place)
    numbered = sorted(enumerate(place.wall.studs), key=lambda row: row[1].value)
    return tuple(n for n, stud in numbered if inside[0] <= stud.value <= inside[1])


def inside_edges(place: CasePlace) -> tuple[Fraction, Fraction]:
    """Where a case's sides end inside, from the wall's left end [mm]."""
    case = place.case
    left = place.left + case.left_frame.value
    side = max(p.finished.thickness.value for p in case.parts if p.role == "side")
    return left + side, left + case.width.value - side


def free_studs(room: Room, place: CasePlace) -> tuple[int, ...]:
    """Numbers of those of them that lie in no strip that is off limits."""
    strips = off_limits(room, place.wall)
    return tuple(
        n
        for n in studs_behind(place)
        if not any(strip.holds(place.wall.studs[n].value) for strip in strips)
    )
