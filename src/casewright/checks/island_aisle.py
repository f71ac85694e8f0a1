"""Aisles round an island, or round a case that stands free, against planning guidelines.

Where fronts face each other one works: 42 in (1070 mm) from counter to counter are asked for one
who cooks alone, 48 in (1220 mm) where the job says `two_cooks = true`. A walkway beside it asks
for 36 in (915 mm), and where two such walkways meet at a corner, one of them for 42. Behind seats
44 in (1120 mm) let somebody walk past who sits there, 36 in nobody; the job's `accessible = true`
asks for 60 in (1525 mm) there. Aisles run from the edge of a counter to the edge of the next: a
base case of a run counts with style `island_front_overhang` before its doors, as an island does;
walls count where they were read. A side that stands against something, or within an inch of it,
has no aisle. What the code of the place asks for comes first.

Passes
------
An island 42 in before the sink's run, 36 beside it, 44 behind its seats.

Fails
-----
The same island 39 1/2 in before the run: 2 1/2 in short.

Sources
-------
`kitchen-planning`: 42 and 48 in, 36 and 42 in, 36 and 44 in read in a secondary copy, 60 in behind
a seat from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import length, reckoning
from casewright.dims import Dim, Origin, greatest, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.aisle_limits import AisleLimit, aisle_limit
from casewright.room.aisles import Aisle, AisleWay, aisles
from casewright.room.floor_numbers import aisle_path, floor_numbers
from casewright.room.footprints import free_footprint
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.room.wall_stands import joined_walls, wall_frames

__all__ = ["RULE"]

_NAME = "island aisle"
_PLANNING = "kitchen-planning"
_WIDE = Limit("island_aisle.corner", "42", "1070", "one of two walkways at a corner", _PLANNING)
_BEHIND = Origin("solved", "how far the nearest corner of its counter lies behind that wall")

_OPPOSITE: Mapping[AisleWay, AisleWay] = {
    "near": "far", "far": "near", "left": "right", "right": "left",
}  # fmt: skip


class _Judged(NamedTuple):
    """An aisle with what is asked of it."""

    aisle: Aisle
    limit: AisleLimit

    @property
    def short(self) -> Fraction:
        """What it lacks; below 0: what it could give [mm]."""
        return self.limit.least - self.aisle.clear


def _examine(room: Room) -> Iterator[Breach]:
    yield from _unsettled(room)
    for stand in room.free:
        yield from _behind(room, stand)
    by_stand: dict[str, dict[AisleWay, _Judged]] = {}
    for aisle in aisles(room):
        limit = aisle_limit(room, aisle)
        if limit is not None:
            by_stand.setdefault(aisle.stand.key, {})[aisle.way] = _Judged(aisle, limit)
    for judged in by_stand.values():
        for each in judged.values():
            if each.short > 0:
                yield _breach(room, each, judged.get(_OPPOSITE[each.aisle.way]))
        yield from _corners(room, judged)


def _unsettled(room: Room) -> Iterator[Breach]:
    """An island whose place leaves something to a layout that nobody has accepted yet."""
    there = {stand.key for stand in room.free}
    for island in room.islands:
        if any(p.of == island.key and p.of not in there for p in room.spec.floor_places):
            yield Breach(
                island.key,
                f"where {island.spec.title} stands is not settled yet: it is on no plan, and its "
                "aisles are not looked at",
                remedies=(f"lay it out: casewright layout JOB --island {island.spec.key}",),
            )


def _behind(room: Room, stand: FreeStand) -> Iterator[Breach]:
    """A corner of it that lies behind a wall of the room."""
    frames = wall_frames(room.survey)
    corners = free_footprint(frames, stand)
    for key in sorted(joined_walls(room.survey, stand.wall)):
        seen = [frames[key].seen(spot) for spot in corners]
        outs = [out for along, out in seen if 0 <= along <= frames[key].length]
        if outs and min(outs) < 0:
            title = room.survey.walls[key].spec.title
            own = reckoning(room, _NAME, f"{stand.key}.{key}")
            past = own.length(own.worked("behind", -min(outs), _BEHIND, *stand.counter))
            yield Breach(
                stand.key,
                tell("{} reaches {} behind {}", stand.title, past, title),
                measured=past.text,
                limit=length(room, Fraction(0)),
                remedies=(
                    tell(
                        "{} {} farther from {}",
                        stand.title,
                        past,
                        title,
                    ),
                    "a smaller one",
                ),
                severity=Severity.STOP,
                own=own,
            )


@dataclass(frozen=True, slots=True)
class _Sums:
    """Numbers of the aisles round a thing, each with what it follows."""

    own: Reckoning
    numbers: Mapping[str, Dim]
    room: Room

    def clear(self, each: _Judged) -> Dim:
        """Width of an aisle [mm]."""
        return self.numbers[aisle_path(self.room, each.aisle)]

    def least(self, each: _Judged) -> Dim:
        """What is asked of it [mm]."""
        limit, way = each.limit, each.aisle.way
        origin = Origin("cited", f"{limit.asks} so much", _PLANNING)
        return self.own.worked(f"least_{way}", limit.least, origin)

    def short(self, each: _Judged) -> Dim:
        """What it lacks [mm]."""
        return self.own.let(f"short_{each.aisle.way}", self.least(each) - self.clear(each))


def _sums(room: Room, of: str) -> _Sums:
    chain = replace(room.chain, nodes=dict(room.chain.nodes))
    floor_numbers(room, chain)
    return _Sums(reckoning(room, _NAME, of), chain.nodes, room)


def _breach(room: Room, each: _Judged, opposite: _Judged | None) -> Breach:
    aisle, limit = each.aisle, each.limit
    title, across = aisle.stand.title, aisle.across.title
    sums = _sums(room, f"{aisle.stand.key}.{aisle.way}")
    own, clear = sums.own, sums.clear(each)
    wide, least = own.length(clear), own.length(sums.least(each))
    if aisle.clear < 0:
        says = tell("{} stands {} in {}", title, own.length(-clear, "in"), across)
    else:
        says = tell(
            "{} lie between {} and {}; {} {}: {} short",
            wide, title, across, limit.asks, least, own.length(sums.short(each)),
        )  # fmt: skip
    grave = Severity.CARE if aisle.clear < limit.grave else None
    return Breach(
        aisle.stand.key, says,
        measured=own.length(greatest(clear, own.none), "clear").text, limit=least.text,
        remedies=tuple(_remedies(sums, each, opposite)),
        severity=Severity.STOP if aisle.clear < 0 else grave, own=own,
    )  # fmt: skip


def _remedies(sums: _Sums, each: _Judged, opposite: _Judged | None) -> Iterator[str]:
    """The least that would do, best first."""
    aisle, own, lacks = each.aisle, sums.own, sums.short(each)
    title, by = aisle.stand.title, own.length(lacks)
    farther = tell("{} {} farther from {}", title, by, aisle.across.title)
    if opposite is None:
        yield farther
    elif opposite.short + each.short <= 0:
        left = own.length(sums.clear(opposite) - lacks, "left")
        yield farther + tell(": {} are left up to {}", left, opposite.aisle.across.title)
    what = "shorter" if aisle.own in ("left", "right") else "less deep"
    if opposite is not None and 0 < -opposite.short < each.short:
        over = -sums.short(opposite)
        yield tell(
            "{} {} farther from {} and {} {}",
            title, own.length(over, "over"), aisle.across.title, own.length(lacks - over, "rest"),
            what,
        )  # fmt: skip
    yield tell("{} {} {}", title, by, what)


def _corners(room: Room, judged: Mapping[AisleWay, _Judged]) -> Iterator[Breach]:
    """Two walkways that meet: one of them is to be wider."""
    wide = _WIDE.of(room.spec.unit)
    ends: tuple[tuple[AisleWay, ...], ...] = (("near", "far"), ("left", "right"))
    for one in ends[0]:
        for other in ends[1]:
            pair = [judged[way] for way in (one, other) if way in judged]
            if len(pair) < 2 or any(e.limit.works or e.short > 0 for e in pair):
                continue
            best = max(pair, key=lambda each: each.aisle.clear)
            if best.aisle.clear < wide:
                yield _corner(_sums(room, f"{best.aisle.stand.key}.{one}_{other}"), best)


def _corner(sums: _Sums, best: _Judged) -> Breach:
    own, clear, stand = sums.own, sums.clear(best), best.aisle.stand
    wide, asked = own.length(clear), own.length(own.limit(_WIDE))
    more = own.length(own.limit(_WIDE) - clear, "more")
    return Breach(
        stand.key,
        tell(
            "two walkways meet at a corner of {}, the wider {}; planning guidelines ask for {} "
            "in one of them",
            stand.title, wide, asked,
        ),
        measured=wide.text, limit=asked.text,
        remedies=(tell("{} more to {}", more, best.aisle.across.title),), own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
