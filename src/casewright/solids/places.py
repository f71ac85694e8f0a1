"""Where parts lie in their case and cases in the room, as matrices [mm]."""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.room.free_stand import FreeStand
from casewright.room.island_places import middle_plane
from casewright.room.model import Island, Room, Run
from casewright.room.wall_stands import wall_stands

__all__ = ["Matrix", "case_places", "island_places", "moved_by", "part_place", "standing"]

Matrix: TypeAlias = npt.NDArray[np.float64]
_ISLAND_OUT = 1200.0  # from what stands beside the walls to an island without a place [mm]
_BETWEEN = 300.0  # runs that stand on no wall, and cases in no run [mm]


def moved_by(x: float, y: float, z: float) -> Matrix:
    """A move, of shape (4, 4)."""
    matrix: Matrix = np.eye(4)
    matrix[:3, 3] = (x, y, z)
    return matrix


def part_place(part: Part, of: Case | Run | None) -> Matrix:
    """From a part's own axes into those of its case: x right, y up, z into the room.

    Parameters
    ----------
    of
        What it belongs to; of a run the axes are alike, but across a diagonal corner at its end.
    """
    placed = part.placed
    matrix: Matrix = np.zeros((4, 4))
    for own, direction in enumerate(placed.orientation):
        matrix[direction.axis, own] = direction.sign
    matrix[:, 3] = [float(placed.x.value), float(placed.y.value), float(placed.z.value), 1.0]
    if not part.turned:
        return matrix
    if isinstance(of, Run):
        at = 0 if part.path.endswith(".left_across") else -1
        begins = moved_by(float(of.starts[at].value), 0.0, 0.0)
        return begins @ _mouth(of.cases[at]) @ matrix
    return matrix if of is None else _mouth(of) @ matrix


def _mouth(case: Case) -> Matrix:
    """From the axes of a diagonal mouth into those of its case."""
    mouth = case.mouth
    if mouth is None:
        return np.eye(4)
    half = math.sqrt(0.5)
    reach, front = float(mouth.reach.value), float(mouth.front.value)
    turn = np.eye(4)
    sign = 1.0 if mouth.corner == "left" else -1.0
    turn[0, 0], turn[0, 2], turn[2, 0], turn[2, 2] = half, sign * half, -sign * half, half
    x = reach / 2 if sign > 0 else float(case.width.value) - reach / 2
    back = moved_by(-float(mouth.width.value) / 2, 0.0, -front)
    matrix: Matrix = moved_by(x, 0.0, reach / 2) @ turn @ back
    return matrix


def case_places(room: Room) -> Iterator[tuple[Case | Run, Matrix]]:
    """Every case, and every run for what belongs to it alone, with its place in the room.

    Walls stand as they were read; runs on none stand side by side, as do cases in no run.
    """
    stands = wall_stands(room.survey)
    beside = max((max(s.x, s.end[0]) for s in stands.values()), default=0.0)
    beside += _BETWEEN if stands else 0.0
    placed, in_islands = set[str](), set[str]()
    for thing, matrix in (*_free(room), *_placeless(room, beside)):
        if isinstance(thing, Case):
            placed.add(thing.key)
        else:
            in_islands.add(thing.spec.key)
        yield thing, matrix
    for run in room.runs:
        if run.spec.key in in_islands:
            continue
        wall, stand = room.survey.walls.get(run.spec.on), stands.get(run.spec.on)
        if wall is None or stand is None:
            frame = moved_by(beside, 0.0, 0.0)
            beside += float(run.length.value) + _BETWEEN
        else:
            begins = moved_by(float(run.begins.value), 0.0, 0.0)
            frame = standing(stand.x, stand.y, stand.turn) @ begins
        yield run, frame
        for case, matrix in _in_run(room, run):
            placed.add(case.key)
            yield case, frame @ matrix
    for case in room.boxes:
        if case.key not in placed:
            yield case, moved_by(beside, _lift(room, case), 0.0)
            beside += float(case.overall_width.value) + _BETWEEN


def _free(room: Room) -> Iterator[tuple[Case | Run, Matrix]]:
    """Islands and loose cases that have a place on the floor, with what belongs to them."""
    stands = wall_stands(room.survey)
    by_key = {each.key: each for each in room.free}
    cases = {case.key: case for case in room.cases}
    for stand in room.free:
        wall = stands[stand.wall]
        frame = standing(wall.x, wall.y, wall.turn) @ _turned(stand)
        yield cases[stand.key], frame
    for island in room.islands:
        stand_of = by_key.get(island.key)
        if stand_of is None:
            continue
        wall = stands[stand_of.wall]
        frame = standing(wall.x, wall.y, wall.turn) @ _turned(stand_of)
        for thing, matrix in island_places(room, island):
            yield thing, frame @ matrix


def _placeless(room: Room, beside: float) -> Iterator[tuple[Case | Run, Matrix]]:
    """Islands that have no place on the floor yet, one before the other."""
    on_floor = {each.key for each in room.free}
    before = 0.0
    for island in room.islands:
        if island.key in on_floor:
            continue
        frame = moved_by(beside, 0.0, before + _ISLAND_OUT)
        body = room.case_of(island)
        before += float(body.depth.value) + _ISLAND_OUT
        yield body, frame
        for thing, matrix in island_places(room, island):
            yield thing, frame @ matrix


def island_places(room: Room, island: Island) -> Iterator[tuple[Case | Run, Matrix]]:
    """The runs of an island and their cases, in the axes of its body."""
    body, runs = room.case_of(island), room.runs_of(island)
    end = (float(body.width.value) - float(runs[0].cases_end.value)) / 2
    middle = float(middle_plane(body, runs))
    for number, run in enumerate(runs):
        place = moved_by(end, 0.0, middle)
        if number:  # behind, turned half round: its left is the island's right
            half = np.diag([-1.0, 1.0, -1.0, 1.0])
            place = moved_by(float(body.width.value) - end, 0.0, middle) @ half
        yield run, place
        for case, matrix in _in_run(room, run):
            yield case, place @ matrix


def _turned(stand: FreeStand) -> Matrix:
    """From a thing's own axes into those of the wall that it is measured from."""
    zero, one = Fraction(0), Fraction(1)
    (x0, z0), (x1, z1), (x2, z2) = (
        (float(u), float(v)) for u, v in (stand.at(zero, zero), stand.at(one, zero),
                                          stand.at(zero, one))
    )  # fmt: skip
    matrix: Matrix = np.eye(4)
    matrix[0, 0], matrix[2, 0] = x1 - x0, z1 - z0
    matrix[0, 2], matrix[2, 2] = x2 - x0, z2 - z0
    matrix[0, 3], matrix[2, 3] = x0, z0
    return matrix


def _in_run(room: Room, run: Run) -> Iterator[tuple[Case, Matrix]]:
    for plinth in run.plinths:
        yield plinth.case, moved_by(float(plinth.start.value), 0.0, 0.0)
    for case, start in zip(run.cases, run.starts, strict=True):
        along = float(start.value + case.left_frame.value)
        yield case, moved_by(along, _lift(room, case), 0.0)


def _lift(room: Room, case: Case) -> float:
    return float(room.wall_bottom.value) if case.spec.is_hung else 0.0


def standing(x: float, y: float, turn: float) -> Matrix:
    """From a wall's own axes into the room's: y up, its left end and its turn as in plan."""
    matrix: Matrix = np.eye(4)
    cos, sin = math.cos(turn), math.sin(turn)
    matrix[0, 0], matrix[0, 2], matrix[0, 3] = cos, sin, x
    matrix[2, 0], matrix[2, 2], matrix[2, 3] = -sin, cos, -y
    return matrix
