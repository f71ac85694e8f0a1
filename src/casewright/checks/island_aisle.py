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
from fractions import Fraction
from typing import NamedTuple

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.aisle_limits import AisleLimit, aisle_limit
from casewright.room.aisles import Aisle, AisleWay, aisles
from casewright.room.footprints import free_footprint
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.room.wall_stands import joined_walls, wall_frames

__all__ = ["RULE"]

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
            past = length(room, -min(outs))
            yield Breach(
                stand.key,
                f"{stand.title} reaches {past} behind {title}",
                measured=past,
                limit=length(room, Fraction(0)),
                remedies=(f"{stand.title} {past} farther from {title}", "a smaller one"),
                severity=Severity.STOP,
            )


def _breach(room: Room, each: _Judged, opposite: _Judged | None) -> Breach:
    aisle, limit = each.aisle, each.limit
    title, across = aisle.stand.title, aisle.across.title
    if aisle.clear < 0:
        says = f"{title} stands {length(room, -aisle.clear)} in {across}"
    else:
        says = (
            f"{length(room, aisle.clear)} lie between {title} and {across}; {limit.asks} "
            f"{length(room, limit.least)}: {length(room, each.short)} short"
        )
    grave = Severity.CARE if aisle.clear < limit.grave else None
    return Breach(
        aisle.stand.key, says,
        measured=length(room, max(aisle.clear, Fraction(0))), limit=length(room, limit.least),
        remedies=tuple(_remedies(room, each, opposite)),
        severity=Severity.STOP if aisle.clear < 0 else grave,
    )  # fmt: skip


def _remedies(room: Room, each: _Judged, opposite: _Judged | None) -> Iterator[str]:
    """The least that would do, best first."""
    short, aisle = each.short, each.aisle
    title, by = aisle.stand.title, length(room, short)
    if opposite is None:
        yield f"{title} {by} farther from {aisle.across.title}"
    elif opposite.short + short <= 0:
        left = length(room, opposite.aisle.clear - short)
        yield (
            f"{title} {by} farther from {aisle.across.title}: {left} are left up to "
            f"{opposite.aisle.across.title}"
        )
    long = aisle.own in ("left", "right")
    what = "shorter" if long else "less deep"
    if opposite is not None and 0 < -opposite.short < short:
        rest = short + opposite.short
        yield (
            f"{title} {length(room, -opposite.short)} farther from {aisle.across.title} and "
            f"{length(room, rest)} {what}"
        )
    yield f"{title} {by} {what}"


def _corners(room: Room, judged: Mapping[AisleWay, _Judged]) -> Iterator[Breach]:
    """Two walkways that meet: one of them is to be wider."""
    wide = by_unit(room, "42", "1070")
    ends: tuple[tuple[AisleWay, ...], ...] = (("near", "far"), ("left", "right"))
    for one in ends[0]:
        for other in ends[1]:
            pair = [judged[way] for way in (one, other) if way in judged]
            if len(pair) < 2 or any(e.limit.works or e.short > 0 for e in pair):
                continue
            best = max(pair, key=lambda each: each.aisle.clear)
            more = f"{length(room, wide - best.aisle.clear)} more to {best.aisle.across.title}"
            if best.aisle.clear < wide:
                yield Breach(
                    best.aisle.stand.key,
                    f"two walkways meet at a corner of {best.aisle.stand.title}, the wider "
                    f"{length(room, best.aisle.clear)}; planning guidelines ask for "
                    f"{length(room, wide)} in one of them",
                    measured=length(room, best.aisle.clear), limit=length(room, wide),
                    remedies=(more,),
                )  # fmt: skip


RULE = Rule("island aisle", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
