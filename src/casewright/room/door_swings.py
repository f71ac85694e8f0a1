"""Room doors that open into the room: the floor that their leaves sweep."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim
from casewright.room.model import Room
from casewright.room.run_ends import thing_at
from casewright.room.specs import JobSpec, RunSide, RunSpec
from casewright.survey.corners import SurveyedCorner
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import FixedThing
from casewright.survey.walls import SurveyedWall

__all__ = ["DoorStand", "swing_met", "swinging_doors", "swings_beside"]


@dataclass(frozen=True, slots=True)
class DoorStand:
    """A door beside an inside corner, as the wall round it sees it.

    Parameters
    ----------
    side
        End of that wall at which the corner is.
    from_corner
        From the corner to the door [mm].
    leaf
        How far along that wall its leaf comes [mm]: it is as wide as the door.
    """

    door: PlacedThing
    corner: SurveyedCorner
    side: RunSide
    from_corner: Dim
    leaf: Dim

    @property
    def free(self) -> Fraction:
        """`from_corner` as a plain number [mm]."""
        return self.from_corner.value

    @property
    def sweep(self) -> Fraction:
        """`leaf` as a plain number [mm]."""
        return self.leaf.value


def swinging_doors(wall: SurveyedWall) -> Iterator[tuple[PlacedThing, Fraction, Fraction]]:
    """Doors of a wall that open into the room and whose edges are known, with these [mm]."""
    for thing in wall.things:
        if thing.spec.kind != "door" or thing.spec.swing is None:
            continue
        if thing.left is not None and thing.right is not None:
            yield thing, thing.left.value, thing.right.value


def swings_beside(room: Room, key: str) -> Iterator[DoorStand]:
    """Doors on the walls round the inside corners of a wall that open into the room."""
    for corner in room.survey.corners.values():
        if corner.spec.outside or key not in (corner.spec.left, corner.spec.right):
            continue
        side: RunSide = "left" if corner.spec.right == key else "right"
        on = corner.spec.left if side == "left" else corner.spec.right
        wall = room.survey.walls.get(on)
        if wall is None or wall.width is None:
            continue
        for door, _, _ in swinging_doors(wall):
            if door.left is not None and door.right is not None:
                free = wall.width - door.right if side == "left" else door.left
                yield DoorStand(door, corner, side, free, door.right - door.left)


def swing_met(spec: JobSpec, run: RunSpec, side: RunSide) -> tuple[str, FixedThing] | None:
    """The door round the corner at whose swing a run ends, and its wall; None: at none."""
    key = thing_at(run, side)
    for corner in spec.survey.corners if key else ():
        here, there = (
            (corner.right, corner.left) if side == "left" else (corner.left, corner.right)
        )
        wall = spec.survey.wall(there)
        if corner.outside or here != run.on or wall is None:
            continue
        for thing in wall.things:
            if thing.key == key and thing.kind == "door" and thing.swing is not None:
                return there, thing
    return None
