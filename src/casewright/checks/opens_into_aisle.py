"""Doors and drawers that have no room to open before an island, or that meet in its aisle.

A drawer comes out as far as its slides go, a door as far as it is wide, an appliance's door as far
as its sheet says (`opens`). What strikes a counter, a case or a wall cannot be opened; two that
meet cannot be open at once; before the open door of a dishwasher or an oven somebody has to stand:
planning guidelines ask for 21 in (535 mm). Doors of the room that swing inward are reckoned with
their `swing`. What hangs on walls opens above heads and counters and is passed over.

Passes
------
Drawers on slides of 21 in on either side of an aisle of 42 in.

Fails
-----
A dishwasher whose door opens 27 in, in an aisle of 42 in before an island with drawers: 15 in are
left to stand in, and no drawer across opens meanwhile.

Sources
-------
`kitchen-planning`: 21 in to stand beside a dishwasher, read in a secondary copy. Reaches by
slides, leaves and makers' sheets.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.aisles import AisleWay, reach_from, reach_into
from casewright.room.footprints import Footprint, footprints
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.room.open_fronts import OpenFront, meet, open_fronts
from casewright.room.wall_stands import Spot, WallFrame, joined_walls, wall_frames

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    if not room.free:
        return
    joined = {key: joined_walls(room.survey, key) for key in room.survey.walls}
    free = {stand.key for stand in room.free}
    taken, opened = footprints(room), open_fronts(room)
    frames = wall_frames(room.survey)
    left: list[OpenFront] = []
    striking: dict[tuple[str, str], list[tuple[OpenFront, Footprint]]] = {}
    for each in opened:
        there = (
            other
            for other in taken
            if other.key != each.owner
            and (each.owner in free or other.key in free)
            and other.wall in joined[each.wall]
        )
        struck = next((other for other in there if meet(each.corners, other.corners)), None)
        if struck is None:
            left.append(each)
        else:
            case = each.key.partition(".")[0] if not each.is_appliance else each.key
            striking.setdefault((case, struck.key), []).append((each, struck))
    for alike in striking.values():  # fronts of one case before one thing: the longest is told
        each, struck = max(alike, key=lambda pair: pair[0].reach)
        yield _strikes(room, each, struck, frames[each.wall], more=len(alike) - 1)
    own = [each for each in left if each.owner in free]
    yield from _meetings(room, own, left, joined, frames)
    for stand in room.free:
        near = [each for each in opened if each.wall in joined[stand.wall]]
        yield from _standing(room, stand, frames[stand.wall], near)
        washers = [each for each in own if each.is_appliance and each.owner == stand.key]
        around = [
            each for each in taken if each.key != stand.key and each.wall in joined[stand.wall]
        ]
        for each in washers:
            yield from _before_own(room, stand, frames[stand.wall], each, around)


def _strikes(
    room: Room, each: OpenFront, other: Footprint, frame: WallFrame, *, more: int
) -> Breach:
    short = _shared(each, other.corners, frame)
    less = each.reach - short
    opens_less = (
        (f"a front that opens {length(room, less)} at most: two leaves, a shorter slide",)
        if less > 0
        else ("a front that does not open there",)
    )
    return Breach(
        each.key,
        f"{each.title} opens {length(room, each.reach)} and strikes {other.title}"
        + (f", like {more} more of its fronts" if more else ""),
        measured=length(room, each.reach),
        limit=length(room, max(less, Fraction(0))),
        remedies=(f"an aisle {length(room, short)} wider there", *opens_less),
    )


def _shared(each: OpenFront, other: Sequence[Spot], frame: WallFrame) -> Fraction:
    """How far a front reaches into a shape, the way that it opens [mm]."""
    mine, its = ([frame.seen(spot) for spot in shape] for shape in (each.corners, other))
    ends = [(min(s[n] for s in mine), max(s[n] for s in mine)) for n in (1, 0)]
    n, (low, high) = next(
        ((n, end) for n, end in zip((1, 0), ends, strict=True) if end[1] - end[0] == each.reach),
        (1, ends[0]),
    )
    there = [spot[n] for spot in its]
    return min(high - min(there), max(there) - low)


def _meetings(
    room: Room,
    own: Sequence[OpenFront],
    all_of_them: Sequence[OpenFront],
    joined: Mapping[str, frozenset[str]],
    frames: Mapping[str, WallFrame],
) -> Iterator[Breach]:
    """One word for each pair of cases whose fronts meet."""
    told: set[frozenset[str]] = set()
    for each in own:
        for other in all_of_them:
            pair = frozenset((each.owner, other.owner))
            if len(pair) < 2 or pair in told or other.wall not in joined[each.wall]:
                continue
            if meet(each.corners, other.corners):
                told.add(pair)
                more = length(room, _shared(each, other.corners, frames[each.wall]))
                yield Breach(
                    each.key,
                    f"{each.title} and {other.title} cannot be open at once: they open "
                    f"{length(room, each.reach)} and {length(room, other.reach)} over one aisle",
                    measured=length(room, each.reach + other.reach),
                    remedies=("nothing, if one is opened at a time", f"an aisle {more} wider"),
                    severity=Severity.NOTE,
                )


def _standing(
    room: Room, stand: FreeStand, frame: WallFrame, opened: Sequence[OpenFront]
) -> Iterator[Breach]:
    """Room to stand between the open door of an appliance and the island."""
    least = by_unit(room, "21", "535")
    for each in opened:
        if not each.is_appliance:
            continue
        corners = tuple(frame.seen(spot) for spot in each.corners)
        reaches = [reach_into(stand, way, corners) for way in ("near", "far", "left", "right")]
        free = [reach[0] for reach in reaches if reach is not None]
        if free and Fraction(0) <= min(free) < least:
            yield _narrow(room, each, stand.title, min(free), stand.title)


def _before_own(
    room: Room, stand: FreeStand, frame: WallFrame, each: OpenFront, others: Sequence[Footprint]
) -> Iterator[Breach]:
    """Room to stand between the open door of an island's own appliance and what is across."""
    seen = [frame.seen(spot) for spot in each.corners]
    (left, *_, right), (near, *_, far) = (sorted(spot[n] for spot in seen) for n in (0, 1))
    middles = ((left + right) / 2, (near + far) / 2)
    free = []
    for other in others:
        corners = tuple(frame.seen(spot) for spot in other.corners)
        reach = reach_from((left, right, near, far), _way(stand, middles), corners)
        if reach is not None:
            free.append((reach[0], other.title))
    if free and Fraction(0) <= min(free)[0] < by_unit(room, "21", "535"):
        clear, title = min(free)
        yield _narrow(room, each, title, clear, stand.title)


def _way(stand: FreeStand, middle: Spot) -> AisleWay:
    """Which way a door of an island opens that lies there, open."""
    left, right, near, far = (edge.value for edge in stand.counter)
    if stand.is_turned:
        return "left" if middle[0] < (left + right) / 2 else "right"
    return "near" if middle[1] < (near + far) / 2 else "far"


def _narrow(room: Room, each: OpenFront, across: str, clear: Fraction, moves: str) -> Breach:
    least = by_unit(room, "21", "535")
    return Breach(
        each.key,
        f"before {each.title}, open {length(room, each.reach)}, {length(room, clear)} are left "
        f"up to {across}; planning guidelines ask for {length(room, least)} to stand in",
        measured=length(room, clear),
        limit=length(room, least),
        remedies=(
            f"{moves} {length(room, least - clear)} farther off",
            f"stand beside the open door: leave {length(room, least)} free there",
        ),
        severity=Severity.NOTE,
    )


RULE = Rule("opens into aisle", Severity.CARE, __doc__ or "", "kitchen-planning", _examine)
