"""What bears when a straight row of cases is pushed to a wall that is not flat: shims behind."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from casewright.dims import Dim, Origin
from casewright.install.numbers import Numbers
from casewright.install.places import WallPlace
from casewright.survey.walls import SurveyedWall

__all__ = ["Contact", "WallShim", "contact", "wall_shims"]

_READ = Origin("chosen", "where the straight edge was read from")


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
    height
        Of the straight edge that was read along [mm].
    shim
        0 where it bears [mm].
    """

    run: str
    at: Dim
    height: Fraction
    shim: Dim


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
        (hollow.along, hollow.height, wall.read[f"hollow_{n}"])
        for n, hollow in enumerate(wall.spec.hollows, start=1)
    ]
    spans: dict[str, list[WallPlace]] = {}
    for place in places:
        spans.setdefault(place.run.spec.key, []).append(place)
    found: list[WallShim] = []
    for key, row in spans.items():
        low, high = min(p.bottom.value for p in row), max(p.top.value for p in row)
        heights = sorted({height for _, height, _ in read if low <= height <= high})
        for level, height in enumerate(heights, start=1):
            ends = _ends(row, height)
            if ends is None:
                continue
            left, right = ends
            here = {along: off for along, h, off in read if h == height and left <= along <= right}
            if len(here) < 2:
                continue
            line = contact([(x, off.value) for x, off in here.items()], (left + right) / 2)
            a, b = here[line.left], here[line.right]
            for n, (x, off) in enumerate(sorted(here.items()), start=1):
                wide = line.right - line.left
                edge = a if not wide else a + (b - a) * ((x - line.left) / wide)
                shim = own.at(key).let(f"wall_shim_{level}_{n}", off - edge)
                at = own.at(key).enter(f"wall_shim_at_{level}_{n}", x, _READ)
                found.append(WallShim(key, at, height, shim))
    return tuple(found)
