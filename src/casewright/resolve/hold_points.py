"""Hold points: where measuring before the next cut is worth more than it costs.

A thing is read before what meets it is cut when the minutes of mending that this saves, by how
much likelier each fit then holds, are more than the minutes that reading and waiting take. The
most worthwhile is taken first, and the next ones are weighed with it done.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.dims import Fit
from casewright.facts import Fact
from casewright.resolve.go_bands import Band, go_band, sound_band
from casewright.resolve.mending import (
    fed_fits,
    following_parts,
    mending_minutes,
    waiting_parts,
)
from casewright.room.build import build
from casewright.room.forecasts import Forecasts, ShopReading
from casewright.room.matched import with_matched
from casewright.room.model import Room

__all__ = ["HoldPoint", "Watched", "hold_points", "readings_awaited"]


@dataclass(frozen=True, slots=True)
class Watched:
    """A fit that a hold point looks after.

    Parameters
    ----------
    fit
        The fit.
    minutes
        What mending it takes when it misses [min].
    without, with_it
        Chance that it misses its band without the reading and with it [-].
    """

    fit: Fit
    minutes: int
    without: float
    with_it: float

    @property
    def saved_minutes(self) -> float:
        """What the reading saves on average [min]."""
        return self.minutes * (self.without - self.with_it)


@dataclass(frozen=True, slots=True)
class HoldPoint:
    """A stop in the order of work: something is read before what meets it is cut.

    Parameters
    ----------
    reading
        What is read, with what.
    watched
        The fits it looks after, those that gain most first.
    cost_minutes
        What it takes [min].
    parts
        Paths of the pieces that wait for it: those of the fits, all that are cut to it, and
        fronts that come out of one piece with one of these.
    go
        Readings with which these pieces may be cut as they are printed [mm]; None: with none, they
        are cut to the reading.
    sound
        Readings with which what is read is itself right [mm]; None: nothing says.
    read
        What was read [mm]; None while it is open.
    number
        By which it goes, from 1 in the order of making; 0 before it has one [-].
    """

    reading: ShopReading
    watched: tuple[Watched, ...]
    cost_minutes: int
    parts: tuple[str, ...]
    go: Band | None
    sound: Band | None
    read: Fraction | None = None
    number: int = 0

    @property
    def path(self) -> str:
        """Of the number that is read."""
        return self.reading.dim.path

    @property
    def planned(self) -> Fraction:
        """What it was to be, by all that was made before [mm]."""
        dim = self.reading.dim
        return dim.value if self.read is None else dim.wanted

    @property
    def saved_minutes(self) -> float:
        """What it saves on average, before what it costs [min]."""
        return sum(each.saved_minutes for each in self.watched)


def hold_points(room: Room) -> tuple[HoldPoint, ...]:
    """The hold points of a room in the order of making, those that are passed among them.

    Passed is one that would be there, had the thing not been read.
    """
    found = {point.path: point for point in _Search(room).points()}
    unread = _unread(room)
    for point in _Search(unread).points() if unread is not None else ():
        real = room.chain.nodes.get(point.path)
        if real is not None and real.built is not None:
            reading = replace(point.reading, dim=real)
            found[point.path] = replace(point, reading=reading, read=real.built)
    order = {path: number for number, path in enumerate(room.chain.nodes)}
    in_order = sorted(found.values(), key=lambda point: order[point.path])
    return tuple(replace(point, number=number) for number, point in enumerate(in_order, 1))


def readings_awaited(points: Iterable[HoldPoint]) -> Mapping[str, tuple[str, ...]]:
    """By path of each piece that waits at open hold points, what is read there."""
    found: dict[str, tuple[str, ...]] = {}
    for point in points:
        for path in point.parts if point.read is None else ():
            found[path] = (*found.get(path, ()), point.path)
    return found


def _unread(room: Room) -> Room | None:
    """The room as it was before its record's readings; None where there are none."""
    own = room.spec.file_facts
    facts = {path: fact for path, fact in room.chain.facts.items() if isinstance(fact, Fact)}
    left = {path: f for path, f in facts.items() if f.built is None or own.get(path) == f}
    if len(left) == len(facts):
        return None
    return replace(room, chain=build(room.spec, left, designed=room.designed).chain)


class _Search:
    """Chooses what to read, the most worthwhile first."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._forecasts = Forecasts(room)
        self._minutes: dict[str, int] = {}
        self._chances: dict[str, float] = {}
        self._fits: dict[str, list[Fit]] = {}
        self._candidates: dict[str, ShopReading] = {}
        self._chosen: list[ShopReading] = []
        for fit in room.chain.fits.values():
            self._consider(fit)

    def _consider(self, fit: Fit) -> None:
        if not fit.holds or not waiting_parts(self._room, fit.owner):
            return
        chance = self._forecasts.chance(fit, ())
        minutes = mending_minutes(self._room, fit)
        if chance * minutes * len(self._room.chain.fits) < 1:
            return  # all such fits together are not worth a minute
        self._minutes[fit.path], self._chances[fit.path] = minutes, chance
        for reading in self._forecasts.readings(fit):
            self._candidates[reading.dim.path] = reading
            self._fits.setdefault(reading.dim.path, []).append(fit)

    def points(self) -> Iterator[HoldPoint]:
        """The best one first, then with it done the next."""
        gains = {path: self._gain(path) for path in self._candidates}
        found: list[tuple[ShopReading, tuple[Watched, ...]]] = []
        while gains:
            best = max(gains, key=lambda path: (gains[path], path))
            if gains.pop(best) <= self._room.spec.shop.mending.measure:
                break
            watched = self._watched(best)
            self._chosen.append(self._candidates[best])
            found.append((self._candidates[best], watched))
            self._chances |= {each.fit.path: each.with_it for each in watched}
            touched = {fit.path for fit in self._fits[best]}
            for path in gains:
                if touched.intersection(fit.path for fit in self._fits[path]):
                    gains[path] = self._gain(path)
        read = [reading.dim for reading, _ in found]
        waiting, fed = following_parts(self._room, read), fed_fits(self._room, read)
        for reading, watched in found:
            path = reading.dim.path
            yield self._point(reading, watched, waiting.get(path, ()), fed.get(path, ()))

    def _gain(self, path: str) -> float:
        return sum(each.saved_minutes for each in self._watched(path))

    def _watched(self, path: str) -> tuple[Watched, ...]:
        """The fits that a reading helps, beside what is chosen already; the most gained first."""
        read = (*self._chosen, self._candidates[path])
        found = []
        for fit in self._fits[path]:
            before = self._chances[fit.path]
            after = self._forecasts.chance(fit, read)
            if after < before:
                found.append(Watched(fit, self._minutes[fit.path], before, after))
        return tuple(sorted(found, key=lambda each: (-each.saved_minutes, each.fit.path)))

    def _point(
        self,
        reading: ShopReading,
        watched: tuple[Watched, ...],
        follow: tuple[str, ...],
        fed: tuple[Fit, ...],
    ) -> HoldPoint:
        unit, forecasts = self._room.spec.unit, self._forecasts
        fits = [(e.fit, forecasts.slack(e.fit, tuple(self._chosen))) for e in watched]
        looked_after = {each.fit.path for each in watched}
        others = [
            (fit, forecasts.slack(fit, tuple(self._chosen)))
            for fit in fed
            if fit.path not in looked_after
        ]
        own = [(fit, forecasts.slack(fit, (reading,), always=True)) for fit in self._own(reading)]
        wait = {part.path for fit, _ in fits for part in waiting_parts(self._room, fit.owner)}
        wait = with_matched(self._room, wait.union(follow))
        return HoldPoint(
            reading,
            watched,
            self._room.spec.shop.mending.measure,
            tuple(part.path for part in self._room.parts if part.path in wait),
            go_band(reading, fits, unit, others=others),
            sound_band(reading, own, unit),
        )

    def _own(self, reading: ShopReading) -> Iterator[Fit]:
        """The fits of the case that the thing read is in, which are made no later than it."""
        case = reading.dim.path.partition(".")[0]
        own = f"{case}."
        for path, fit in self._room.chain.fits.items():
            if path.startswith(own) and fit.owner == case:
                yield fit
