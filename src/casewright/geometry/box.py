"""Axis-parallel boxes with exact corners, in integers or rationals."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import NamedTuple

__all__ = ["Box", "Number", "subtract", "volume"]

Number = int | Fraction


class Box(NamedTuple):
    """A box from low to high corner; empty when any high is not over its low."""

    x0: Number
    x1: Number
    y0: Number
    y1: Number
    z0: Number
    z1: Number

    @property
    def is_empty(self) -> bool:
        """Whether it encloses no volume."""
        return self.x1 <= self.x0 or self.y1 <= self.y0 or self.z1 <= self.z0

    def meets(self, other: Box) -> bool:
        """Whether the two share volume (touching is not sharing)."""
        return (
            self.x0 < other.x1
            and other.x0 < self.x1
            and self.y0 < other.y1
            and other.y0 < self.y1
            and self.z0 < other.z1
            and other.z0 < self.z1
        )

    def common(self, other: Box) -> Box:
        """The shared box, possibly empty."""
        return Box(
            max(self.x0, other.x0),
            min(self.x1, other.x1),
            max(self.y0, other.y0),
            min(self.y1, other.y1),
            max(self.z0, other.z0),
            min(self.z1, other.z1),
        )


def _without(box: Box, hole: Box) -> list[Box]:
    """What is left of a box, as up to six disjoint boxes."""
    if not box.meets(hole):
        return [box]
    x0, x1, y0, y1, z0, z1 = box
    left = []
    if x0 < hole.x0:
        left.append(Box(x0, hole.x0, y0, y1, z0, z1))
        x0 = hole.x0
    if hole.x1 < x1:
        left.append(Box(hole.x1, x1, y0, y1, z0, z1))
        x1 = hole.x1
    if y0 < hole.y0:
        left.append(Box(x0, x1, y0, hole.y0, z0, z1))
        y0 = hole.y0
    if hole.y1 < y1:
        left.append(Box(x0, x1, hole.y1, y1, z0, z1))
        y1 = hole.y1
    if z0 < hole.z0:
        left.append(Box(x0, x1, y0, y1, z0, hole.z0))
    if hole.z1 < z1:
        left.append(Box(x0, x1, y0, y1, hole.z1, z1))
    return left


def subtract(box: Box, holes: Iterable[Box]) -> list[Box]:
    """What is left of a box after taking holes out, as disjoint boxes."""
    left = [] if box.is_empty else [box]
    for hole in holes:
        left = [piece for part in left for piece in _without(part, hole)]
        if not left:
            break
    return left


def volume(boxes: Iterable[Box]) -> Number:
    """Sum of the volumes of disjoint boxes [unit cubed]."""
    return sum(((b.x1 - b.x0) * (b.y1 - b.y0) * (b.z1 - b.z0) for b in boxes), 0)
