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

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from casewright.casework.cases import Case
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Appliance, Island, Room, Run
from casewright.room.run_ends import run_met
from casewright.sources import INCH

__all__ = ["RULE"]

_What = Literal["counter", "cooking", "sink", "high", "other"]
_ENDLESS = Fraction(10**6)
_STANDS_ON = ("counter", "base case")
_ASKED: Mapping[_What, tuple[tuple[str, str], tuple[str, str]]] = {
    "cooking": (("12", "305"), ("15", "380")),
    "sink": (("18", "460"), ("24", "610")),
    "high": (("0", "0"), ("15", "380")),
}
"""Counter on the side that has less, and on the other [in, mm]."""


class _Place(NamedTuple):
    """What stands in a run, from its left end to its right end."""

    what: _What
    path: str
    title: str
    width: Fraction


def _examine(room: Room) -> Iterator[Breach]:
    for run in room.runs:
        places = _places(room, run)
        if not any(place.what in _ASKED for place in places):
            continue
        ends = _end(room, run, "left"), _end(room, run, "right")
        for number, place in enumerate(places):
            if place.what in _ASKED:
                left = _counter(places[:number][::-1], ends[0])
                right = _counter(places[number + 1 :], ends[1])
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


def _places(room: Room, run: Run) -> list[_Place]:
    cases = {case.key: case for case in run.cases}
    appliances = {each.spec.key: each for each in run.appliances}
    heights = [case.height.value for case in run.cases if case.spec.kind == "base"]
    top = max(heights, default=room.spec.style["base_height"].value) + INCH
    found = []
    for key in run.spec.places:
        if key in cases:
            found.append(_case_place(room, cases[key]))
        elif key in appliances:
            found.append(_appliance_place(appliances[key], top))
    return found


def _case_place(room: Room, case: Case) -> _Place:
    spec = case.spec
    what: _What = "other"
    if spec.sink:
        what = "sink" if room.spec.appliances else "counter"
    elif spec.kind == "base" and spec.lid is None:
        what = "counter"
    elif (spec.appliance and not spec.is_hung) or any(
        row.appliance is not None for row in spec.rows
    ):
        what = "high"
    return _Place(what, case.key, spec.title, case.overall_width.value)


def _appliance_place(each: Appliance, top: Fraction) -> _Place:
    what: _What = "counter"
    if each.spec.cooks:
        what = "cooking"
    elif each.spec.height.value > top:
        what = "high"
    return _Place(what, f"appliance.{each.spec.key}", each.spec.title, each.width.value)


def _end(room: Room, run: Run, side: Literal["left", "right"]) -> Fraction:
    """Counter beyond the last case [mm]: on a filler, round a corner, on what stands there."""
    if run.spec.end(side) == "corner":
        return _ENDLESS
    wall = room.survey.walls.get(run.spec.on)
    beyond = run.spec.after if side == "left" else run.spec.before
    for thing in wall.things if wall is not None and beyond else ():
        if thing.spec.key == beyond and thing.spec.kind in _STANDS_ON:
            return _ENDLESS
    met = run_met(room.spec, run.spec, side)
    for case in room.cases if met is not None else ():
        if case.key == beyond and case.spec.kind == "base" and case.spec.lid is None:
            return _ENDLESS
    return sum((f.width.value for f in run.fillers if f.side == side), Fraction(0))


def _counter(outward: Sequence[_Place], beyond: Fraction) -> Fraction:
    """Counter from a place outward [mm]."""
    found = Fraction(0)
    for place in outward:
        if place.what != "counter":
            return found
        found += place.width
    return found + beyond


def _judge(room: Room, place: _Place, left: Fraction, right: Fraction) -> Iterator[Breach]:
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
    return "plenty" if value >= _ENDLESS else length(room, value)


RULE = Rule("landing", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
