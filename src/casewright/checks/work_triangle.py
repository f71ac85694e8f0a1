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
from itertools import combinations, product

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import about, by_unit, length
from casewright.findings import Severity
from casewright.room.floor_cuts import share_inside
from casewright.room.footprints import free_footprint
from casewright.room.model import Room
from casewright.room.wall_stands import Spot, joined_walls, wall_frames
from casewright.room.work_centres import CENTRES, WorkCentre, work_centres

__all__ = ["RULE"]

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


def _ways(room: Room, three: _Three) -> Iterator[Breach]:
    least, most = by_unit(room, "48", "1220"), by_unit(room, "108", "2745")
    for one, other in combinations(three, 2):
        squared = sum((a - b) ** 2 for a, b in zip(one.spot, other.spot, strict=True))
        if least**2 <= squared <= most**2:
            continue
        way = _apart(one.spot, other.spot)
        short = squared < least**2
        limit = length(room, least if short else most)
        off = about(room, abs(way - float(least if short else most)))
        yield Breach(
            other.path,
            f"from the middle of {one.title} to that of {other.title} it is {about(room, way)}; "
            f"planning guidelines ask for {limit} at {'least' if short else 'most'}",
            measured=about(room, way),
            limit=limit,
            remedies=(
                f"the two {off} {'farther from' if short else 'nearer to'} each other",
                "leave it, where the room gives no more" if short else "another order in the runs",
            ),
        )


def _all_three(room: Room, three: _Three) -> Iterator[Breach]:
    most, total = by_unit(room, "312", "7925"), _total(three)
    if total > most:
        names = ", ".join(each.title for each in three)
        yield Breach(
            three[0].path,
            f"the ways between {names} are {about(room, total)} together; planning guidelines ask "
            f"for {length(room, most)} at most",
            measured=about(room, total),
            limit=length(room, most),
            remedies=(
                f"ways {about(room, total - float(most))} shorter in all",
                "a second, small sink near the others",
            ),
        )


def _across(room: Room, three: _Three) -> Iterator[Breach]:
    """Ways that go through what stands free."""
    frames, most = wall_frames(room.survey), by_unit(room, "12", "305")
    reach = joined_walls(room.survey, three[0].wall) | {three[0].wall}
    for stand in (each for each in room.free if each.wall in reach):
        shape = free_footprint(frames, stand)
        for one, other in combinations(three, 2):
            share = share_inside((one.spot, other.spot), shape)
            cut = float(share) * _apart(one.spot, other.spot)
            if share and cut > most:
                yield Breach(
                    stand.key,
                    f"the way from {one.title} to {other.title} goes {about(room, cut)} through "
                    f"{stand.title}; planning guidelines ask for {length(room, most)} at most",
                    measured=about(room, cut),
                    limit=length(room, most),
                    remedies=(
                        f"{stand.title} moved or shorter, out of that way",
                        "one of the two at another place",
                    ),
                )


RULE = Rule("work triangle", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
