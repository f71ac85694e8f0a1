"""Where the boxes of an island stand in its own axes: those behind are turned half round."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.parts import Part
from casewright.geometry import Box
from casewright.room.model import Run

__all__ = ["island_boxes", "middle_plane", "part_span"]


def part_span(part: Part) -> Box:
    """What a part takes up in the axes of its case [mm]."""
    spans = [end.value for axis in (0, 1, 2) for end in extent(part, axis)]
    return Box(*spans)


def middle_plane(case: Case, runs: tuple[Run, ...]) -> Fraction:
    """Plane z that the backs of the boxes of its front lie in [mm]."""
    return case.depth.value - max(each.face_plane.value for each in runs[0].cases)


def island_boxes(case: Case, runs: tuple[Run, ...]) -> Iterator[tuple[str, Box]]:
    """Every box of its runs by its key, front first, each from its left [mm].

    Parameters
    ----------
    case
        The island's panels and cleats.
    """
    ends = [part_span(part) for part in case.parts if part.role == "island end"]
    left, right = min(Fraction(box.x1) for box in ends), max(Fraction(box.x0) for box in ends)
    middle, zero = middle_plane(case, runs), Fraction(0)
    for row, run in enumerate(runs):
        for each, start in zip(run.cases, run.starts, strict=True):
            deep, high = each.face_plane.value, each.height.value
            low, far = start.value, start.value + each.overall_width.value
            if row == 0:
                box = Box(left + low, left + far, zero, high, middle, middle + deep)
            else:
                box = Box(right - far, right - low, zero, high, middle - deep, middle)
            yield each.key, box
