"""Floor and walls of the room behind what stands in it: without thickness, for the eye alone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise

import numpy as np

from casewright.room.model import Room
from casewright.room.wall_stands import WallStand, wall_stands
from casewright.solids.glb import Node
from casewright.solids.part_solid import Mesh
from casewright.solids.places import moved_by, standing
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.walls import SurveyedWall

__all__ = ["shell_nodes"]

_HIGH = 2440.0
"""Of a wall whose ceiling was not read [mm]."""

_OUT = 1500.0
"""How far the floor reaches out from each wall at least [mm]."""

_UNDER = -2.0
"""Of the floor, so that what stands on it is not drawn into it [mm]."""

_OPENINGS = ("window", "door")

_Box = tuple[float, float, float, float]
"""Left, right, lower and upper edge [mm]."""


def shell_nodes(room: Room, meshes: list[Mesh]) -> Iterator[Node]:
    """Every surveyed wall without its windows and doors, and one floor.

    Each is seen from within the room only, and says which `shell` it is: "wall" or "floor".
    Walls stand plumb on a level floor: what the survey read of either is not shown.

    Parameters
    ----------
    meshes
        Theirs are added to it.
    """
    stands = wall_stands(room.survey)
    for key, stand in stands.items():
        wall = room.survey.walls[key]
        meshes.append(_wall(wall, stand))
        says = {"shell": "wall", "title": wall.spec.title}
        place = standing(stand.x, stand.y, stand.turn)
        yield Node(f"shell.{key}", place, len(meshes) - 1, says)
    if stands:
        meshes.append(_floor(stands.values()))
        place = moved_by(0.0, _UNDER, 0.0)
        yield Node("shell.floor", place, len(meshes) - 1, {"shell": "floor", "title": "floor"})


def _wall(wall: SurveyedWall, stand: WallStand) -> Mesh:
    high = _HIGH if wall.clear is None else float(wall.clear.value)
    holes = [box for thing in wall.things if (box := _opening(thing)) is not None]
    xs = sorted(
        {0.0, stand.length, *(x for box in holes for x in box[:2] if 0 < x < stand.length)}
    )
    ys = sorted({0.0, high, *(y for box in holes for y in box[2:] if 0 < y < high)})
    cells = [
        (left, right, low, top)
        for left, right in pairwise(xs)
        for low, top in pairwise(ys)
        if not any(_is_in(((left + right) / 2, (low + top) / 2), hole) for hole in holes)
    ]
    return _mesh([[(x, y, 0.0) for x, y in _round(cell)] for cell in cells])


def _opening(thing: PlacedThing) -> _Box | None:
    """None for what is no opening, or was not read."""
    edges = (thing.left, thing.right, thing.bottom, thing.top)
    known = [float(edge.value) for edge in edges if edge is not None]
    if thing.spec.kind not in _OPENINGS or len(known) < len(edges):
        return None
    left, right, low, top = known
    return left, right, low, top


def _is_in(spot: tuple[float, float], hole: _Box) -> bool:
    return hole[0] < spot[0] < hole[1] and hole[2] < spot[1] < hole[3]


def _floor(stands: Iterable[WallStand]) -> Mesh:
    """A rectangle under all walls and what stands before them; plan goes up, z comes forward."""
    spots = [
        stand.at(along, out) for stand in stands for along in (0.0, stand.length)
        for out in (0.0, _OUT)
    ]  # fmt: skip
    xs, zs = [x for x, _ in spots], [-y for _, y in spots]
    left, right, back, front = min(xs), max(xs), min(zs), max(zs)
    corners = ((left, front), (right, front), (right, back), (left, back))
    return _mesh([[(x, 0.0, z) for x, z in corners]])


def _round(box: _Box) -> Iterator[tuple[float, float]]:
    """Corners, counter-clockwise."""
    left, right, low, top = box
    yield from ((left, low), (right, low), (right, top), (left, top))


def _mesh(quads: list[list[tuple[float, float, float]]]) -> Mesh:
    points = np.array([point for quad in quads for point in quad], dtype=np.float32)
    corners = [
        corner for n in range(0, 4 * len(quads), 4)
        for corner in ((n, n + 1, n + 2), (n, n + 2, n + 3))
    ]  # fmt: skip
    return Mesh(points.reshape(-1, 3), np.array(corners, dtype=np.uint32).reshape(-1, 3))
