"""A wall's readings as equations: what each says of the wall's sizes, and what none says yet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from casewright.dims import Dim, Unit
from casewright.survey.adjustment import Observation, Quantity, Terms
from casewright.survey.readings import Accuracy, Reading, variance
from casewright.survey.specs import Depth, FixedThing, WallSpec, is_small
from casewright.survey.usual import (
    NEAR_HEIGHT,
    heights_stood_for,
    usual_heights,
    usual_stations,
)
from casewright.survey.walls import SurveyedWall, readings_of

__all__ = ["Network", "NextReading", "middle_width", "network", "sum_of_things"]

_BY_EYE = Fraction(300)
"""How far a length said by eye strays: about a foot [mm] (own judgement)."""

_WANDER = Fraction(3)
"""How far a wall wanders in and out from end to end [mm] (own judgement)."""

_UNEVEN = Fraction(5)
"""How far a floor or a ceiling is off level from place to place [mm] (own judgement)."""

_NEAR_ALONG = Fraction(305)
_ONE = Fraction(1)


@dataclass(frozen=True, slots=True)
class NextReading:
    """Something that can be read with a tape, once or once more.

    Parameters
    ----------
    name
        Of the reading: 'width', 'down', 'left', and so on.
    thing
        Key of what is on the wall; empty for the wall itself.
    height, along, depth
        Where [mm]; None where it does not matter.
    read
        Whether it has been read.
    more
        How far the wall strays there beside the tool, as a standard deviation [mm].
    """

    name: str
    reading: Observation
    thing: str = ""
    height: Fraction | None = None
    along: Fraction | None = None
    depth: Depth = "back"
    read: bool = False
    more: Fraction = Fraction(0)


@dataclass(slots=True)
class Network:
    """The equations of one wall.

    Parameters
    ----------
    quantities
        What is to be known.
    readings
        What was read, by the reading's name at the wall.
    next_readings
        What could be read.
    sums
        What matters: the width at each usual place, the edges of things, floor and ceiling.
    """

    quantities: dict[str, Quantity] = field(default_factory=dict)
    readings: dict[str, Observation] = field(default_factory=dict)
    next_readings: list[NextReading] = field(default_factory=list)
    sums: list[Terms] = field(default_factory=list)

    def know(self, name: str, mean: Fraction, sigma: Fraction) -> str:
        """A quantity to be known, entered the first time."""
        self.quantities.setdefault(name, Quantity(name, mean, sigma))
        return name


def network(
    wall: SurveyedWall, tape: Accuracy, unit: Unit, doubtful: frozenset[str] = frozenset()
) -> Network:
    """The equations of a wall.

    Parameters
    ----------
    tape
        What a further reading would be taken with.
    unit
        Of the job: where a wall is usually read, in round numbers.
    doubtful
        Names of readings that are in doubt and are left out.
    """
    return _Builder(wall, tape, unit, doubtful).build()


class _Builder:
    def __init__(
        self, wall: SurveyedWall, tape: Accuracy, unit: Unit, doubtful: frozenset[str]
    ) -> None:
        self.wall, self.spec, self.unit = wall, wall.spec, unit
        self.tape = variance(tape, unit)
        self.net = Network()
        self.given: Mapping[str, Reading] = {
            name: each for name, each in readings_of(wall.spec) if name not in doubtful
        }

    def build(self) -> Network:
        self._widths()
        for thing in self.spec.things:
            self._along(thing)
            self._upright(thing)
        self._heights()
        return self.net

    def _read(self, name: str, terms: Terms, more: Fraction = Fraction(0)) -> bool:
        """Enter a reading, if there is one; `more` is the deviation beside the tool's [mm]."""
        reading = self.given.get(name)
        if reading is None:
            return False
        dim: Dim = self.wall.read[name]
        own = variance(reading.accuracy, self.unit) + more**2
        self.net.readings[name] = Observation(name, terms, dim.value, own)
        return True

    def _next(self, name: str, terms: Terms, more: Fraction, **where: object) -> None:
        reading = Observation(name, terms, Fraction(0), self.tape + more**2)
        found = NextReading(name, reading, more=more, **where)  # type: ignore[arg-type]
        self.net.next_readings.append(found)

    def _widths(self) -> None:
        known = middle_width(self.wall)
        mean = sum_of_things(self.spec) if known is None else known.value
        self.net.know("width", mean, _BY_EYE)
        seen: set[tuple[Depth, Fraction]] = set()
        for n, (height, depth) in enumerate(_places(self.spec, self.unit), start=1):
            seen.add((depth, height))
            self._read(f"width_{n}", self._width_at(height, depth))
        depths: tuple[Depth, ...] = ("back", "front")
        for depth in depths:
            for height in usual_heights(self.unit):
                own = next((h for d, h in sorted(seen)
                            if d == depth and abs(h - height) <= NEAR_HEIGHT), None)  # fmt: skip
                terms = self._width_at(own if own is not None else height, depth)
                self.net.sums.append(terms)
                self._next("width", terms, Fraction(0), height=height, depth=depth,
                           read=own is not None)  # fmt: skip

    def _width_at(self, height: Fraction, depth: Depth) -> Terms:
        name = self.net.know(f"width at {depth} {height}", Fraction(0), _WANDER)
        return {"width": _ONE, name: _ONE}

    def _along(self, thing: FixedThing) -> None:
        middle = self.net.quantities["width"].mean / 2
        left = self.net.know(f"{thing.key} left", middle, 2 * _BY_EYE)
        right = self.net.know(f"{thing.key} right", middle, 2 * _BY_EYE)
        start: Terms = {left: _ONE}
        if thing.after is not None:
            before = self.net.know(f"{thing.after} right", middle, 2 * _BY_EYE)
            start = {left: _ONE, before: -_ONE}
        ways: dict[str, tuple[Terms, Fraction]] = {
            "left": (start, Fraction(0)),
            "width": ({right: _ONE, left: -_ONE}, Fraction(0)),
            "right": ({"width": _ONE, right: -_ONE}, _WANDER),
            "centre": ({left: _ONE / 2, right: _ONE / 2}, Fraction(0)),
        }
        self._ways(thing, ways)
        middle_only = is_small(thing.kind) and thing.width is None
        self.net.sums += [ways["centre"][0]] if middle_only else [{left: _ONE}, {right: _ONE}]

    def _upright(self, thing: FixedThing) -> None:
        if thing.kind in ("base case", "tall case", "counter", "door"):
            return
        bottom = self.net.know(f"{thing.key} bottom", Fraction(900), 2 * _BY_EYE)
        top = self.net.know(f"{thing.key} top", Fraction(900), 2 * _BY_EYE)
        ways: dict[str, tuple[Terms, Fraction]] = {
            "bottom": ({bottom: _ONE}, Fraction(0)),
            "height": ({top: _ONE, bottom: -_ONE}, Fraction(0)),
            "top": ({top: _ONE}, Fraction(0)),
        }
        self._ways(thing, ways)
        if not is_small(thing.kind):
            self.net.sums += [{bottom: _ONE}, {top: _ONE}]
        elif thing.bottom is not None or thing.top is None:
            self.net.sums.append({bottom: _ONE})
        else:
            self.net.sums.append({top: _ONE})

    def _ways(self, thing: FixedThing, ways: Mapping[str, tuple[Terms, Fraction]]) -> None:
        small = is_small(thing.kind) and thing.width is None
        for name, (terms, more) in ways.items():
            read = self._read(f"fixed.{thing.key}.{name}", terms, more)
            if name != "centre" or read or small:
                self._next(name, terms, more, thing=thing.key, read=read)

    def _heights(self) -> None:
        for name, word in (("down", "floor"), ("up", "ceiling")):
            known = sorted(
                dim.value for each, dim in self.wall.read.items() if each.endswith(f".{name}")
            )
            mean = known[len(known) // 2] if known else Fraction(1200)
            self.net.know(word, mean, _BY_EYE)
        for n, station in enumerate(self.spec.stations, start=1):
            for name, terms in self._station(station.along, station.depth).items():
                self._read(f"station_{n}.{name}", terms)
        near = [station.along for station in self.spec.stations]
        for along in usual_stations(self.net.quantities["width"].mean, self.unit):
            own = min(near, key=lambda each: abs(each - along), default=along)
            here = own if abs(own - along) <= _NEAR_ALONG else along
            there = [each for each in self.spec.stations if each.along == here]
            usual = self._station(here, "back")
            for name in ("down", "up"):
                self.net.sums.append(usual[name])
                done = any(getattr(each, name) is not None for each in there)
                self._next(name, usual[name], Fraction(0), along=here, read=done)

    def _station(self, along: Fraction, depth: Depth) -> dict[str, Terms]:
        floor = self.net.know(f"floor at {depth} {along}", Fraction(0), _UNEVEN)
        ceiling = self.net.know(f"ceiling at {depth} {along}", Fraction(0), _UNEVEN)
        down: Terms = {"floor": _ONE, floor: _ONE}
        up: Terms = {"ceiling": _ONE, ceiling: _ONE}
        return {"down": down, "up": up, "whole": {**down, **up}}


def _places(wall: WallSpec, unit: Unit) -> Iterator[tuple[Fraction, Depth]]:
    """Where each width was read; those whose height was not told stand for usual ones."""
    usual: dict[Depth, Iterator[Fraction]] = {}
    for depth in ("back", "front"):
        own = [each.height for each in wall.widths if each.depth == depth]
        told = [each for each in own if each is not None]
        usual[depth] = iter(heights_stood_for(told, len(own) - len(told), unit))
    middle = usual_heights(unit)[1]
    for each in wall.widths:
        height = next(usual[each.depth], middle) if each.height is None else each.height
        yield height, each.depth


def middle_width(wall: SurveyedWall) -> Dim | None:
    """The middle one of the widths that were read."""
    known = sorted((dim for _, dim in wall.widths()), key=lambda dim: dim.value)
    return known[len(known) // 2] if known else None


def sum_of_things(wall: WallSpec) -> Fraction:
    """A wall's width as its segments have it, or a guess where there are none [mm]."""
    reached = Fraction(3000)
    for thing in wall.things:
        parts = [each.value for each in (thing.left, thing.width, thing.right) if each]
        if len(parts) == 3 and thing.after is None:
            return sum(parts, Fraction(0))
    return reached
