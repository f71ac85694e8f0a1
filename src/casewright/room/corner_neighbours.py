"""Cases of two walls next to an inside corner, and how the one stands before the other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Door, Front
from casewright.dims import Dim, Unit
from casewright.room.model import Room
from casewright.room.on_walls import CasePlace, cases_on_walls
from casewright.sources import INCH

__all__ = ["CORNER_AIR", "CornerNeighbour", "corner_reach", "neighbours", "swing_squared"]

CORNER_AIR: dict[Unit, Fraction] = {"in": INCH / 8, "mm": Fraction(3)}
"""Between what opens and what stands round a corner (common practice) [mm]."""


@dataclass(frozen=True, slots=True)
class CornerNeighbour:
    """The case of a run that is next to an inside corner.

    Parameters
    ----------
    out
        From the corner to its nearer side [mm].
    at_right
        Whether the corner is at the right end of its wall.
    """

    place: CasePlace
    out: Fraction
    at_right: bool

    @property
    def out_of_corner(self) -> Dim:
        """`out`, as it follows [mm]."""
        width = self.place.wall.width
        if not self.at_right or width is None:
            return self.place.left_edge
        return width - self.place.right_edge

    @property
    def path(self) -> str:
        """Of the case."""
        return self.place.case.spec.key

    def bare(self, front: Front) -> Fraction:
        """From the case's side at the corner to the nearer edge of a front [mm]."""
        if self.at_right:
            return self.place.case.overall_width.value - front.x.value - front.width.value
        return front.x.value

    def bare_edge(self, front: Front) -> Dim:
        """`bare`, as it follows [mm]."""
        if self.at_right:
            return self.place.case.overall_width - front.x - front.width
        return front.x

    def from_corner(self, front: Front) -> Fraction:
        """How far the nearer edge of a front is from the corner [mm]."""
        return self.out + self.bare(front)

    @property
    def depth(self) -> Fraction:
        """Of the box [mm]."""
        return self.place.case.depth.value


def neighbours(room: Room) -> Iterator[tuple[CornerNeighbour, CornerNeighbour]]:
    """Two of one height on the walls left and right of each inside corner."""
    places = list(cases_on_walls(room))
    for corner in room.survey.corners.values():
        if corner.spec.outside:
            continue
        for one in _beside(places, corner.spec.left, at_right=True):
            for other in _beside(places, corner.spec.right, at_right=False):
                low = max(one.place.bottom, other.place.bottom)
                if low < min(one.place.top, other.place.top):
                    yield one, other


def _beside(places: list[CasePlace], wall: str, *, at_right: bool) -> Iterator[CornerNeighbour]:
    """The case of each run on a wall that is next to one of its ends."""
    runs = dict.fromkeys(p.run.spec.key for p in places if p.wall.spec.key == wall)
    for key in runs:
        own = [place for place in places if place.run.spec.key == key]
        width = own[-1].wall.width
        if not at_right:
            yield CornerNeighbour(own[0], own[0].left, at_right=False)
        elif width is not None:
            yield CornerNeighbour(own[-1], width.value - own[-1].right, at_right=True)


def corner_reach(room: Room, beside: CornerNeighbour) -> Fraction:
    """How far a case and what is on its fronts reach into the room, with air before it [mm].

    A diagonal corner reaches as far as its leg, to the return side that a neighbour stands at.
    """
    if beside.place.case.mouth is not None:
        return beside.depth
    fronts = beside.place.case.fronts
    plane = max((f.z.value + f.thickness.value for f in fronts), default=beside.depth)
    pull = room.spec.hardware.pull.projection.value if any(f.pull for f in fronts) else Fraction(0)
    return max(plane, beside.depth) + pull + CORNER_AIR[room.spec.unit]


def swing_squared(door: Door, covered: Fraction, *, at_right: bool) -> Fraction:
    """Square of how far a door swings out before what covers its edge at the corner [mm2].

    Hinged at the corner it swings its whole width; hinged away from it, what it swings until its
    free edge is past.
    """
    wide = door.width.value
    hinged_there = (door.hinge_side == "right") == at_right
    return wide**2 - (Fraction(0) if hinged_there else (wide - covered) ** 2)
