"""What takes up floor: walls, cases, appliances, what stands out from walls, what stands free.

Corners lie in the plan of `wall_frames`, in rational numbers; nothing here is a float.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.cases import Case
from casewright.room.free_stand import FreeStand
from casewright.room.model import Appliance, Room, Run
from casewright.room.on_walls import cases_on_walls, thing_edges
from casewright.room.wall_stands import Spot, WallFrame, wall_frames

__all__ = [
    "Footprint",
    "FootprintKind",
    "counter_reach",
    "footprints",
    "free_footprint",
    "rectangle",
]

FootprintKind = Literal["wall", "works", "stands", "thing"]
"""A wall; cases and appliances that one works or opens a front at; others; a thing on a wall."""

_THICK = Fraction(110)  # of any wall, as drawn [mm]
_LOW = Fraction(1000)  # what begins higher leaves the floor free [mm]
_ROOT = Fraction(99, 70)  # a little over the root of 2


@dataclass(frozen=True, slots=True)
class Footprint:
    """Floor that is taken up, counters included.

    Parameters
    ----------
    key, title
        Of the case, appliance, thing or wall; name in words.
    corners
        In order round it, convex.
    wall
        Key of the wall that it is measured from.
    """

    key: str
    title: str
    kind: FootprintKind
    corners: tuple[Spot, ...]
    wall: str


def rectangle(
    frame: WallFrame, along: tuple[Fraction, Fraction], out: tuple[Fraction, Fraction]
) -> tuple[Spot, ...]:
    """Corners of what lies between two places along a wall and two out from it."""
    (left, right), (near, far) = along, out
    return tuple(
        frame.at(x, z) for x, z in ((left, near), (right, near), (right, far), (left, far))
    )


def free_footprint(frames: Mapping[str, WallFrame], stand: FreeStand) -> tuple[Spot, ...]:
    """Corners of what stands free, counter included."""
    left, right, near, far = (edge.value for edge in stand.counter)
    return rectangle(frames[stand.wall], (left, right), (near, far))


def footprints(room: Room) -> tuple[Footprint, ...]:
    """Everything on the floor, walls first."""
    frames = wall_frames(room.survey)
    found = list(_walls(room, frames))
    found += _cases(room, frames)
    found += _appliances(room, frames)
    found += _things(room, frames)
    for stand in room.free:
        found.append(
            Footprint(stand.key, stand.title, "works", free_footprint(frames, stand), stand.wall)
        )
    return tuple(found)


def _walls(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[Footprint]:
    for key, frame in frames.items():
        wall = room.survey.walls[key]
        if wall.width is not None:
            corners = rectangle(frame, (Fraction(0), frame.length), (-_THICK, Fraction(0)))
            yield Footprint(key, wall.spec.title, "wall", corners, key)


def counter_reach(room: Room, case: Case) -> Fraction:
    """How far out a case reaches, its doors and the counter on it included [mm]."""
    has_counter = case.spec.kind == "base" and case.spec.lid is None
    over = room.spec.style["island_front_overhang"].value if has_counter else Fraction(0)
    return case.overall_depth.value + over


def _cases(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[Footprint]:
    for place in cases_on_walls(room):
        case, frame = place.case, frames[place.wall.spec.key]
        if place.bottom >= _LOW:
            continue
        kind: FootprintKind = "works" if case.wall_fronts or case.spec.sink else "stands"
        along = (place.left, place.right)
        corners = (
            rectangle(frame, along, (Fraction(0), counter_reach(room, case)))
            if case.mouth is None
            else _across(room, frame, along, case, case.mouth)
        )
        yield Footprint(case.key, case.spec.title, kind, corners, place.wall.spec.key)


def _across(
    room: Room, frame: WallFrame, along: tuple[Fraction, Fraction], case: Case, mouth: CaseMouth
) -> tuple[Spot, ...]:
    """Corners of a diagonal corner: its counter lies over its doors, at 45 degrees as these do."""
    left, right = along
    doors = max((f.z.value + f.thickness.value for f in case.fronts), default=mouth.front.value)
    over = counter_reach(room, case) - case.overall_depth.value
    near, far = Fraction(0), case.depth.value
    side = mouth.side.value + (doors - mouth.front.value + over) * _ROOT
    if mouth.corner == "left":
        ends = ((left, far), (left, near), (right, near), (right, side), (left + side, far))
    else:
        ends = ((left, near), (right, near), (right, far), (right - side, far), (left, side))
    return tuple(frame.at(x, z) for x, z in ends)


def _deepest(room: Room, run: Run) -> Fraction:
    return max(counter_reach(room, case) for case in run.cases)


def _reach(room: Room, run: Run, each: Appliance) -> Fraction:
    return _deepest(room, run) if each.spec.depth is None else each.spec.depth.value


def _appliances(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[Footprint]:
    """As deep as they are said to be, else as the deepest case beside them with its counter."""
    for run in room.runs:
        wall = room.survey.walls.get(run.spec.on)
        if wall is None:
            continue
        begins = run.begins.value
        for each in run.appliances:
            left = begins + each.start.value
            corners = rectangle(frames[run.spec.on], (left, left + each.width.value),
                                (Fraction(0), _reach(room, run, each)))  # fmt: skip
            key = f"appliance.{each.spec.key}"
            yield Footprint(key, each.spec.title, "works", corners, run.spec.on)


def _things(room: Room, frames: Mapping[str, WallFrame]) -> Iterator[Footprint]:
    """What stands out from a wall near the floor, as far as that was read."""
    for key, frame in frames.items():
        for thing in room.survey.walls[key].things:
            edges, out = thing_edges(room, thing), thing.spec.out
            if edges is None or out is None or edges[2] >= _LOW or edges[0] == edges[1]:
                continue
            corners = rectangle(frame, (edges[0], edges[1]), (Fraction(0), out.value))
            yield Footprint(thing.spec.key, thing.spec.title, "thing", corners, key)
