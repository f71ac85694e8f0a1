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
from casewright.checks.words import reckoning
from casewright.dims import Dim, Given, Origin, size_text, tell
from casewright.findings import Limit, Severity
from casewright.room.aisles import AisleWay, reach_from, reach_into
from casewright.room.footprints import Footprint, footprints
from casewright.room.free_stand import FreeStand
from casewright.room.model import Room
from casewright.room.open_fronts import OpenFront, meet, open_fronts
from casewright.room.wall_stands import Spot, WallFrame, joined_walls, wall_frames

__all__ = ["RULE"]

_NAME = "opens into aisle"
_STAND = Limit("aisle.stand", "21", "535", "to stand beside an open door", "kitchen-planning")
_INTO = Origin("solved", "in plan: how far what opens reaches into what it strikes")
_CLEAR = Origin("solved", "in plan: from the edge of the open door straight to what is across")


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
        yield _strikes(_Opened(room, each, struck.key), struck, frames[each.wall], len(alike) - 1)
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


class _Opened:
    """What opens, and the numbers that a finding about it works out.

    Parameters
    ----------
    across
        Key of what it opens against.
    """

    def __init__(self, room: Room, front: OpenFront, across: str) -> None:
        self.front = front
        self.own = reckoning(room, _NAME, f"{front.key}.{across}")
        keys = front.owner, across
        stands = (stand for stand in room.free if stand.key in keys)
        self._around = [edge for stand in stands for edge in stand.counter]

    def reach_of(self, front: OpenFront) -> Dim:
        """How far one of them opens [mm]."""
        opens = front.opens
        if isinstance(opens, Given):
            return self.own.given(f"{front.key}.opens", opens)
        return self.own.let("opens", opens)

    @property
    def reach(self) -> Dim:
        """How far it opens [mm]."""
        return self.reach_of(self.front)

    def in_plan(self, name: str, value: Fraction, how: Origin) -> Dim:
        """A length between what opens and what is across [mm]."""
        return self.own.worked(name, value, how, self.reach, *self._around)


def _strikes(it: _Opened, other: Footprint, frame: WallFrame, more: int) -> Breach:
    own, reach = it.own, it.reach
    short = it.in_plan("into", _shared(it.front, other.corners, frame), _INTO)
    less = own.let("opens_less", reach - short)
    opens_less: str = "a front that does not open there"
    if less.value > 0:
        opens_less = tell(
            "a front that opens {} at most: two leaves, a shorter slide", own.length(less)
        )
    more_words = f", like {more} more of its fronts" if more else ""
    return Breach(
        it.front.key,
        tell(
            "{} opens {} and strikes {}{}",
            it.front.title, own.length(reach), other.title, more_words,
        ),
        measured=own.length(reach).text,
        limit=own.length(less).text if less.value > 0 else size_text(Fraction(0), own.unit),
        remedies=(tell("an aisle {} wider there", own.length(short)), opens_less),
        own=own,
    )  # fmt: skip


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
                it = _Opened(room, each, other.owner)
                yield _meeting(it, other, _shared(each, other.corners, frames[each.wall]))


def _meeting(it: _Opened, other: OpenFront, shared: Fraction) -> Breach:
    own = it.own
    more = own.length(it.in_plan("into", shared, _INTO))
    one, two = it.reach, it.reach_of(other)
    return Breach(
        it.front.key,
        tell(
            "{} and {} cannot be open at once: they open {} and {} over one aisle",
            it.front.title, other.title, own.length(one), own.length(two),
        ),
        measured=own.length(one + two, "together").text,
        remedies=("nothing, if one is opened at a time", tell("an aisle {} wider", more)),
        severity=Severity.NOTE,
        own=own,
    )  # fmt: skip


def _standing(
    room: Room, stand: FreeStand, frame: WallFrame, opened: Sequence[OpenFront]
) -> Iterator[Breach]:
    """Room to stand between the open door of an appliance and the island."""
    least = _STAND.of(room.spec.unit)
    for each in opened:
        if not each.is_appliance:
            continue
        corners = tuple(frame.seen(spot) for spot in each.corners)
        reaches = [reach_into(stand, way, corners) for way in ("near", "far", "left", "right")]
        free = [reach[0] for reach in reaches if reach is not None]
        if free and Fraction(0) <= min(free) < least:
            yield _narrow(_Opened(room, each, stand.key), stand.title, min(free), stand.title)


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
    if free and Fraction(0) <= min(free)[0] < _STAND.of(room.spec.unit):
        clear, title = min(free)
        yield _narrow(_Opened(room, each, "across"), title, clear, stand.title)


def _way(stand: FreeStand, middle: Spot) -> AisleWay:
    """Which way a door of an island opens that lies there, open."""
    left, right, near, far = (edge.value for edge in stand.counter)
    if stand.is_turned:
        return "left" if middle[0] < (left + right) / 2 else "right"
    return "near" if middle[1] < (near + far) / 2 else "far"


def _narrow(it: _Opened, across: str, clear: Fraction, moves: str) -> Breach:
    own, title = it.own, it.front.title
    left = it.in_plan("clear", clear, _CLEAR)
    least = own.limit(_STAND)
    asked = own.length(least)
    return Breach(
        it.front.key,
        tell(
            "before {}, open {}, {} are left up to {}; planning guidelines ask for {} to stand in",
            title, own.length(it.reach), own.length(left), across, asked,
        ),
        measured=own.length(left).text,
        limit=asked.text,
        remedies=(
            tell("{} {} farther off", moves, own.length(least - left, "farther")),
            tell("stand beside the open door: leave {} free there", asked),
        ),
        severity=Severity.NOTE,
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "kitchen-planning", _examine)
