"""Sinks, what is cooked on, refrigerators: where one stands before each of them, in plan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Literal, NamedTuple

from casewright.casework.cases import Case
from casewright.room.footprints import footprints
from casewright.room.island_places import island_boxes, island_openings
from casewright.room.model import Room
from casewright.room.wall_stands import Spot, WallFrame, wall_frames

__all__ = ["CENTRES", "CentreKind", "WorkCentre", "centre_keys", "work_centres"]

CentreKind = Literal["sink", "cooking", "refrigerator"]
CENTRES: tuple[CentreKind, ...] = ("sink", "cooking", "refrigerator")


class WorkCentre(NamedTuple):
    """The middle of the front of one of them, in the plan of `wall_frames` [mm].

    Parameters
    ----------
    path, title
        Of the case or the appliance; name in words.
    wall
        Key of the wall that its place is measured from.
    """

    path: str
    title: str
    wall: str
    spot: Spot


def centre_keys(room: Room) -> Mapping[CentreKind, tuple[tuple[str, str], ...]]:
    """Paths and titles of what the job names, wherever it stands.

    A refrigerator in a surround or in a tall case counts by that case.
    """
    cold = {each.key: each.title for each in room.spec.appliances if each.cools}
    found: dict[CentreKind, list[tuple[str, str]]] = {kind: [] for kind in CENTRES}
    for case in room.boxes:
        if case.spec.sink:
            found["sink"].append((case.key, case.spec.title))
        found["refrigerator"] += [(case.key, cold[key]) for key in _inside(case) if key in cold]
    for run in room.runs:
        for each in run.appliances:
            own = (f"appliance.{each.spec.key}", each.spec.title)
            if each.spec.cooks:
                found["cooking"].append(own)
            if each.spec.cools:
                found["refrigerator"].append(own)
    return {kind: tuple(each) for kind, each in found.items()}


def _inside(case: Case) -> Iterator[str]:
    """Keys of the appliances in a case."""
    openings = (case.spec.appliance, *(row.appliance for row in case.spec.rows))
    yield from (opening.key for opening in openings if opening is not None)


def work_centres(room: Room) -> Mapping[CentreKind, tuple[WorkCentre, ...]]:
    """Those whose places are known: on surveyed walls, and in islands."""
    frames = wall_frames(room.survey)
    spots: dict[str, tuple[str, Spot]] = {}
    for each in footprints(room):
        if each.kind != "wall":
            (x0, y0), (x1, y1) = each.corners[-2:]  # those away from the wall
            spots.setdefault(each.key, (each.wall, ((x0 + x1) / 2, (y0 + y1) / 2)))
    spots.update(_in_islands(room, frames))
    return {
        kind: tuple(WorkCentre(path, title, *spots[path]) for path, title in own if path in spots)
        for kind, own in centre_keys(room).items()
    }


def _in_islands(
    room: Room, frames: Mapping[str, WallFrame]
) -> Iterator[tuple[str, tuple[str, Spot]]]:
    stands = {stand.key: stand for stand in room.free}
    for island in room.islands:
        stand = stands.get(island.key)
        if stand is None:
            continue
        case, runs = room.case_of(island), room.runs_of(island)
        behind = {each.key for run in runs[1:] for each in run.cases}
        behind |= {f"appliance.{each.spec.key}" for run in runs[1:] for each in run.appliances}
        boxes = [*island_boxes(case, runs)]
        boxes += [(f"appliance.{a.spec.key}", box) for a, box in island_openings(case, runs)]
        for path, box in boxes:
            middle = (Fraction(box.x0) + Fraction(box.x1)) / 2
            front = Fraction(box.z0 if path in behind else box.z1)
            yield path, (stand.wall, frames[stand.wall].at(*stand.at(middle, front)))
