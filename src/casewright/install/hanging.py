"""The whole day of hanging, wall by wall."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.dims import Chain, Dim
from casewright.install.appliances import AppliancePlace, appliances_on
from casewright.install.bearing import WallShim, wall_shims
from casewright.install.levelling import FloorShim, floor_shims
from casewright.install.marks import HeightMark, Mark, height_marks, marks_along
from casewright.install.numbers import Numbers
from casewright.install.order import Lift, hanging_order
from casewright.install.places import WallPlace, places_on
from casewright.install.screw_worth import ScrewWorth, screw_worths
from casewright.install.scribing import ScribeProfile, scribe_profiles
from casewright.install.stud_map import CaseScrews, case_screws
from casewright.room.cable_runs import CableRun, cable_runs
from casewright.room.model import Room
from casewright.room.stud_columns import OffLimits, off_limits
from casewright.room.wall_fixing import PER_STUD, wall_fixings
from casewright.survey.walls import SurveyedWall

__all__ = ["Hanging", "WallHanging", "hanging"]


@dataclass(frozen=True, slots=True)
class WallHanging:
    """What is done at one wall.

    Parameters
    ----------
    places
        Its cases, those that hang first, then from left to right.
    marks, heights
        From its left end, and from the level line.
    strips
        Where no wall screw is driven.
    cables
        Where a cable may lie between two outlets.
    screws
        Of each case that is screwed to the wall.
    floor_shims, wall_shims
        Under the cases that stand, and behind rows.
    lifts
        Its cases in the order in which they go up.
    profiles
        Edges of its fillers at the wall.
    appliances
        What its runs leave room for, from left to right.
    """

    wall: SurveyedWall
    places: tuple[WallPlace, ...]
    marks: tuple[Mark, ...]
    heights: tuple[HeightMark, ...]
    strips: tuple[OffLimits, ...]
    cables: tuple[CableRun, ...]
    screws: tuple[CaseScrews, ...]
    floor_shims: tuple[FloorShim, ...]
    wall_shims: tuple[WallShim, ...]
    lifts: tuple[Lift, ...]
    profiles: tuple[ScribeProfile, ...]
    appliances: tuple[AppliancePlace, ...]


@dataclass(frozen=True, slots=True)
class Hanging:
    """What is done at every surveyed wall that cases go to.

    Parameters
    ----------
    walls
        By their keys.
    worths
        What their screws are worth by the equations.
    """

    walls: Mapping[str, WallHanging]
    worths: tuple[ScrewWorth, ...] = ()

    @property
    def screws_at_studs(self) -> dict[str, list[tuple[Dim, int]]]:
        """Wall screws of cases whose studs were found: lengths [mm] and how many, by case."""
        found: dict[str, list[tuple[Dim, int]]] = {}
        for case in (case for wall in self.walls.values() for case in wall.screws):
            for screw in case.screws:
                if screw.strip is None:
                    own = found.setdefault(case.place.case.key, [])
                    own.append((screw.length, PER_STUD))
        return found


def hanging(room: Room, chain: Chain) -> Hanging:
    """The day of hanging.

    Parameters
    ----------
    chain
        That holds the room's numbers; those of the day are entered into it, once.
    """
    numbers = Numbers(room, chain)
    walls: dict[str, WallHanging] = {}
    for key, wall in room.survey.walls.items():
        places = places_on(numbers, wall)
        if places:
            walls[key] = _wall(numbers, wall, places)
    hung = (case for wall in walls.values() for case in wall.screws)
    return Hanging(walls, tuple(screw_worths(numbers, hung)))


def _wall(numbers: Numbers, wall: SurveyedWall, places: tuple[WallPlace, ...]) -> WallHanging:
    room = numbers.room
    fixings = {fixing.case: fixing for fixing in wall_fixings(room)}
    behind, below = wall_shims(numbers, wall, places), floor_shims(numbers, wall, places)
    return WallHanging(
        wall=wall,
        places=places,
        marks=marks_along(numbers, wall, places),
        heights=height_marks(numbers, wall, places),
        strips=off_limits(room, wall),
        cables=cable_runs(room, wall),
        screws=tuple(
            case_screws(numbers, place, fixings[place.case.key], behind)
            for place in places
            if place.case.key in fixings
        ),
        floor_shims=below,
        wall_shims=behind,
        lifts=hanging_order(room, wall, places),
        profiles=scribe_profiles(numbers, wall),
        appliances=appliances_on(numbers, wall, places),
    )
