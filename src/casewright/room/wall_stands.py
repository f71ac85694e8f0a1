"""Where each surveyed wall stands in plan, joined to the next by its corner as read."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.survey.survey import Survey

__all__ = ["Spot", "WallFrame", "WallStand", "joined_walls", "wall_frames", "wall_stands"]

_USUAL = Fraction(3048)  # of a wall that was not read [mm]
_APART = Fraction(900)  # between walls no corner joins [mm]
_FINE = 10**12  # parts that a sine is known to

Spot = tuple[Fraction, Fraction]
"""A place in plan: to the right, and up the paper [mm]."""


@dataclass(frozen=True, slots=True)
class WallFrame:
    """A wall in plan: its left end, its direction, its length [mm], all of them rational.

    Exact in square corners; elsewhere a sine is rounded to twelve places.

    Parameters
    ----------
    cos, sin
        Of its direction from its left end [-].
    """

    x: Fraction
    y: Fraction
    cos: Fraction
    sin: Fraction
    length: Fraction

    def at(self, along: Fraction, out: Fraction) -> Spot:
        """A place so far along the wall and so far out into the room."""
        return (
            self.x + along * self.cos + out * self.sin,
            self.y + along * self.sin - out * self.cos,
        )

    def seen(self, spot: Spot) -> Spot:
        """How far along the wall and how far out from it a place is."""
        dx, dy = spot[0] - self.x, spot[1] - self.y
        scale = self.cos * self.cos + self.sin * self.sin
        return (dx * self.cos + dy * self.sin) / scale, (dx * self.sin - dy * self.cos) / scale


@dataclass(frozen=True, slots=True)
class WallStand:
    """A wall in plan: its left end, its direction, its length [mm of model], for drawings."""

    x: float
    y: float
    turn: float
    length: float

    def at(self, along: float, out: float) -> tuple[float, float]:
        """A place so far along the wall and so far out into the room."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return (self.x + along * cos + out * sin, self.y + along * sin - out * cos)

    @property
    def end(self) -> tuple[float, float]:
        """Its right end."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        return self.x + self.length * cos, self.y + self.length * sin


def wall_frames(survey: Survey) -> Mapping[str, WallFrame]:
    """Where each wall is: from one without a neighbour on its left, round by the corners."""
    right_of = {c.spec.left: c.spec.key for c in survey.corners.values()}
    has_left = {c.spec.right for c in survey.corners.values()}
    found: dict[str, WallFrame] = {}
    begins = Fraction(0)
    for first in sorted(survey.walls, key=lambda key: key in has_left):
        if first in found:
            continue
        x, y, key = begins, Fraction(0), first
        cos, sin = Fraction(1), Fraction(0)
        while key in survey.walls and key not in found:
            width = survey.walls[key].width
            frame = WallFrame(x, y, cos, sin, _USUAL if width is None else width.value)
            found[key] = frame
            x, y = frame.at(frame.length, Fraction(0))
            if key not in right_of:
                break
            corner = survey.corners[right_of[key]]
            inner = Fraction(0) if corner.cosine is None else corner.cosine.value
            turn = _sine(inner) * (1 if corner.spec.outside else -1)
            cos, sin = -inner * cos - turn * sin, turn * cos - inner * sin
            key = corner.spec.right
        ends = (frame.at(frame.length, Fraction(0))[0] for frame in found.values())
        begins = max(*(frame.x for frame in found.values()), *ends) + _APART
    return found


def joined_walls(survey: Survey, key: str) -> frozenset[str]:
    """Walls whose place to one wall is known: joined to it by corners, through walls with a width.

    The others are drawn apart, and nothing is measured to them.
    """
    known = {each for each, wall in survey.walls.items() if wall.width is not None}
    found, left = {key}, [key] if key in known else []
    while left:
        here = left.pop()
        for corner in survey.corners.values():
            pair = (corner.spec.left, corner.spec.right)
            for other in pair if here in pair else ():
                if other in known and other not in found:
                    found.add(other)
                    left.append(other)
    return frozenset(found)


def _sine(cosine: Fraction) -> Fraction:
    """Of an angle between 0 and 180 degrees [-], to twelve places; 1 where it is square."""
    square = max(1 - cosine * cosine, Fraction(0))
    return Fraction(math.isqrt(int(square * _FINE * _FINE)), _FINE)


def wall_stands(survey: Survey) -> Mapping[str, WallStand]:
    """The same for drawings."""
    return {
        key: WallStand(
            float(frame.x), float(frame.y),
            math.atan2(float(frame.sin), float(frame.cos)), float(frame.length),
        )
        for key, frame in wall_frames(survey).items()
    }  # fmt: skip
