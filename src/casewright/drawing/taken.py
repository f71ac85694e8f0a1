"""Which paper is already taken, and what it would cost to draw something over it."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Generic, TypeVar

from casewright.drawing.marks import ArcMark, Area, Group, PaperPoint, Stroke, Word
from casewright.drawing.pens import Ink

__all__ = [
    "Grid",
    "Segment",
    "Taken",
    "bodies",
    "box",
    "figures",
    "inside",
    "lines",
    "overlap",
    "overlaps",
]

_NO_DESCENDER = frozenset("0123456789ABCDEFGHIJKLMNOPRSTUVWXYZabcdefhiklmnorstuvwxz~-+. ×Ø'\"")
_AIR = 0.35  # paper left free round lettering [mm]
_PAST = 0.2  # between a line and what it passes [mm]
_ROUND = 3.0  # largest radius of a circle that counts as a whole, not as a line [mm]
_OVER_BODY = 10.0  # cost of a square millimetre over something that must be read
_THROUGH_BODY = 4.0  # cost of a millimetre of line through it
_OVER_LINE = 1.0  # cost of a millimetre of line under lettering
_POINTING = ("balloon", "leader")  # whose lines may begin in what they point at
_CELL = 12.0  # of the grid in which marks are looked up [mm]
_TOUCHING = 0.02  # common ground that lettering may have, which nobody sees [mm2]

Segment = tuple[PaperPoint, PaperPoint]
Sides = tuple[float, float, float, float]
"""An area without its name, for what is asked very often [mm]."""
T = TypeVar("T")


class Grid(Generic[T]):
    """Things by the paper they lie on."""

    def __init__(self) -> None:
        self._things: list[tuple[Sides, T]] = []
        self._cells: defaultdict[tuple[float, float], list[int]] = defaultdict(list)

    def add(self, area: Sides, thing: T) -> None:
        """Put a thing where it lies."""
        for cell in _cells(area):
            self._cells[cell].append(len(self._things))
        self._things.append((area, thing))

    def near(self, area: Sides) -> list[tuple[Sides, T]]:
        """What touches an area, in the order it came."""
        known = self._cells
        cells = [known[cell] for cell in _cells(area) if cell in known]
        if not cells:
            return []
        found = cells[0] if len(cells) == 1 else sorted(set().union(*cells))
        x0, y0, x1, y1 = area
        near: list[tuple[Sides, T]] = []
        for number in found:
            thing = self._things[number]
            a, b, c, d = thing[0]
            if a <= x1 and x0 <= c and b <= y1 and y0 <= d:
                near.append(thing)
        return near


def _cells(area: Sides) -> list[tuple[float, float]]:
    x0, y0, x1, y1 = area
    left, low, right, high = x0 // _CELL, y0 // _CELL, x1 // _CELL, y1 // _CELL
    if left == right and low == high:
        return [(left, low)]
    rows = range(int(low), int(high) + 1)
    return [(c, r) for c in range(int(left), int(right) + 1) for r in rows]


class Taken:
    """The marks that stand already, told apart into bodies and lines."""

    def __init__(self) -> None:
        self._bodies: Grid[bool] = Grid()  # with each whether it is a hole, or the like
        self._lines: Grid[Segment] = Grid()

    def add(self, groups: Iterable[Group]) -> None:
        """Take the paper of more marks."""
        for group in groups:
            for body in bodies(group):
                self._bodies.add(body, group.keep_clear)
            if not group.keep_clear:
                for line in lines(group):
                    self._lines.add(box(line), line)

    def cost(
        self, groups: Iterable[Group], enough: float = math.inf, *, over_lines: bool = False
    ) -> float:
        """How badly marks would lie here; 0 when they touch nothing [-].

        Parameters
        ----------
        enough
            Cost past which it no longer matters how much more there is [-].
        over_lines
            Whether lines may run under it at no cost.
        """
        found = 0.0
        for group in groups:
            for each in self._costs(group, over_lines):
                found += each
                if found > enough:
                    return found
        return found

    def _costs(self, group: Group, over_lines: bool) -> Iterator[float]:
        for body in (group.area,) if group.kind == "grain" else bodies(group):
            wide = _wider(body, _AIR)
            for other, _ in self._bodies.near(wide):
                yield _OVER_BODY * overlap(wide, other)
            for _, line in () if over_lines else self._lines.near(wide):
                yield _OVER_LINE * inside(line, wide)
        points = group.kind in _POINTING
        for line in lines(group):
            for past, hole in self._bodies.near(_wider(box(line), _PAST)):
                wide = _wider(past, _PAST)
                if not (points and hole and _holds(wide, line[0])):
                    yield _THROUGH_BODY * inside(line, wide)


def bodies(group: Group) -> Iterator[Area]:
    """What of a group must be read whole: words, rings, signs, holes [mm on paper]."""
    if group.keep_clear:
        yield group.area
        return
    for mark in group.marks:
        if isinstance(mark, Word):
            yield figures(mark)
        elif isinstance(mark, ArcMark):
            if mark.is_circle and mark.radius <= _ROUND and mark.pen is not None:
                yield mark.area
        elif mark.closed and _is_sign(group, mark):
            yield mark.area


def _is_sign(group: Group, stroke: Stroke) -> bool:
    return stroke.fill is Ink.INK or (
        group.kind in ("sign", "balloon") and stroke.pen is not None and stroke.fill is not None
    )


def figures(word: Word) -> Area:
    """What the letters of a word cover, below the line only where they reach there."""
    area, reach = word.area, 0.3 * word.height
    if not _NO_DESCENDER.issuperset(word.text):
        return area
    if not word.rotation_deg:
        return Area(area.x0, area.y0 + reach, area.x1, area.y1)
    turn = math.radians(word.rotation_deg)
    dx, dy = -math.sin(turn) * reach, math.cos(turn) * reach
    return Area(
        area.x0 + max(0.0, dx), area.y0 + max(0.0, dy),
        area.x1 + min(0.0, dx), area.y1 + min(0.0, dy),
    )  # fmt: skip


def lines(group: Group) -> Iterator[Segment]:
    """The lines of a group, stretch by stretch [mm on paper]."""
    for mark in group.marks:
        if not isinstance(mark, Stroke) or mark.pen is None or _is_sign(group, mark):
            continue
        ends = [*mark.points, mark.points[0]] if mark.closed else list(mark.points)
        yield from pairwise(ends)


def overlap(a: Sides, b: Sides) -> float:
    """Common ground of two areas [mm2]."""
    ax0, ay0, ax1, ay1 = a
    bx0, by0, bx1, by1 = b
    if ax0 >= bx1 or bx0 >= ax1 or ay0 >= by1 or by0 >= ay1:
        return 0.0
    return (min(ax1, bx1) - max(ax0, bx0)) * (min(ay1, by1) - max(ay0, by0))


def overlaps(a: Sides, b: Sides) -> bool:
    """Whether two areas have common ground that anybody would see."""
    return overlap(a, b) > _TOUCHING


def _wider(area: Sides, by: float) -> Sides:
    x0, y0, x1, y1 = area
    return (x0 - by, y0 - by, x1 + by, y1 + by)


def _holds(area: Sides, point: PaperPoint) -> bool:
    x0, y0, x1, y1 = area
    return x0 <= point[0] <= x1 and y0 <= point[1] <= y1


def box(line: Segment) -> Sides:
    """What a stretch of a line reaches over."""
    (x0, y0), (x1, y1) = line
    if x0 > x1:
        x0, x1 = x1, x0
    return (x0, y0, x1, y1) if y0 <= y1 else (x0, y1, x1, y0)


def inside(line: Segment, area: Sides) -> float:
    """Length of a line within an area (clipping after Liang and Barsky) [mm]."""
    (x0, y0), (x1, y1) = line
    left, under, right, over = area
    dx, dy = x1 - x0, y1 - y0
    low, high = 0.0, 1.0
    for step, near, far in ((dx, left - x0, right - x0), (dy, under - y0, over - y0)):
        if step == 0.0:
            if near > 0.0 or far < 0.0:
                return 0.0
            continue
        a, b = near / step, far / step
        low, high = max(low, min(a, b)), min(high, max(a, b))
        if low >= high:
            return 0.0
    return (high - low) * math.hypot(dx, dy)
