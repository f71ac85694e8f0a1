"""What bears when a straight row of cases is pushed to a wall that is not flat: shims behind."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from casewright.dims import Dim
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.survey.walls import SurveyedWall

__all__ = ["Contact", "WallShim", "contact", "wall_shims"]


class _Hollow(NamedTuple):
    """A place behind a straight edge: along the wall, at its height, how far off [mm]."""

    along: Dim
    level: Dim
    off: Dim


@dataclass(frozen=True, slots=True)
class Contact:
    """The two places that a straight row bears on, left and right [mm along the wall]."""

    left: Fraction
    right: Fraction


@dataclass(frozen=True, slots=True)
class WallShim:
    """What fills the gap behind a row at one place.

    Parameters
    ----------
    run
        Key of the run it is behind.
    at
        From the wall's left end [mm].
    level
        Height of the straight edge that was read along [mm].
    shim
        0 where it bears [mm].
    """

    run: str
    at: Dim
    level: Dim
    shim: Dim

    @property
    def height(self) -> Fraction:
        """Of the straight edge [mm]."""
        return self.level.value


def contact(points: Sequence[tuple[Fraction, Fraction]], middle: Fraction) -> Contact:
    """Where a straight line bears that is pushed at its middle against a wall.

    It comes to rest on the two places, one on either side of its middle, that no other place
    stands out over: the edge of the convex hull under the push.

    Parameters
    ----------
    points
        Place along the wall and how far the wall lies back there [mm]; at least one.
    middle
        Where it is pushed [mm]: the middle of the row.

    Examples
    --------
    >>> contact([(0, 3), (10, 0), (20, 4), (30, 1)], 12)
    Contact(left=10, right=30)
    """
    hull: list[tuple[Fraction, Fraction]] = []
    for point in sorted(points):
        while len(hull) > 1 and _is_behind(hull[-2], hull[-1], point):
            hull.pop()
        if hull and hull[-1][0] == point[0]:
            continue
        hull.append(point)
    for left, right in pairwise(hull):
        if left[0] <= middle <= right[0]:
            return Contact(left[0], right[0])
    lone = hull[0] if middle < hull[0][0] else hull[-1]
    return Contact(lone[0], lone[0])


def _is_behind(
    one: tuple[Fraction, Fraction],
    two: tuple[Fraction, Fraction],
    three: tuple[Fraction, Fraction],
) -> bool:
    """Whether the second lies on or behind the line from the first to the third."""
    over = (three[0] - one[0]) * (two[1] - one[1])
    return over >= (three[1] - one[1]) * (two[0] - one[0])


def _ends(row: Iterable[WallPlace], height: Fraction) -> tuple[Fraction, Fraction] | None:
    """Left and right end of those cases of a row that reach a height [mm]; None: none does."""
    there = [each for each in row if each.bottom.value <= height <= each.top.value]
    if not there:
        return None
    return min(each.left.value for each in there), max(each.right.value for each in there)


def wall_shims(
    numbers: Numbers, wall: SurveyedWall, places: Iterable[WallPlace]
) -> tuple[WallShim, ...]:
    """Shims behind each row of cases, where the wall was read along a straight edge.

    One straight line for all cases of a run, so that their fronts stand in line; a reading counts
    for those that reach up to it.
    """
    own = numbers.wall(wall.spec.key)
    read = [
        _Hollow(
            wall.at[f"hollow_{n}.along"], wall.at[f"hollow_{n}.height"], wall.read[f"hollow_{n}"]
        )
        for n in range(1, len(wall.spec.hollows) + 1)
    ]
    spans: dict[str, list[WallPlace]] = {}
    for place in places:
        spans.setdefault(place.run.spec.key, []).append(place)
    found: list[WallShim] = []
    for key, row in spans.items():
        low, high = min(p.bottom.value for p in row), max(p.top.value for p in row)
        heights = sorted({each.level.value for each in read if low <= each.level.value <= high})
        for level, height in enumerate(heights, start=1):
            ends = _ends(row, height)
            if ends is None:
                continue
            left, right = ends
            here = {
                each.along.value: each for each in read
                if each.level.value == height and left <= each.along.value <= right
            }  # fmt: skip
            if len(here) < 2:
                continue
            line = contact([(x, each.off.value) for x, each in here.items()], (left + right) / 2)
            a, b = here[line.left].off, here[line.right].off
            for n, (x, each) in enumerate(sorted(here.items()), start=1):
                wide = line.right - line.left
                edge = a if not wide else a + (b - a) * ((x - line.left) / wide)
                shim = own.at(key).let(f"wall_shim_{level}_{n}", each.off - edge)
                at = own.at(key).let(f"wall_shim_at_{level}_{n}", each.along)
                found.append(WallShim(key, at, each.level, shim))
    return tuple(found)
