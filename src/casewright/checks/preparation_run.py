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
    CounterPlace,
    counter_beside,
    counter_beyond,
    places_of,
)
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Room, Run

__all__ = ["RULE"]


class _Beside(NamedTuple):
    """Counter of enough depth at either side of a sink [mm]."""

    sink: CounterPlace
    left: Fraction
    right: Fraction


def _examine(room: Room) -> Iterator[Breach]:
    wide = by_unit(room, "36", "915")
    found = [each for run in room.runs for each in _sinks(room, run)]
    if not found or any(max(each.left, each.right) >= wide for each in found):
        return
    best = max(found, key=lambda each: max(each.left, each.right))
    deep = length(room, by_unit(room, "24", "610"))
    more = wide - max(best.left, best.right)
    side = "left" if best.left > best.right else "right"
    sizes = f"{length(room, best.left)} at the left and {length(room, best.right)} at the right"
    yield Breach(
        best.sink.path,
        f"beside {best.sink.title} {sizes} of unbroken counter are {deep} deep; planning "
        f"guidelines ask for {length(room, wide)} in one piece beside a sink",
        measured=length(room, max(best.left, best.right)),
        limit=length(room, wide),
        remedies=(
            f"{length(room, more)} more of base cases at its {side}",
            "what breaks the counter at another place in the run",
        ),
    )


def _sinks(room: Room, run: Run) -> Iterator[_Beside]:
    places = places_of(room, run)
    islands = {key for each in room.spec.islands for key in (each.front, each.back)}
    # The counter of an island goes over both of its rows.
    deep = Fraction(0) if run.spec.key in islands else by_unit(room, "24", "610")
    for number, place in enumerate(places):
        if place.what == "sink":
            left = _counter(places[:number][::-1], counter_beyond(room, run, "left"), deep)
            right = _counter(places[number + 1 :], counter_beyond(room, run, "right"), deep)
            yield _Beside(place, left, right)


def _counter(outward: Sequence[CounterPlace], beyond: Fraction, deep: Fraction) -> Fraction:
    """Counter from a sink outward as far as it is deep enough [mm]."""
    enough = [*takewhile(lambda place: place.deep is None or place.deep >= deep, outward)]
    return counter_beside(enough, beyond if len(enough) == len(outward) else Fraction(0))


RULE = Rule("preparation run", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
