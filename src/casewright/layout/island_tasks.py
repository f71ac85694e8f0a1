"""What is to be laid out in the middle of a room, in whole steps of the shop's grid."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

__all__ = ["WAYS", "IslandAnswer", "IslandPose", "IslandRow", "IslandTask", "TakenFloor", "Way"]

Way = Literal["near", "far", "left", "right"]
"""Of a rectangle seen from its wall: toward it, away from it, to either hand."""
WAYS: tuple[Way, ...] = ("near", "far", "left", "right")


@dataclass(frozen=True, slots=True)
class TakenFloor:
    """A rectangle that an island keeps clear of, along a wall and out from it [steps].

    Parameters
    ----------
    works
        Whether one works at it: then more is asked for before a side with fronts.
    swept
        Whether nothing stands there, and the leaf of a door comes by: then no aisle is asked for.
    """

    key: str
    left: int
    right: int
    near: int
    far: int
    works: bool = False
    swept: bool = False


@dataclass(frozen=True, slots=True)
class IslandRow:
    """A row of boxes: some of given width, the others all alike.

    Parameters
    ----------
    given
        What those of given width take [steps].
    free
        How many have none [-].
    low, high
        Least and greatest width of each of these [steps].
    """

    given: int
    free: int
    low: int
    high: int


@dataclass(frozen=True, slots=True)
class IslandPose:
    """One way round that an island may stand.

    Parameters
    ----------
    side
        Which of its sides looks to the wall: the front, the back, an end.
    clear
        What is asked for before each side, where one works across and elsewhere [steps].
    """

    side: Literal["front", "back", "left", "right"]
    clear: Mapping[Way, tuple[int, int]]

    @property
    def is_turned(self) -> bool:
        """Whether its length runs out from the wall."""
        return self.side in ("left", "right")


@dataclass(frozen=True, slots=True)
class IslandTask:
    """An island to be placed and sized.

    Parameters
    ----------
    poses
        Ways round to be tried, the wished one first.
    rows
        One, or two that are as long as each other.
    length
        Least and greatest of what its boxes take [steps].
    more
        What end panels and counter add to that [steps].
    depth
        From counter edge to counter edge [steps].
    base
        Of what it is measured from: how far that reaches out from the wall [steps].
    from_key
        Key of what it is measured from.
    off
        Least and greatest aisle up to that [steps]; None: as is asked for.
    along
        Its left edge, where that is settled [steps].
    reach
        As far along and out as it may reach [steps].
    centre
        What its middle is to stand before [half steps]; None: nothing.
    """

    poses: tuple[IslandPose, ...]
    obstacles: tuple[TakenFloor, ...]
    rows: tuple[IslandRow, ...]
    length: tuple[int, int]
    more: int
    depth: int
    base: int
    from_key: str
    off: tuple[int, int] | None
    along: int | None
    reach: tuple[int, int]
    centre: int | None = None

    @property
    def boxes_band(self) -> tuple[int, int]:
        """The least and the most that its boxes can take, whatever length is asked for."""
        least = max(row.given + row.free * row.low for row in self.rows)
        return least, min(row.given + row.free * row.high for row in self.rows)

    def wanted(self, pose: IslandPose, obstacle: TakenFloor, way: Way) -> int:
        """What is asked for between a side and an obstacle before it [steps].

        Where a least aisle is told, that counts toward what the island is measured from, and what
        reaches no farther out; another way round than the wished one keeps to what is asked for
        as well.
        """
        if obstacle.swept:
            return 0
        works, else_ = pose.clear[way]
        asked = works if obstacle.works else else_
        behind = obstacle.near <= 0 and obstacle.far <= self.base
        if way == "near" and self.off is not None and behind:
            told = self.off[0] + self.base - obstacle.far
            return told if pose is self.poses[0] else max(told, asked)
        return asked


@dataclass(frozen=True, slots=True)
class IslandAnswer:
    """An island in its place.

    Parameters
    ----------
    left, near
        Its counter's edges, along the wall and out from it [steps].
    boxes
        What its boxes take [steps].
    shares
        Width of each free case of each row [steps].
    cost, bound
        What it costs, and what none costs less than; 0 where that is not known [points].
    short
        What each side lacks of what is asked for; empty where nothing does [steps].
    """

    task: IslandTask
    pose: IslandPose
    left: int
    near: int
    boxes: int
    shares: tuple[int, ...]
    cost: int
    bound: int
    short: tuple[tuple[Way, int], ...] = ()

    @property
    def size(self) -> tuple[int, int]:
        """Along the wall, and out from it [steps]."""
        long = self.boxes + self.task.more
        return (self.task.depth, long) if self.pose.is_turned else (long, self.task.depth)

    @property
    def off_centre(self) -> int:
        """How far its middle stands right of what it is to stand before [half steps]."""
        centre = self.task.centre
        return 0 if centre is None else 2 * self.left + self.size[0] - centre

    def gaps(self) -> dict[Way, tuple[int, TakenFloor]]:
        """The nearest obstacle before each side, and how far it is [steps]."""
        wide, deep = self.size
        right, far = self.left + wide, self.near + deep
        found: dict[Way, tuple[int, TakenFloor]] = {}
        for each in self.task.obstacles:
            if each.swept:
                continue
            along = each.left < right and self.left < each.right
            out = each.near < far and self.near < each.far
            ways: tuple[tuple[Way, bool, int], ...] = (
                ("near", along and each.far <= self.near, self.near - each.far),
                ("far", along and each.near >= far, each.near - far),
                ("left", out and each.right <= self.left, self.left - each.right),
                ("right", out and each.left >= right, each.left - right),
            )
            for way, faces, gap in ways:
                if faces and (way not in found or gap < found[way][0]):
                    found[way] = (gap, each)
        return found
