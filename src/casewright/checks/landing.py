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
    ENDLESS,
    CounterPlace,
    PlaceKind,
    counter_beside,
    counter_beyond,
    places_of,
)
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Island, Room

__all__ = ["RULE"]

_ASKED: Mapping[PlaceKind, tuple[tuple[str, str], tuple[str, str]]] = {
    "cooking": (("12", "305"), ("15", "380")),
    "sink": (("18", "460"), ("24", "610")),
    "high": (("0", "0"), ("15", "380")),
}
"""Counter on the side that has less, and on the other [in, mm]."""


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
    nodes, need = room.chain.nodes, by_unit(room, "9", "230")
    depth, out = (
        nodes[f"{island.key}.counter_depth"].value,
        room.spec.style["island_front_overhang"],
    )
    for run in room.runs_of(island):
        front = run.spec.key == island.spec.front
        doors = nodes[f"{island.key}.{'front' if front else 'back'}_doors"].value
        deep = max(case.face_plane.value for case in run.cases)
        behind = depth - deep - doors - out.value
        for each in run.appliances if behind < need else ():
            if each.spec.cooks:
                more = length(room, need - behind)
                yield Breach(
                    f"appliance.{each.spec.key}",
                    f"{length(room, behind)} of counter lie behind {each.spec.title} on "
                    f"{island.spec.title}; planning guidelines ask for {length(room, need)}",
                    measured=length(room, behind),
                    limit=length(room, need),
                    remedies=(
                        f"island_seat_overhang {more} greater in [style]"
                        if not island.spec.back else f"the row behind {more} deeper",
                        "what is cooked on at a wall",
                    ),
                )  # fmt: skip


def _judge(room: Room, place: CounterPlace, left: Fraction, right: Fraction) -> Iterator[Breach]:
    small, large = (by_unit(room, *text) for text in _ASKED[place.what])
    less, more = sorted((left, right))
    if less >= small and more >= large:
        return
    lacks = [(large - more, "right" if right >= left else "left")] if more < large else []
    if less < small:
        lacks.append((small - less, "left" if right >= left else "right"))
    asked = (
        f"{length(room, large)} on one side"
        if not small
        else f"{length(room, small)} on one side and {length(room, large)} on the other"
    )
    yield Breach(
        place.path,
        f"beside {place.title} {_words(room, left)} of counter lie at the left and "
        f"{_words(room, right)} at the right; planning guidelines ask for {asked}",
        measured=f"{_words(room, left)}, {_words(room, right)}",
        limit=asked,
        remedies=(
            *(f"{length(room, lack)} more of base cases at its {side}" for lack, side in lacks),
            "another place in the run" if place.what != "high" else
            f"a counter across from it, no more than {length(room, by_unit(room, '48', '1220'))} "
            "away",
        ),
    )  # fmt: skip


def _words(room: Room, value: Fraction) -> str:
    return "plenty" if value >= ENDLESS else length(room, value)


RULE = Rule("landing", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
