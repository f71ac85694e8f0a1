"""A stretch of a wall with its marks, large; all heights of a wall; where on it a stretch is.

Along the wall all is to scale. A stretch is taller than it is wide: heights are drawn shorter in
it, so that its marks are read; they are told by the picture of heights.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.dims import Measure, mark_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.hatching import Hatch
from casewright.drawing.marks import Anchor, Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CENTRE, CUT, FINE, HIDDEN, NEIGHBOUR, THIN, VISIBLE, Ink, Pen
from casewright.drawing.plan_names import wrapped, written
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, line, rectangle
from casewright.drawing.wall_elevation import level_of, rise_of, thing_box
from casewright.install.hanging import WallHanging
from casewright.install.marks import HeightMark, Mark
from casewright.install.stretches import Stretch

__all__ = ["heights_scene", "stretch_key", "stretch_scene"]

_OFF = Hatch(spacing_mm=2.2, angle_deg=45)
_SIDEWAYS = Hatch(spacing_mm=4.4, angle_deg=135)
_FIGURES = 3.8  # height of figures [mm on paper]
_WORDS = 2.5
_TALL = Fraction(11, 10)  # of a stretch, at most: height to width as drawn [-]
_LEAST = Fraction(450)  # width of the view [mm]
_MARGIN = Fraction(1, 20)  # beyond the ends of the wall, as a share of the view [-]
_STAFF = Fraction(2, 5)  # width of the picture of heights to its height [-]
_NAMED = Fraction(1, 4)  # of the view, that what goes on beyond it takes up to be named [-]
_Ends = tuple[Fraction, Fraction]


def stretch_scene(hang: WallHanging, stretch: Stretch, unit: Unit) -> Scene:
    """What stands and hangs there, studs, what is off limits; its marks from the wall's left end.

    Over it the marks of what hangs, bold, of studs and of what is on the wall; under it those of
    what stands.
    """
    title = hang.wall.spec.title
    return Scene(tuple(_View(hang, stretch, unit).elements()), f"{title}, a stretch of its marks")


class _View:
    """A stretch of the wall, its heights drawn shorter where it is narrow."""

    def __init__(self, hang: WallHanging, stretch: Stretch, unit: Unit) -> None:
        self.hang, self.stretch, self.unit = hang, stretch, unit
        wide = max(stretch.right - stretch.left, _LEAST)
        room = (wide - (stretch.right - stretch.left)) / 2 + wide * _MARGIN
        self.left, self.right = stretch.left - room, stretch.right + room
        self.ceiling = level_of(hang.wall) + rise_of(hang.wall)
        self.shorter = min(Fraction(1), _TALL * (self.right - self.left) / self.ceiling)

    def elements(self) -> Iterator[Element]:
        """What is off limits first, marks last."""
        hang, ceiling = self.hang, self.ceiling
        for strip in hang.strips:
            yield from self._filled((strip.left, strip.right), (Fraction(0), ceiling), _OFF)
        for run in hang.cables:
            yield from self._filled((run.left, run.right), (run.low, run.high), _SIDEWAYS)
        for gap in hang.appliances:
            across, up = (gap.left.value, gap.right.value), (Fraction(0), gap.top.value)
            yield from self._box(across, up, NEIGHBOUR)
            yield from self._named(gap.title, across, up, soft=True)
        for place in hang.places:
            across, up = (place.left.value, place.right.value), (place.bottom.value,
                                                                 place.top.value)  # fmt: skip
            yield from self._box(across, up, VISIBLE)
            yield from self._named(place.case.spec.title, across, up, soft=False)
        for stud in hang.wall.studs:
            if self.left < stud.value < self.right:
                yield line(self._at(stud.value, 0), self._at(stud.value, ceiling), CENTRE)
        yield from self._ends()
        yield from self._things()
        yield from self._marks()

    def _at(self, x: Fraction, y: Fraction | int) -> tuple[Fraction, Fraction]:
        return x, y * self.shorter

    def _ends(self) -> Iterator[Element]:
        """Floor and ceiling, the level line, and the ends of the wall that are in view."""
        for y, pen in ((Fraction(0), CUT), (self.ceiling, VISIBLE)):
            yield line(self._at(self.left, y), self._at(self.right, y), pen)
        wide = self.hang.wall.width
        for x in (Fraction(0), None if wide is None else wide.value):
            if x is not None and self.left < x < self.right:
                yield line(self._at(x, 0), self._at(x, self.ceiling), CUT)
        level = _line_of(self.hang.heights)
        if level is not None:
            high = level.above_floor.value
            yield line(self._at(self.left, high), self._at(self.right, high), CENTRE)
            yield self._words("level line", [
                (self._at(self.left + (self.right - self.left) * n / 12, high), "middle", 0.0)
                for n in range(2, 11)
            ])  # fmt: skip

    def _filled(self, across: _Ends, up: _Ends, hatch: Hatch) -> Iterator[Element]:
        x0, x1 = max(across[0], self.left), min(across[1], self.right)
        if x0 < x1:
            pen = FINE if hatch is _OFF else NEIGHBOUR
            yield rectangle(self._at(x0, up[0]), self._at(x1, up[1]), pen, hatch=hatch)

    def _box(self, across: _Ends, up: _Ends, pen: Pen) -> Iterator[Element]:
        """Its outline as far as it is in view: open where it goes on."""
        x0, x1 = max(across[0], self.left), min(across[1], self.right)
        if x0 >= x1:
            return
        for y in up:
            yield line(self._at(x0, y), self._at(x1, y), pen)
        for x in across:
            if self.left < x < self.right:
                yield line(self._at(x, up[0]), self._at(x, up[1]), pen)

    def _named(self, title: str, across: _Ends, up: _Ends, *, soft: bool) -> Iterator[Element]:
        x0, x1 = max(across[0], self.left), min(across[1], self.right)
        if x1 - x0 < min(across[1] - across[0], (self.right - self.left) * _NAMED):
            return  # a stretch beside it names it
        wide, low, high = x1 - x0, up[0] * self.shorter, up[1] * self.shorter
        lines = wrapped(title, float(wide), float(high - low))
        tag, shares = Tag(title=title), (Fraction(1, 2), Fraction(7, 10), Fraction(3, 10))
        yield Choice([
            tuple(written(lines, (x0 + wide * x, low + (high - low) * y), tag, soft=soft))
            for y in shares
            for x in shares
        ])  # fmt: skip

    def _things(self) -> Iterator[Element]:
        """What is on the wall, its name where it hides least."""
        for thing in self.hang.wall.things:
            if thing.left is None or thing.right is None:
                continue
            left, right, low, high = thing_box(thing, self.ceiling)
            if right <= self.left or left >= self.right:
                continue
            yield from self._box(
                (left, right), (low, high), VISIBLE if thing.spec.built else HIDDEN
            )
            x0, x1 = max(left, self.left), min(right, self.right)
            yield self._words(thing.spec.title, self._beside((x0, x1), (low, high)))

    def _beside(
        self, across: _Ends, up: _Ends
    ) -> Iterator[tuple[tuple[Fraction, Fraction], Anchor, float]]:
        """Where a name goes: inside; else on the side where the view has more room."""
        x0, x1 = across
        is_left = x0 + x1 < self.left + self.right
        inward: tuple[Fraction, Anchor, float] = (
            (x1, "start", 1.2) if is_left else (x0, "end", -1.2)
        )
        anchored: tuple[Fraction, Anchor, float] = (
            (max(x0, self.left), "start", 0.8) if is_left else (min(x1, self.right), "end", -0.8)
        )
        is_wide = x1 - x0 > (self.right - self.left) * _NAMED
        inside: tuple[Fraction, Anchor, float] = ((x0 + x1) / 2, "middle", 0.0)
        for x, anchor, aside in (inside, anchored) if is_wide else (inward, anchored):
            for n in (4, 2, 6, 1, 7, *((11, -3) if (up[1] - up[0]) * 6 < self.ceiling else ())):
                yield self._at(x, up[0] + (up[1] - up[0]) * n / 8), anchor, aside

    def _words(
        self, words: str, places: Iterable[tuple[tuple[Fraction, Fraction], Anchor, float]]
    ) -> Element:
        return Choice([
            (Text(at, words, _WORDS, anchor=anchor, ink=Ink.SOFT, ground=Ink.PAPER,
                  shift_mm=(aside, 0.0)),)
            for at, anchor, aside in places
        ])  # fmt: skip

    def _marks(self) -> Iterator[Element]:
        """Running dimensions over and under; the tape comes from the wall's left end."""
        zero = Fraction(0)
        starts = None if self.left <= 0 else self.left
        for side, base, own in (
            ("above", self.ceiling * self.shorter, [m for m in self.stretch.marks if _is_over(m)]),
            ("below", zero, [m for m in self.stretch.marks if not _is_over(m)]),
        ):
            stops = {
                m.at.value: Stop(m.at.value, mark_of(m.at, self.unit), emphasis=m.kind == "case")
                for m in own
                if m.at.value
            }
            if stops:
                yield Running("above" if side == "above" else "below", base, zero,
                              tuple(stops.values()), height=_FIGURES, starts=starts)  # fmt: skip


def _is_over(mark: Mark) -> bool:
    return mark.band != "standing" and mark.kind != "wall"


def _line_of(heights: Iterable[HeightMark]) -> HeightMark | None:
    return next((each for each in heights if each.says.startswith("level line")), None)


def heights_scene(hang: WallHanging, unit: Unit) -> Scene:
    """Every height of a wall as on a staff: left above the highest floor, right from the line."""
    high = level_of(hang.wall) + rise_of(hang.wall)
    wide, zero = high * _STAFF, Fraction(0)
    level = _line_of(hang.heights)
    elements: list[Element] = [
        line((zero, zero), (wide, zero), CUT),
        line((zero, high), (wide, high), THIN),
    ]
    above: list[Stop] = []
    for mark in hang.heights:
        y = mark.above_floor.value
        elements.append(line((zero, y), (wide, y), CENTRE if mark is level else VISIBLE))
        words = mark.says.partition(":")[0].partition(" of ")[0]
        elements.append(Text((wide / 2, y), words, _WORDS, ground=Ink.PAPER))
        above.append(Stop(y, mark_of(mark.above_floor, unit), emphasis=level is None))
    if above:
        elements.append(Running("left", zero, zero, tuple(above), height=_FIGURES))
    if level is not None:
        told = tuple(_from_line(hang.heights, unit, level.above_floor.value))
        elements.append(Running("right", wide, level.above_floor.value, told, height=_FIGURES))
    return Scene(tuple(elements), f"{hang.wall.spec.title}, its heights")


def _from_line(heights: Iterable[HeightMark], unit: Unit, level: Fraction) -> Iterator[Stop]:
    for mark in heights:
        if mark.from_line is None or not mark.from_line.value:
            continue
        value = mark.from_line.value
        yield Stop(level + value, Measure(abs(value), unit, mark.from_line.path),
                   note="up" if value > 0 else "down", emphasis=True)  # fmt: skip


def stretch_key(hang: WallHanging, stretch: Stretch) -> Scene:
    """The cases of a wall without a word, the stretch marked on the floor under them."""
    elements: list[Element] = []
    high = Fraction(0)
    for place in hang.places:
        ends = (place.left.value, place.bottom.value), (place.right.value, place.top.value)
        elements.append(rectangle(*ends, THIN))
        high = max(high, place.top.value)
    far = max(stretch.right, *(place.right.value for place in hang.places))
    elements.append(line((Fraction(0), Fraction(0)), (far, Fraction(0)), VISIBLE))
    ends = (stretch.left, -high / 12), (stretch.right, Fraction(0))
    elements.append(rectangle(*ends, CUT, fill=Ink.LOOK))
    return Scene(tuple(elements), f"{hang.wall.spec.title}, one stretch")
