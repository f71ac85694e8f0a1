"""One case as it goes to its wall, large; and the wall without words: where on it that is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.dims import Dim, Measure, mark_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.hatching import Hatch
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import CENTRE, CUT, FINE, NEIGHBOUR, THIN, VISIBLE, Ink, Pen
from casewright.drawing.plan_names import wrapped, written
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, circle, line, rectangle
from casewright.install.hanging import WallHanging
from casewright.install.places import WallPlace
from casewright.install.stud_map import CaseScrews

__all__ = ["lift_scene", "wall_key"]

_ROUND = Fraction(1, 5)
"""What is shown of the wall on either side, as a share of the case's longer side."""

_OFF = Hatch(spacing_mm=2.2, angle_deg=45)
_SIDEWAYS = Hatch(spacing_mm=4.4, angle_deg=135)
_Ends = tuple[Fraction, Fraction]
_SCREW, _CROSS = Fraction(9), Fraction(16)  # radius of a screw, arm of a cross [mm of model]
_FIGURES = 3.2  # height of figures [mm on paper]
_ROWS = (3.0, 15.0, 27.0)  # where a turned figure begins over its line [mm on paper]


def lift_scene(hang: WallHanging, place: WallPlace, unit: Unit) -> Scene:
    """A case at its place: its ends and the studs behind it from the wall's left end, its heights.

    Heights are told from the level line where there is one, else above the highest floor.
    """
    view = _View(hang, place, unit)
    return Scene(tuple(view.elements()), f"{place.case.spec.title} at its place")


class _View:
    """A stretch of the wall round one case."""

    def __init__(self, hang: WallHanging, place: WallPlace, unit: Unit) -> None:
        self.hang, self.place, self.unit = hang, place, unit
        left, right = place.left.value, place.right.value
        low, high = place.bottom.value, place.top.value
        room = max(right - left, high - low) * _ROUND
        self.left, self.right = left - room, right + room
        self.low, self.high = max(low - room, Fraction(0)), high + room

    def elements(self) -> Iterator[Element]:
        """Neighbours first, what is at hand over them."""
        own = self.place
        ends = (own.left.value, own.bottom.value), (own.right.value, own.top.value)
        for other in self.hang.places:
            if other.case.key != own.case.key:
                yield from self._neighbour(other)
        tag = Tag(path=own.case.key, title=own.case.spec.title)
        yield rectangle(*ends, CUT, fill=Ink.TINT, tag=tag)
        for strip in self.hang.strips:
            yield from self._off((strip.left, strip.right), (self.low, self.high), _OFF, FINE)
        for run in self.hang.cables:
            yield from self._off((run.left, run.right), (run.low, run.high), _SIDEWAYS, NEIGHBOUR)
        found = [each for each in self.hang.screws if each.place.case.key == own.case.key]
        for case in found:
            yield from self._screws(case)
        if not self.low:
            yield line((self.left, self.low), (self.right, self.low), CUT)
        yield from self._level()
        yield self._name(tag)
        yield from self._across(found)
        yield from self._heights()

    def _off(self, across: _Ends, up: _Ends, hatch: Hatch, pen: Pen) -> Iterator[Element]:
        """Where no screw is driven, or a cable may lie, as far as it is in view."""
        x0, x1 = max(across[0], self.left), min(across[1], self.right)
        y0, y1 = max(up[0], self.low), min(up[1], self.high)
        if x0 < x1 and y0 < y1:
            yield rectangle((x0, y0), (x1, y1), pen, hatch=hatch)

    def _neighbour(self, other: WallPlace) -> Iterator[Element]:
        x0, x1 = max(other.left.value, self.left), min(other.right.value, self.right)
        y0, y1 = max(other.bottom.value, self.low), min(other.top.value, self.high)
        if x0 < x1 and y0 < y1:
            yield rectangle((x0, y0), (x1, y1), NEIGHBOUR)

    def _screws(self, case: CaseScrews) -> Iterator[Element]:
        for screw in case.screws:
            x = screw.stud.value
            yield line((x, self.place.bottom.value), (x, self.high), CENTRE)
            for y in (screw.low.value, screw.high.value):
                if screw.strip is None:
                    yield circle((x, y), _SCREW, THIN, fill=Ink.INK, keep_clear=True)
                    continue
                for sign in (1, -1):
                    low, high = (x - _CROSS, y - sign * _CROSS), (x + _CROSS, y + sign * _CROSS)
                    yield line(low, high, VISIBLE, ink=Ink.LOOK)

    def _level(self) -> Iterator[Element]:
        found = self._line()
        if found is not None and self.low < found < self.high:
            yield line((self.left, found), (self.right, found), CENTRE)
            yield Text((self.left, found), "level line", 2.4, anchor="start", ink=Ink.SOFT,
                       ground=Ink.PAPER)  # fmt: skip

    def _line(self) -> Fraction | None:
        lines = (m.above_floor.value for m in self.hang.heights if m.says.startswith("level line"))
        return next(lines, None)

    def _name(self, tag: Tag) -> Element:
        own = self.place
        wide, high = own.right.value - own.left.value, own.top.value - own.bottom.value
        lines = wrapped(tag.title, float(wide), float(high))
        shares = (Fraction(1, 2), Fraction(13, 20), Fraction(7, 20))
        places = (
            (own.left.value + wide * x, own.bottom.value + high * y)
            for y in shares
            for x in shares
        )
        return Choice([tuple(written(lines, at, tag)) for at in places], hides_lines=True)

    def _across(self, found: Iterable[CaseScrews]) -> Iterator[Element]:
        """Both ends in bold, the studs between them."""
        studs: dict[Fraction, Dim] = {
            screw.stud.value: screw.stud for case in found for screw in case.screws
        }
        for at, dim in studs.items():
            yield self._over(at, dim, is_end=False)
        for dim in (self.place.left, self.place.right):
            yield line((dim.value, self.place.top.value), (dim.value, self.high), THIN)
            yield self._over(dim.value, dim, is_end=True)

    def _over(self, x: Fraction, dim: Dim, *, is_end: bool) -> Element:
        """A figure upright over its line, farther out where another stands already."""
        weight = 600 if is_end else 500
        return Choice(
            [
                (Text((x, self.high), mark_of(dim, self.unit), _FIGURES, weight=weight,
                      anchor="start", rotation_deg=90.0, shift_mm=(0.0, over)),)
                for over in _ROWS
            ]
        )  # fmt: skip

    def _heights(self) -> Iterator[Element]:
        """Lower and upper edge, from the line that they are measured from."""
        own, of = self.place, {mark.above_floor.value: mark for mark in self.hang.heights}
        for dim in (own.bottom, own.top):
            mark = of.get(dim.value)
            told = mark.from_line if mark is not None and self._line() is not None else None
            if not dim.value:
                continue
            size, way = mark_of(dim, self.unit), "off the floor"
            if told is not None:
                size = Measure(abs(told.value), self.unit, told.path, size.precision)
                way = "up" if told.value > 0 else "down"
            yield line((own.right.value, dim.value), (self.right, dim.value), THIN)
            at = (self.right, dim.value)
            yield Text(at, size, _FIGURES, weight=600, anchor="start", shift_mm=(1.0, 0.0))
            yield Text(at, way, 2.4, anchor="start", shift_mm=(1.0, -4.2))


def wall_key(hang: WallHanging, place: WallPlace) -> Scene:
    """The cases of a wall without a word, the one at hand filled."""
    elements: list[Element] = []
    for other in hang.places:
        is_own = other.case.key == place.case.key
        ends = (other.left.value, other.bottom.value), (other.right.value, other.top.value)
        pen, fill = (CUT, Ink.LOOK) if is_own else (THIN, None)
        elements.append(rectangle(*ends, pen, fill=fill))
    far = max(each.right.value for each in hang.places)
    elements.append(line((Fraction(0), Fraction(0)), (far, Fraction(0)), VISIBLE))
    return Scene(tuple(elements), f"{hang.wall.spec.title}, {place.case.spec.title}")
