"""Where each surveyed wall stands in plan, joined to the next by its corner as read."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from casewright.survey.angles import angle_of
from casewright.survey.survey import Survey

__all__ = ["WallStand", "wall_stands"]

_USUAL, _APART = 3048.0, 900.0  # of a wall that was not read, between walls no corner joins [mm]


@dataclass(frozen=True, slots=True)
class WallStand:
    """A wall in plan: its left end, its direction, its length [mm of model]."""

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


def wall_stands(survey: Survey) -> Mapping[str, WallStand]:
    """Where each wall is: from one without a neighbour on its left, round by the corners."""
    right_of = {c.spec.left: c.spec.key for c in survey.corners.values()}
    has_left = {c.spec.right for c in survey.corners.values()}
    found: dict[str, WallStand] = {}
    begins = 0.0
    for first in sorted(survey.walls, key=lambda key: key in has_left):
        if first in found:
            continue
        x, y, turn, key = begins, 0.0, 0.0, first
        while key in survey.walls and key not in found:
            width = survey.walls[key].width
            stand = WallStand(x, y, turn, _USUAL if width is None else float(width.value))
            found[key] = stand
            x, y = stand.end
            if key not in right_of:
                break
            corner = survey.corners[right_of[key]]
            inner = 90.0 if corner.cosine is None else angle_of(corner.cosine).degrees
            turn += math.radians(180.0 - inner) * (1 if corner.spec.outside else -1)
            key = corner.spec.right
        begins = max(max(s.x, s.end[0]) for s in found.values()) + _APART
    return found
