"""Long, short or obstructed ways between the sink, what is cooked on and the refrigerator.

Whoever cooks walks between the three all the time. Planning guidelines ask for straight ways of 4
to 9 ft (1220 to 2745 mm) between the middles of their fronts, for no more than 26 ft (7925 mm) for
all three, and for none that cuts an island by more than 12 in (305 mm). These are guidance for a
kitchen of one cook, no code: a small kitchen is no worse for being small. Where there are several
of a kind, the three with the shortest ways together are taken. Nothing is said until a sink, what
is cooked on (`cooks = true`) and a refrigerator (`cools = true`) all have their places on surveyed
walls that corners join, or in an island.

Passes
------
A sink, a range and a refrigerator along one wall, 51 1/2 in and 53 in from one to the next.

Fails
-----
The same with 70 in more of a base case between range and refrigerator.

Sources
-------
`kitchen-planning`: all four read in a secondary copy. That the shortest three are taken is this
house's own.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, product

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Origin, tell, total
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.floor_cuts import share_inside
from casewright.room.footprints import free_footprint
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.room.wall_stands import Spot, joined_walls, wall_frames
from casewright.room.work_centres import CENTRES, WorkCentre, work_centres

__all__ = ["RULE"]

_NAME = "work triangle"
_PLANNING = "kitchen-planning"
_LEAST = Limit("work_triangle.least", "48", "1220", "least way from one to another", _PLANNING)
_MOST = Limit("work_triangle.most", "108", "2745", "longest way from one to another", _PLANNING)
_ALL = Limit("work_triangle.all", "312", "7925", "longest way round all three", _PLANNING)
_CUT = Limit("work_triangle.cut", "12", "305", "how far a way may cut an island", _PLANNING)
_WAY = Origin("solved", "in plan, straight from the middle of one front to that of the other")
_THROUGH = Origin("solved", "in plan, how much of that way lies in what stands free")
_GRAINS = 10**6  # of a millimetre

_Three = tuple[WorkCentre, ...]


def _examine(room: Room) -> Iterator[Breach]:
    if not any(each.cools for each in room.spec.appliances):
        return
    known = work_centres(room)
    threes = [three for three in product(*(known[kind] for kind in CENTRES)) if _met(room, three)]
    if threes:
        three = min(threes, key=_total)
        yield from _ways(room, three)
        yield from _all_three(room, three)
        yield from _across(room, three)


def _met(room: Room, three: _Three) -> bool:
    """Whether the places of the three to one another are known."""
    first, *others = (each.wall for each in three)
    return {first, *others} <= joined_walls(room.survey, first) | {first}


def _apart(one: Spot, other: Spot) -> float:
    return math.hypot(float(other[0] - one[0]), float(other[1] - one[1]))


def _total(three: _Three) -> float:
    return sum(_apart(one.spot, other.spot) for one, other in combinations(three, 2))


def _way(room: Room, own: Reckoning, one: WorkCentre, other: WorkCentre) -> Dim:
    """The way between two of them [mm]."""
    exact = Fraction(round(_apart(one.spot, other.spot) * _GRAINS), _GRAINS)
    follows = (*_stands(room, one), *_stands(room, other))
    return own.worked("exact", exact, _WAY, *follows)


def _stands(room: Room, centre: WorkCentre) -> Iterator[Dim]:
    """Where its left side is, and how wide it is [mm]."""
    for run in room.runs:
        for case, start in zip(run.cases, run.starts, strict=True):
            if case.key == centre.path:
                yield from (run.begins + start, case.overall_width)
        for each in run.appliances:
            if f"appliance.{each.spec.key}" == centre.path:
                yield from (run.begins + each.start, each.width)


def _ways(room: Room, three: _Three) -> Iterator[Breach]:
    least, most = _LEAST.of(room.spec.unit), _MOST.of(room.spec.unit)
    for one, other in combinations(three, 2):
        squared = sum((a - b) ** 2 for a, b in zip(one.spot, other.spot, strict=True))
        if not least**2 <= squared <= most**2:
            yield _wrong(room, one, other, is_short=squared < least**2)


def _wrong(room: Room, one: WorkCentre, other: WorkCentre, *, is_short: bool) -> Breach:
    own = reckoning(room, _NAME, f"{one.path}.{other.path}")
    way, limit = _way(room, own, one, other), own.limit(_LEAST if is_short else _MOST)
    off = own.about(limit - way if is_short else way - limit, "off")
    told, asked = own.about(way, "way"), own.length(limit)
    return Breach(
        other.path,
        tell(
            "from the middle of {} to that of {} it is {}; planning guidelines ask for {} at {}",
            one.title, other.title, told, asked, "least" if is_short else "most",
        ),
        measured=told.text,
        limit=asked.text,
        remedies=(
            tell("the two {} {} each other", off, "farther from" if is_short else "nearer to"),
            "leave it, where the room gives no more" if is_short else "another order in the runs",
        ),
        own=own,
    )  # fmt: skip


def _all_three(room: Room, three: _Three) -> Iterator[Breach]:
    if _total(three) <= _ALL.of(room.spec.unit):
        return
    own, names = reckoning(room, _NAME, "all"), ", ".join(each.title for each in three)
    ways = total(*(_way(room, own, *pair) for pair in combinations(three, 2)))
    most, told = own.limit(_ALL), own.about(ways, "together")
    asked = own.length(most)
    yield Breach(
        three[0].path,
        tell(
            "the ways between {} are {} together; planning guidelines ask for {} at most",
            names, told, asked,
        ),
        measured=told.text,
        limit=asked.text,
        remedies=(
            tell("ways {} shorter in all", own.about(ways - most, "shorter")),
            "a second, small sink near the others",
        ),
        own=own,
    )  # fmt: skip


def _across(room: Room, three: _Three) -> Iterator[Breach]:
    """Ways that go through what stands free."""
    frames, most = wall_frames(room.survey), _CUT.of(room.spec.unit)
    reach = joined_walls(room.survey, three[0].wall) | {three[0].wall}
    for stand in (each for each in room.free if each.wall in reach):
        shape = free_footprint(frames, stand)
        for one, other in combinations(three, 2):
            share = share_inside((one.spot, other.spot), shape)
            cut = float(share) * _apart(one.spot, other.spot)
            if share and cut > most:
                yield _cuts(room, stand, (one, other), cut)


def _cuts(
    room: Room, stand: FreeStand, pair: tuple[WorkCentre, WorkCentre], cut_mm: float
) -> Breach:
    one, other = pair
    own = reckoning(room, _NAME, f"{stand.key}.{one.path}.{other.path}")
    exact = Fraction(round(cut_mm * _GRAINS), _GRAINS)
    follows = _way(room, own, one, other), *stand.counter
    cut = own.about(own.worked("through_exact", exact, _THROUGH, *follows), "through")
    most = own.length(own.limit(_CUT))
    return Breach(
        stand.key,
        tell(
            "the way from {} to {} goes {} through {}; planning guidelines ask for {} at most",
            one.title, other.title, cut, stand.title, most,
        ),
        measured=cut.text,
        limit=most.text,
        remedies=(
            f"{stand.title} moved or shorter, out of that way",
            "one of the two at another place",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
