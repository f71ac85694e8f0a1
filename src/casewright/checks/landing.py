"""Too little counter to put things down beside what is cooked on, a sink or a refrigerator.

A hot pan wants a place beside the burner, dishes one on either side of the sink, milk and meat one
beside the refrigerator. Planning guidelines ask for 12 in (305 mm) of counter on one side of what
is cooked on and 15 in (380 mm) on the other; for 24 in (610 mm) and 18 in (460 mm) beside a sink;
for 15 in beside a refrigerator or an oven, or across from it. Counter lies on base cases, on what
is no higher, and on fillers, up to a wall, an open end or whatever is higher. Where a run ends in
a corner the counter is taken to go on round it; that of a sink is counted from the edges of its
case. Sinks are looked at in jobs that have appliances. On an island they ask for 9 in (230 mm) of
counter behind what is cooked on, out of reach of whoever sits or passes there; that is taken to be
as deep as the boxes beside it.

Passes
------
A range between base cases of 36 and 24 in.

Fails
-----
The same range between base cases of 36 and 11 in.

Sources
-------
`kitchen-planning`: all read in a secondary copy. That a counter goes on round a corner, and that a
sink is counted by its case, are this house's own.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.checks.counters import (
    Counter,
    CounterPlace,
    PlaceKind,
    counted,
    counter_beside,
    counter_beyond,
    places_of,
)
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, greatest, joined, tell, total
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Appliance, Island, Room, Run

__all__ = ["RULE"]

_NAME = "landing"
_PLANNING = "kitchen-planning"


def _asked(name: str, inches: str, millimetres: str, of: str) -> Limit:
    return Limit(f"landing.{name}", inches, millimetres, f"counter asked for {of}", _PLANNING)


_ASKED: Mapping[PlaceKind, tuple[Limit | None, Limit]] = {
    "cooking": (_asked("beside_cooking", "12", "305", "on one side of what is cooked on"),
                _asked("across_cooking", "15", "380", "on the other side of it")),
    "sink": (_asked("beside_sink", "18", "460", "on one side of a sink"),
             _asked("across_sink", "24", "610", "on the other side of it")),
    "high": (None, _asked("beside_high", "15", "380", "beside a refrigerator or an oven")),
}  # fmt: skip
"""Counter on the side that has less, and on the other; None: none is asked for."""
_BEHIND = _asked("behind_cooking", "9", "230", "behind what is cooked on in an island")
_ACROSS = Limit("landing.across", "48", "1220", "how far a counter across may be", _PLANNING)


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        places = places_of(room, run)
        if not any(place.what in _ASKED for place in places):
            continue
        ends = counter_beyond(room, run, "left"), counter_beyond(room, run, "right")
        for number, place in enumerate(places):
            if place.what in _ASKED:
                left = counter_beside(places[:number][::-1], ends[0])
                right = counter_beside(places[number + 1 :], ends[1])
                yield from _judge(room, place, left, right)
    for island in room.islands:
        yield from _behind(room, island)


def _behind(room: Room, island: Island) -> Iterator[Breach]:
    """Counter behind what is cooked on in an island."""
    for run in room.runs_of(island):
        for each in run.appliances:
            if each.spec.cooks:
                own = reckoning(room, _NAME, f"{island.key}.{each.spec.key}")
                behind, need = _behind_it(room, own, island, run), own.limit(_BEHIND)
                if behind.value < need.value:
                    yield _too_near(own, island, each, behind)


def _behind_it(room: Room, own: Reckoning, island: Island, run: Run) -> Dim:
    """How much counter lies behind the boxes of a row [mm]."""
    nodes, front = room.chain.nodes, run.spec.key == island.spec.front
    doors = nodes[f"{island.key}.{'front' if front else 'back'}_doors"]
    deep = greatest(*(case.face_plane for case in run.cases))
    out = style_of(room, own, "island_front_overhang")
    return own.let("left", nodes[f"{island.key}.counter_depth"] - deep - doors - out)


def _too_near(own: Reckoning, island: Island, each: Appliance, left: Dim) -> Breach:
    least = own.limit(_BEHIND)
    behind, need, more = own.length(left), own.length(least), own.length(least - left, "more")
    return Breach(
        f"appliance.{each.spec.key}",
        tell(
            "{} of counter lie behind {} on {}; planning guidelines ask for {}",
            behind, each.spec.title, island.spec.title, need,
        ),
        measured=behind.text,
        limit=need.text,
        remedies=(
            tell("island_seat_overhang {} greater in [style]", more)
            if not island.spec.back else tell("the row behind {} deeper", more),
            "what is cooked on at a wall",
        ),
        own=own,
    )  # fmt: skip


def _judge(room: Room, place: CounterPlace, left: Counter, right: Counter) -> Iterator[Breach]:
    small, large = _ASKED[place.what]
    unit = room.spec.unit
    less, more = sorted((counted(left), counted(right)))
    least = Fraction(0) if small is None else small.of(unit)
    if less < least or more < large.of(unit):
        yield _breach(room, place, left, right)


def _breach(room: Room, place: CounterPlace, left: Counter, right: Counter) -> Breach:
    own, (small, large) = reckoning(room, _NAME, place.path), _ASKED[place.what]
    have = {"left": _long(own, "left", left), "right": _long(own, "right", right)}
    sides = ["plenty" if long is None else own.length(long) for long in have.values()]
    one = own.length(own.limit(large))
    asked = (
        tell("{} on one side", one)
        if small is None
        else tell("{} on one side and {} on the other", own.length(own.limit(small)), one)
    )
    says = tell(
        "beside {} {} of counter lie at the left and {} at the right; planning guidelines ask "
        "for {}",
        place.title, *sides, asked,
    )  # fmt: skip
    across = tell("a counter across from it, no more than {} away", own.length(own.limit(_ACROSS)))
    return Breach(
        place.path,
        says,
        measured=joined(", ", sides),
        limit=asked,
        remedies=(
            *_lacks(own, place, have),
            across if place.what == "high" else "another place in the run",
        ),
        own=own,
    )


def _lacks(own: Reckoning, place: CounterPlace, have: Mapping[str, Dim | None]) -> Iterator[str]:
    """What either side wants to what is asked for there: the side with more of it first."""
    small, large = _ASKED[place.what]
    left, right = have["left"], have["right"]
    more_left = right is not None and (left is None or left.value > right.value)
    for side, limit in zip(
        ("left", "right")[:: 1 if more_left else -1], (large, small), strict=True
    ):
        long = have[side]
        if limit is not None and long is not None and long.value < limit.of(own.unit):
            lack = own.length(own.limit(limit) - long, f"more_{side}")
            yield tell("{} more of base cases at its {}", lack, side)


def _long(own: Reckoning, side: str, counter: Counter) -> Dim | None:
    """How much counter lies at a side [mm]; None: plenty."""
    if counter is None:
        return None
    return own.let(side, total(*counter)) if counter else own.none


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
