"""No unbroken counter beside a sink to prepare a meal on.

Vegetables are washed, cut and laid out beside the sink. Planning guidelines ask for 36 in (915 mm)
of unbroken counter, 24 in (610 mm) deep, right beside a sink; one sink that has it is enough. It
is guidance, no code. The counter is counted from the edges of the sink's case, on base cases and
on what is no higher, each with its doors and what the counter stands out before them, and on
fillers; round a corner it is taken to go on. Sinks are looked at in jobs that have appliances.

Passes
------
A sink base with a base case of 36 at one side.

Fails
-----
A sink base with base cases of 30 and 17 beside it, a range after the second.

Sources
-------
`kitchen-planning`: both read in a secondary copy. How it is counted is this house's own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import takewhile
from typing import NamedTuple

from casewright.checks.counters import (
    Counter,
    CounterPlace,
    counted,
    counter_beside,
    counter_beyond,
    places_of,
)
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, tell, total
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Room, Run

__all__ = ["RULE"]

_NAME = "preparation run"
_PLANNING = "kitchen-planning"
_WIDE = Limit("preparation_run.wide", "36", "915", "counter to prepare a meal on", _PLANNING)
_DEEP = Limit("preparation_run.deep", "24", "610", "how deep it is to be", _PLANNING)


class _Beside(NamedTuple):
    """Counter of enough depth at either side of a sink."""

    sink: CounterPlace
    left: Counter
    right: Counter

    @property
    def most(self) -> Fraction:
        """On the side that has more of it [mm]."""
        return max(counted(self.left), counted(self.right))


def _examine(room: Room) -> Iterator[Breach]:
    wide = _WIDE.of(room.spec.unit)
    found = [each for run in room.runs for each in _sinks(room, run)]
    if found and all(each.most < wide for each in found):
        yield _breach(room, max(found, key=lambda each: each.most))


def _breach(room: Room, best: _Beside) -> Breach:
    own = reckoning(room, _NAME, best.sink.path)
    left, right = _long(own, "left", best.left), _long(own, "right", best.right)
    side, most = ("left", left) if left.value > right.value else ("right", right)
    wide = own.limit(_WIDE)
    more, asked = own.length(wide - most, "more"), own.length(wide)
    return Breach(
        best.sink.path,
        tell(
            "beside {} {} at the left and {} at the right of unbroken counter are {} deep; "
            "planning guidelines ask for {} in one piece beside a sink",
            best.sink.title, own.length(left), own.length(right), own.length(own.limit(_DEEP)),
            asked,
        ),
        measured=own.length(most).text,
        limit=asked.text,
        remedies=(
            tell("{} more of base cases at its {}", more, side),
            "what breaks the counter at another place in the run",
        ),
        own=own,
    )  # fmt: skip


def _long(own: Reckoning, side: str, counter: Counter) -> Dim:
    return own.let(side, total(*counter)) if counter else own.none


def _sinks(room: Room, run: Run) -> Iterator[_Beside]:
    places = places_of(room, run)
    islands = {key for each in room.spec.islands for key in (each.front, each.back)}
    # The counter of an island goes over both of its rows.
    deep = Fraction(0) if run.spec.key in islands else _DEEP.of(room.spec.unit)
    for number, place in enumerate(places):
        if place.what == "sink":
            left = _counter(places[:number][::-1], counter_beyond(room, run, "left"), deep)
            right = _counter(places[number + 1 :], counter_beyond(room, run, "right"), deep)
            yield _Beside(place, left, right)


def _counter(outward: Sequence[CounterPlace], beyond: Counter, deep: Fraction) -> Counter:
    """Counter from a sink outward as far as it is deep enough."""
    enough = [*takewhile(lambda place: place.deep is None or place.deep >= deep, outward)]
    return counter_beside(enough, beyond if len(enough) == len(outward) else ())


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
