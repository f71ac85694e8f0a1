"""Placements: how a part's own axes lie in its case's axes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from casewright.geometry.box import Box, Number

__all__ = ["AXES", "Direction", "Orientation", "Placement"]

AXES = ("x", "y", "z")


class Direction(NamedTuple):
    """One of six directions: axis 0, 1 or 2 (x, y, z) and sign 1 or -1."""

    axis: int
    sign: int

    @classmethod
    def of(cls, text: str) -> Direction:
        """Direction from text like '+x' or '-z'."""
        return cls(AXES.index(text[1]), 1 if text[0] == "+" else -1)

    @property
    def opposite(self) -> Direction:
        """The direction the other way."""
        return Direction(self.axis, -self.sign)

    def __str__(self) -> str:
        return f"{'+' if self.sign > 0 else '-'}{AXES[self.axis]}"


class Orientation(NamedTuple):
    """Where a part's length, width and thickness point, each along one case axis."""

    length: Direction
    width: Direction
    thickness: Direction

    @classmethod
    def of(cls, text: str) -> Orientation:
        """Orientation from text like '+y +z +x'."""
        length, width, thickness = (Direction.of(word) for word in text.split())
        return cls(length, width, thickness)

    @property
    def hand(self) -> Literal[1, -1]:
        """1 when the three directions form a right-handed frame, -1 when mirrored."""
        a, b, c = (d.axis for d in self)
        even = (a, b, c) in ((0, 1, 2), (1, 2, 0), (2, 0, 1))
        sign = self[0].sign * self[1].sign * self[2].sign
        return 1 if (sign > 0) == even else -1


@dataclass(frozen=True, slots=True)
class Placement:
    """A part's corner (length 0, width 0, thickness 0) and the way its axes point."""

    corner: tuple[Number, Number, Number]
    orientation: Orientation

    def point(self, length: Number, width: Number, thickness: Number) -> tuple[Number, ...]:
        """A point of the part in case axes."""
        result: list[Number] = list(self.corner)
        for direction, value in zip(self.orientation, (length, width, thickness), strict=True):
            result[direction.axis] += direction.sign * value
        return tuple(result)

    def box(self, part_box: Box) -> Box:
        """A box of the part (x length, y width, z thickness) in case axes."""
        low = self.point(part_box.x0, part_box.y0, part_box.z0)
        high = self.point(part_box.x1, part_box.y1, part_box.z1)
        (ax, bx), (ay, by), (az, bz) = ((min(p), max(p)) for p in zip(low, high, strict=True))
        return Box(ax, bx, ay, by, az, bz)
