"""Numbers of the floor on a chain: aisles, diagonals, distances from other walls, seams.

Nothing is built from them: they are read off with a tape, and each says why it is what it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.dims import TAPE_MARK, Chain, Dim, Place, Way, root
from casewright.room.aisles import Aisle, aisles
from casewright.room.floor_across import FLOOR, FloorNumbers
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room, Run
from casewright.room.wall_stands import joined_walls

__all__ = [
    "FLOOR",
    "aisle_path",
    "cleat_paths",
    "corner_path",
    "diagonal_path",
    "floor_numbers",
    "other_walls",
    "seam_path",
]

_EDGES = ("left", "right", "near", "far")


def aisle_path(room: Room, aisle: Aisle) -> str:
    """Where the width of an aisle stands: where the job file sets it, if it does."""
    off = f"{aisle.stand.key}.place.off"
    if aisle.way == "near" and room.chain.nodes[off].value == aisle.clear:
        return off
    return f"{FLOOR}.{aisle.stand.key}.aisle_{aisle.way}"


def diagonal_path(stand: FreeStand, *, counter: bool) -> str:
    """Where the diagonal of a body stands, or of its counter."""
    return f"{FLOOR}.{stand.key}.{'counter_' if counter else ''}diagonal"


def corner_path(stand: FreeStand, wall: str, corner: int) -> str:
    """Where stands how far out from another wall a corner of a body lies."""
    return f"{FLOOR}.{stand.key}.from_{wall}.corner_{corner + 1}"


def cleat_paths(cleat: Part) -> tuple[str, str, str, str]:
    """Where the edges of a floor cleat stand: left and right along the wall, near and far out."""
    left, right, near, far = (f"{FLOOR}.{cleat.path}.{name}" for name in _EDGES)
    return left, right, near, far


def seam_path(island: str, case: str) -> str:
    """Where the left side of a box of an island's front stands, from the island's left end."""
    return f"{FLOOR}.{island}.seam_{case}"


def floor_numbers(room: Room, chain: Chain) -> None:
    """Enter them all on a chain that holds the room's own."""
    numbers = _Numbers(room, chain, FloorNumbers(room, chain))
    for stand in room.free:
        numbers.diagonals(stand)
        for key in other_walls(room, stand):
            numbers.corners(stand, key)
        for part in next(case.parts for case in room.cases if case.key == stand.key):
            if part.role == "floor cleat":
                numbers.cleat(stand, part)
    for aisle in aisles(room):
        numbers.aisle(aisle)
    for island in room.islands:
        numbers.seams(room.case_of(island), room.runs_of(island))


def other_walls(room: Room, stand: FreeStand) -> Iterator[str]:
    """Keys of the walls that meet the one it is measured from in an inside corner."""
    known = joined_walls(room.survey, stand.wall)
    for corner in room.survey.corners.values():
        pair = (corner.spec.left, corner.spec.right)
        if stand.wall in pair and not corner.spec.outside:
            other = pair[0] if pair[1] == stand.wall else pair[1]
            if other in known:
                yield other


@dataclass(frozen=True, slots=True)
class _Numbers:
    """Enters them, each by the numbers of the room that it follows."""

    room: Room
    chain: Chain
    across: FloorNumbers

    def place(self, key: str) -> Place:
        """Where the numbers of what stands free are named."""
        return self.chain.place(FLOOR).at(key)

    def diagonals(self, stand: FreeStand) -> None:
        """Of its body and of its counter."""
        own = self.place(stand.key)
        body = (stand.left, stand.right, stand.near, stand.far)
        for name, edges in (("diagonal", body), ("counter_diagonal", stand.counter)):
            left, right, near, far = edges
            wide, deep = right - left, far - near
            self._on_tape(own, name, root(wide * wide + deep * deep))

    def corners(self, stand: FreeStand, wall: str) -> None:
        """How far out from another wall the corners of its body lie, to a mark of the tape."""
        own = self.place(stand.key).at(f"from_{wall}")
        spots = ((stand.left, stand.near), (stand.right, stand.near),
                 (stand.right, stand.far), (stand.left, stand.far))  # fmt: skip
        for number, spot in enumerate(spots, start=1):
            out = self.across.seen(wall, "out", stand.wall, spot)
            self._on_tape(own, f"corner_{number}", out)

    def aisle(self, aisle: Aisle) -> None:
        """From the counter to what is across, where that comes nearest."""
        stand, way = aisle.stand, aisle.way
        own = self.place(stand.key)
        left, right, near, far = stand.counter
        here = {"near": near, "far": far, "left": left, "right": right}[way]
        there = own.let(f"across_{way}", self.across.nearest(aisle))
        own.let(f"aisle_{way}", here - there if way in ("near", "left") else there - here)

    def cleat(self, stand: FreeStand, part: Part) -> None:
        """Edges of a cleat on the floor, by the wall that its island is measured from."""
        (x0, x1), (z0, z1) = extent(part, 0), extent(part, 2)
        left, right, near, far = {
            "front": (stand.right - x1, stand.right - x0, stand.far - z1, stand.far - z0),
            "back": (stand.left + x0, stand.left + x1, stand.near + z0, stand.near + z1),
            "left": (stand.right - z1, stand.right - z0, stand.near + x0, stand.near + x1),
            "right": (stand.left + z0, stand.left + z1, stand.far - x1, stand.far - x0),
        }[stand.side]
        for name, edge in zip(_EDGES, (left, right, near, far), strict=True):
            self.chain.place(FLOOR).at(part.path).let(name, edge)

    def seams(self, body: Case, runs: tuple[Run, ...]) -> None:
        """Left sides of the boxes of its front, from the outside of its left end."""
        ends = (extent(part, 0)[1] for part in body.parts if part.role == "island end")
        inner = min(ends, key=lambda edge: edge.value)
        for case, start in zip(runs[0].cases, runs[0].starts, strict=True):
            self.place(body.key).let(f"seam_{case.key}", inner + start)

    def _on_tape(self, place: Place, name: str, size: Dim) -> None:
        """What is worked out from angles is not known more closely than a tape shows."""
        exact = place.let(f"{name}_exact", size)
        place.rounded(name, exact, TAPE_MARK[self.room.spec.unit], Way.NEAREST)
