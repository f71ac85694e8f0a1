"""Where the boxes of an island stand in its own axes: those behind are turned half round."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.geometry import Box
from casewright.room.model import Appliance, Run

__all__ = [
    "IslandFrame",
    "island_boxes",
    "island_openings",
    "middle_plane",
    "part_span",
    "parts_in_island",
]


@dataclass(frozen=True, slots=True)
class IslandFrame:
    """Where the rows of an island begin [mm].

    Parameters
    ----------
    left, right
        Inner faces of its end panels.
    middle
        Plane z that the backs of its front row lie in.
    """

    left: Fraction
    right: Fraction
    middle: Fraction

    def turned(self, box: Box, start: Fraction, *, behind: bool) -> Box:
        """What lies so far along a row, in the island's axes: those behind are turned round."""
        low, high = start + box.x0, start + box.x1
        if behind:
            return Box(self.right - high, self.right - low, box.y0, box.y1,
                       self.middle - box.z1, self.middle - box.z0)  # fmt: skip
        return Box(self.left + low, self.left + high, box.y0, box.y1,
                   self.middle + box.z0, self.middle + box.z1)  # fmt: skip


def part_span(part: Part) -> Box:
    """What a part takes up in the axes of its case [mm]."""
    spans = [end.value for axis in (0, 1, 2) for end in extent(part, axis)]
    return Box(*spans)


def middle_plane(case: Case, runs: tuple[Run, ...]) -> Fraction:
    """Plane z that the backs of the boxes of its front lie in [mm]."""
    return case.depth.value - max(each.face_plane.value for each in runs[0].cases)


def parts_in_island(frame: IslandFrame, runs: tuple[Run, ...]) -> Iterator[tuple[Part, Box]]:
    """Every part of its boxes and of their ladders, in the island's axes."""
    for row, run in enumerate(runs):
        for case, start in zip(run.cases, run.starts, strict=True):
            own = start.value + case.left_frame.value
            for part in case.parts:
                yield part, frame.turned(part_span(part), own, behind=row > 0)
        for plinth in run.plinths:
            for part in plinth.case.parts:
                yield part, frame.turned(part_span(part), plinth.start.value, behind=row > 0)


def island_openings(case: Case, runs: tuple[Run, ...]) -> Iterator[tuple[Appliance, Box]]:
    """What stands between the boxes of an island, as deep and as high as these [mm].

    Parameters
    ----------
    case
        The island's panels and cleats.
    """
    frame, zero = _frame(case, runs), Fraction(0)
    for row, run in enumerate(runs):
        deep = max(each.face_plane.value for each in run.cases)
        for each in run.appliances:
            own = Box(zero, each.width.value, zero, case.height.value, zero, deep)
            yield each, frame.turned(own, each.start.value, behind=row > 0)


def _frame(case: Case, runs: tuple[Run, ...]) -> IslandFrame:
    ends = [part_span(part) for part in case.parts if part.role == "island end"]
    left, right = min(Fraction(box.x1) for box in ends), max(Fraction(box.x0) for box in ends)
    return IslandFrame(left, right, middle_plane(case, runs))


def island_boxes(case: Case, runs: tuple[Run, ...]) -> Iterator[tuple[str, Box]]:
    """Every box of its runs by its key, front first, each from its left [mm].

    Parameters
    ----------
    case
        The island's panels and cleats.
    """
    frame, zero = _frame(case, runs), Fraction(0)
    for row, run in enumerate(runs):
        for each, start in zip(run.cases, run.starts, strict=True):
            own = Box(zero, each.overall_width.value, zero, each.height.value,
                      zero, each.face_plane.value)  # fmt: skip
            yield each.key, frame.turned(own, start.value, behind=row > 0)
