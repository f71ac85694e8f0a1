"""Parts as solids in whole units: finished box less its cuts, in case axes."""

from __future__ import annotations

from typing import NamedTuple

from casewright.casework.features import Cut, Plane
from casewright.casework.parts import Part
from casewright.casework.proof.units import Units
from casewright.geometry import Box, Direction, subtract
from casewright.geometry.box import Number

__all__ = ["PLANE_AXIS", "Patch", "Solid", "cut_box"]

PLANE_AXIS = {"l": 0, "w": 1, "t": 2}


class Patch(NamedTuple):
    """A plane surface in case axes.

    Parameters
    ----------
    facing
        The way its outside looks.
    at
        Where it lies on that axis [unit].
    wood
        Boxes of wood that end in it there: across that axis they are the rectangles that show.
    """

    facing: Direction
    at: Number
    wood: tuple[Box, ...]


def cut_box(cut: Cut, size: tuple[int, int, int], units: Units) -> Box:
    """What a cut takes out, in part axes [unit]; it may reach out of the part."""
    length, width, thickness = size
    if cut.edge is not None:
        return _edge_box(cut, size, units)
    along, across = (length, width) if cut.runs == "l" else (width, length)
    at, wide, deep = units.of(cut.at), units.of(cut.width), units.of(cut.depth)
    low = across - at - wide if cut.datum[1] == "1" else at
    start = 0 if cut.start is None else units.of(cut.start)
    end = along if cut.end is None else units.of(cut.end)
    t0, t1 = (thickness - deep, thickness) if cut.face == "A" else (0, deep)
    if cut.runs == "l":
        return Box(start, end, low, low + wide, t0, t1)
    return Box(low, low + wide, start, end, t0, t1)


def _edge_box(cut: Cut, size: tuple[int, int, int], units: Units) -> Box:
    """A cut into a long edge: its width lies across the thickness."""
    length, width, thickness = size
    at, wide, deep = units.of(cut.at), units.of(cut.width), units.of(cut.depth)
    start = 0 if cut.start is None else units.of(cut.start)
    end = length if cut.end is None else units.of(cut.end)
    low = thickness - at - wide if cut.datum == "t1" else at
    w0, w1 = (width - deep, width) if cut.edge == "w1" else (0, deep)
    return Box(start, end, w0, w1, low, low + wide)


class Solid:
    """One part in its place.

    Attributes
    ----------
    part
        The part.
    size
        Finished length, width, thickness [unit].
    outer
        Its box before any cut, in case axes.
    cuts
        What each square cut takes out by the cut's path, in part axes.
    wood
        What is left, as disjoint boxes in part axes: mitred ends and clipped corners as if they
        were square; nothing of what lies diagonally. Mitres and clips are checked by themselves.
    pieces
        The same in case axes.
    """

    __slots__ = ("_corner", "_map", "cuts", "outer", "part", "pieces", "size", "wood")

    def __init__(self, part: Part, units: Units) -> None:
        self.part = part
        size, placed = part.finished, part.placed
        of = units.of
        self.size = (of(size.length), of(size.width), of(size.thickness))
        self._corner = (of(placed.x), of(placed.y), of(placed.z))
        by_axis = sorted(
            (way.axis, 2 * own, way.sign) for own, way in enumerate(placed.orientation)
        )
        self._map = tuple((own, sign) for _, own, sign in by_axis)
        whole = Box(0, self.size[0], 0, self.size[1], 0, self.size[2])
        self.outer = self.box(whole)
        self.cuts = {f.path: cut_box(f, self.size, units) for f in part.features
                     if isinstance(f, Cut) and f.is_square}  # fmt: skip
        self.wood: tuple[Box, ...] = ()
        self.pieces: tuple[Box, ...] = ()
        if part.diagonal:
            return
        if self.cuts:
            self.wood = tuple(subtract(whole, (h for h in self.cuts.values() if not h.is_empty)))
            self.pieces = tuple(self.box(piece) for piece in self.wood)
        else:
            self.wood, self.pieces = (whole,), (self.outer,)

    def box(self, own: Box) -> Box:
        """A box of the part (x length, y width, z thickness) in case axes."""
        (a, sa), (b, sb), (c, sc) = self._map
        x, y, z = self._corner
        xs = (x + own[a], x + own[a + 1]) if sa > 0 else (x - own[a + 1], x - own[a])
        ys = (y + own[b], y + own[b + 1]) if sb > 0 else (y - own[b + 1], y - own[b])
        zs = (z + own[c], z + own[c + 1]) if sc > 0 else (z - own[c + 1], z - own[c])
        return Box(*xs, *ys, *zs)

    def point(self, own: tuple[int, int, int]) -> tuple[int, int, int]:
        """A point of the part in case axes."""
        (a, sa), (b, sb), (c, sc) = self._map
        x, y, z = self._corner
        return x + sa * own[a // 2], y + sb * own[b // 2], z + sc * own[c // 2]

    def way(self, plane: Plane) -> Direction:
        """The direction in case axes that a plane of the part looks."""
        way = self.part.placed.orientation[PLANE_AXIS[plane[0]]]
        return way if plane[1] == "1" else way.opposite

    def surface(self, plane: Plane) -> Patch:
        """A plane of the part."""
        facing = self.way(plane)
        axis = 2 * facing.axis
        at = self.outer[axis + 1] if facing.sign > 0 else self.outer[axis]
        return Patch(facing, at, self._showing(facing, at, None))

    def wall(self, cut: str, plane: Plane) -> Patch | None:
        """The wall of a cut on that side of it; None where the cut is open or unknown."""
        hollow = self.cuts.get(cut)
        if hollow is None:
            return None
        room = self.box(hollow)
        facing = self.way(plane).opposite
        axis = 2 * facing.axis
        at = room[axis] if facing.sign > 0 else room[axis + 1]
        if not self.outer[axis] < at < self.outer[axis + 1]:
            return None
        return Patch(facing, at, self._showing(facing, at, room))

    def _showing(self, facing: Direction, at: Number, room: Box | None) -> tuple[Box, ...]:
        side = 2 * facing.axis + (1 if facing.sign > 0 else 0)
        found = [piece for piece in self.pieces if piece[side] == at]
        if room is not None:
            found = [_clipped(piece, room, facing.axis) for piece in found]
            found = [piece for piece in found if not piece.is_empty]
        return tuple(found)


def _clipped(piece: Box, room: Box, axis: int) -> Box:
    """A piece cut back, across an axis, to what bounds a room."""
    limits = list(piece.common(room))
    limits[2 * axis], limits[2 * axis + 1] = piece[2 * axis], piece[2 * axis + 1]
    return Box(*limits)
