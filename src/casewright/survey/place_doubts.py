"""Places that cannot all be right: a stud found twice, windows over each other or the ceiling."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import combinations, pairwise

from casewright.dims import Dim, Told, Unit, greatest, least, tell, total
from casewright.survey.doubt_numbers import DoubtNumbers
from casewright.survey.doubts import Doubt
from casewright.survey.fixed_things import PlacedThing
from casewright.survey.specs import FixedKind
from casewright.survey.walls import SurveyedWall, readings_of

__all__ = ["place_doubts"]

_STUD = Fraction(32)
"""Middles of two studs lie no nearer than they are thick, 1 1/2 in dressed, less what a finder
misses [mm] (common practice)."""

_OFF = {"in": Fraction(254, 10), "mm": Fraction(25)}
"""How far two things on a wall may seem to reach into each other: 1 in, 25 mm."""

_OVER = {"in": Fraction(508, 10), "mm": Fraction(50)}
"""How far a thing may seem to reach past the lowest ceiling: 2 in, 50 mm (own judgement)."""

_ALONE: tuple[FixedKind, ...] = ("window", "door", "chimney", "tall case")
"""What nothing else of these can stand in or over."""


def place_doubts(wall: SurveyedWall, unit: Unit) -> Iterator[Doubt]:
    """What is doubtful about where things are; readings that are all sure are left alone."""
    seen = _Places(wall, unit)
    yield from seen.studs()
    yield from seen.ceiling()
    yield from seen.counters()
    yield from seen.over_each_other()


class _Places:
    def __init__(self, wall: SurveyedWall, unit: Unit) -> None:
        self.wall, self.unit = wall, unit
        self.readings = dict(readings_of(wall.spec))
        self.numbers = DoubtNumbers(wall, unit)

    def studs(self) -> Iterator[Doubt]:
        """One stud that was found twice."""
        found = sorted(
            ((dim, f"stud_{n}") for n, dim in enumerate(self.wall.studs, start=1)),
            key=lambda row: (row[0].value, row[1]),
        )
        for (one, first), (other, second) in pairwise(found):
            if other.value - one.value < _STUD:
                at = tell("{} and {}", self.numbers.said(one), self.numbers.said(other))
                says = tell(
                    "studs of {} at {} cannot both be there: a stud is thicker than they lie "
                    "apart",
                    self.wall.spec.title, at,
                )  # fmt: skip
                yield from self._doubt((first, second), says, tell("the studs at {}", at))

    def ceiling(self) -> Iterator[Doubt]:
        """What reaches past the ceiling where that is highest."""
        highest = self._highest()
        for thing in self.wall.things:
            if highest is None or thing.top is None or thing.spec.kind == "chimney":
                continue
            if thing.top.value > highest.value + _OVER[self.unit]:
                says = tell(
                    "{} reaches {} above the floor, and the ceiling is at {}",
                    thing.spec.title, self.numbers.said(thing.top),
                    self.numbers.said(self.numbers.named("highest", highest)),
                )  # fmt: skip
                names = self._names(thing, ("bottom", "height", "top"))
                yield from self._doubt(names, says, Told(f"the heights of {thing.spec.title}"))

    def _highest(self) -> Dim | None:
        """The ceiling at its highest, above the highest floor [mm]; it may slope."""
        read = self.wall.read.items()
        wholes = [dim for name, dim in read if name.endswith(".whole")]
        ups = [dim for name, dim in read if name.endswith(".up")]
        if self.wall.floor is not None and ups:
            wholes.append(total(self.wall.floor, greatest(*ups)))
        return greatest(*wholes) if wholes else None

    def counters(self) -> Iterator[Doubt]:
        """Heights that were read beside the counter they are of."""
        for thing in self.wall.things:
            left, right = thing.left, thing.right
            if left is None or right is None or thing.spec.kind != "counter":
                continue
            within = _OFF[self.unit]
            for n, top in enumerate(thing.spec.tops, start=1):
                if left.value - within <= top.along <= right.value + within:
                    continue
                name, title = f"fixed.{thing.spec.key}.top_{n}", thing.spec.title
                read = (self.wall.at[f"{name}.along"], left, right)
                says = tell(
                    "a height of {} was read {} from the left end; it stands from {} to {}",
                    title, *map(self.numbers.said, read),
                )  # fmt: skip
                yield from self._doubt((name,), says, Told(f"where {title} begins and ends"))

    def over_each_other(self) -> Iterator[Doubt]:
        """Two windows or doors in one place."""
        built = [each for each in self.wall.things if each.spec.kind in _ALONE and each.spec.built]
        for one, other in combinations(built, 2):
            common = self._common(one, other)
            if common is not None and common.value > _OFF[self.unit]:
                titles = f"{one.spec.title} and {other.spec.title}"
                name = f"fixed.{one.spec.key}.over_{other.spec.key}"
                over = self.numbers.said(self.numbers.named(name, common))
                says = tell("{} lie over each other, {} along the wall", titles, over)
                sides = ("left", "width", "right", "centre")
                names = (*self._names(one, sides), *self._names(other, sides))
                yield from self._doubt(names, says, Told(f"where {titles} begin and end"))

    def _common(self, one: PlacedThing, other: PlacedThing) -> Dim | None:
        """How far two things reach over each other along the wall; None: not known, or not."""
        if one.left is None or other.left is None or one.right is None or other.right is None:
            return None
        for low, high in ((one, other), (other, one)):
            foot = Fraction(0) if low.spec.kind != "window" else None
            bottom = low.bottom.value if low.bottom is not None else foot
            if bottom is None or (high.top is not None and high.top.value <= bottom):
                return None
        return least(one.right, other.right) - greatest(one.left, other.left)

    def _names(self, thing: PlacedThing, which: Iterable[str]) -> tuple[str, ...]:
        names = (f"fixed.{thing.spec.key}.{name}" for name in which)
        return tuple(name for name in names if name in self.readings)

    def _doubt(self, names: Iterable[str], says: Told, again: Told) -> Iterator[Doubt]:
        unsure = tuple(
            f"{self.wall.place.path}.{name}"
            for name in names
            if not self.readings[name].sure and self.wall.read[name].built is None
        )
        if unsure:
            yield Doubt(unsure, says, tell("{}, {}", again, self.wall.spec.title))
