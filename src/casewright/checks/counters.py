"""Counter along a run: on base cases, on what is no higher, on fillers and round corners."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Literal, NamedTuple

from casewright.casework.cases import Case
from casewright.dims import Dim
from casewright.room.footprints import counter_reach
from casewright.room.model import Appliance, Room, Run
from casewright.room.run_ends import run_met
from casewright.room.trims.bends import beyond_bend
from casewright.sources import INCH

__all__ = [
    "ENDLESS", "Counter", "CounterPlace", "PlaceKind", "counted", "counter_beside",
    "counter_beyond", "places_of",
]  # fmt: skip

PlaceKind = Literal["counter", "cooking", "sink", "high", "other"]
ENDLESS = Fraction(10**6)
"""Counter that goes on where nothing is counted: round a corner, on what stands there [mm]."""

Counter = tuple[Dim, ...] | None
"""Widths that make up a stretch of counter [mm]; None: it goes on where nothing is counted."""

_STANDS_ON = ("counter", "base case")


class CounterPlace(NamedTuple):
    """What stands in a run, from its left end to its right end.

    Parameters
    ----------
    what
        Counter, what is cooked on, a sink, what is higher than a counter, or anything else.
    path, title
        Of the case or the appliance; name in words.
    start, wide
        From the run's left datum; along the run [mm].
    deep
        From the wall to the edge of its counter [mm]; None: as deep as what is beside it.
    """

    what: PlaceKind
    path: str
    title: str
    start: Fraction
    wide: Dim
    deep: Fraction | None

    @property
    def width(self) -> Fraction:
        """Along the run [mm]."""
        return self.wide.value


def places_of(room: Room, run: Run) -> list[CounterPlace]:
    """Cases and appliances of a run, left to right."""
    cases = {
        case.key: (case, start.value) for case, start in zip(run.cases, run.starts, strict=True)
    }
    appliances = {each.spec.key: each for each in run.appliances}
    heights = [case.height.value for case in run.cases if case.spec.kind == "base"]
    top = max(heights, default=room.spec.style["base_height"].value) + INCH
    found = []
    for key in run.spec.places:
        if key in cases:
            found.append(_case_place(room, *cases[key]))
        elif key in appliances:
            found.append(_appliance_place(appliances[key], top))
    return found


def _case_place(room: Room, case: Case, start: Fraction) -> CounterPlace:
    spec = case.spec
    what: PlaceKind = "other"
    if spec.sink:
        what = "sink" if room.spec.appliances else "counter"
    elif spec.kind == "base" and spec.lid is None:
        what = "counter"
    elif (spec.appliance and not spec.is_hung) or any(
        row.appliance is not None for row in spec.rows
    ):
        what = "high"
    deep = counter_reach(room, case) if what == "counter" else None
    return CounterPlace(what, case.key, spec.title, start, case.overall_width, deep)


def _appliance_place(each: Appliance, top: Fraction) -> CounterPlace:
    what: PlaceKind = "counter"
    if each.spec.cooks:
        what = "cooking"
    elif each.spec.height.value > top:
        what = "high"
    deep = None if each.spec.depth is None else each.spec.depth.value
    key = f"appliance.{each.spec.key}"
    return CounterPlace(what, key, each.spec.title, each.start.value, each.width, deep)


def counter_beyond(room: Room, run: Run, side: Literal["left", "right"]) -> Counter:
    """Counter beyond the last case: on a filler, round a corner, on what stands there.

    A diagonal corner at its end has the run round it on its other side.
    """
    if run.spec.end(side) == "corner":
        return None
    other = beyond_bend(room.spec, run.spec, side)
    for each in room.runs if other is not None else ():
        if each.spec is other:
            places = places_of(room, each)
            return counter_beside(places if side == "right" else places[::-1], ())
    wall = room.survey.walls.get(run.spec.on)
    beyond = run.spec.after if side == "left" else run.spec.before
    for thing in wall.things if wall is not None and beyond else ():
        if thing.spec.key == beyond and thing.spec.kind in _STANDS_ON:
            return None
    met = run_met(room.spec, run.spec, side)
    for case in room.cases if met is not None else ():
        if case.key == beyond and case.spec.kind == "base" and case.spec.lid is None:
            return None
    return tuple(filler.width for filler in run.fillers if filler.side == side)


def counter_beside(outward: Sequence[CounterPlace], beyond: Counter) -> Counter:
    """Counter from a place outward."""
    found: list[Dim] = []
    for place in outward:
        if place.what != "counter":
            return tuple(found)
        found.append(place.wide)
    return None if beyond is None else (*found, *beyond)


def counted(counter: Counter) -> Fraction:
    """How long a stretch of counter is [mm]."""
    return ENDLESS if counter is None else sum((dim.value for dim in counter), Fraction(0))
