"""Seats at an island without room for the knees, or too narrow for one more.

Who sits at a counter wants room under it for the knees, the more of it the lower it is: planning
guidelines ask for 12 in (305 mm) at a counter 42 in (1070 mm) high, 15 in (380 mm) at 36 in (915
mm), 18 in (460 mm) at 30 in (760 mm), and for 24 in (610 mm) of width for each who sits there. The
counter is reckoned as thick as the style's `counter`; between two of these heights the lower one
counts. How many sit there is told with what is asked for. Room to pass behind them is a matter of
where the island stands.

Passes
------
A counter 36 in high, 15 in over knees.

Fails
-----
The same counter 12 in over knees.

Sources
-------
`kitchen-planning`: 24, 15 and 12 in read in a secondary copy; 18 in from memory (that copy gives
12 at 30). The thickness of a counter is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.findings import Severity
from casewright.room.model import Island, Room
from casewright.sources import INCH

__all__ = ["RULE"]

_ASKED = ((("42", "1070"), ("12", "305")), (("36", "915"), ("15", "380")))
"""From a height of counter on, so much over knees [in, mm]; below all of them `_LOW`."""
_LOW = ("18", "460")
_A_SEAT = ("24", "610")
_NEAR = INCH / 2
"""Counters of 35 1/2 in count as 36 [mm]."""


def _examine(room: Room) -> Iterator[Breach]:
    for island in room.islands:
        if not island.spec.back:
            yield from _seated(room, island)


def _seated(room: Room, island: Island) -> Iterator[Breach]:
    style, nodes = room.spec.style, room.chain.nodes
    top = room.case_of(island).height.value + style["counter"].value
    need = next(
        (by_unit(room, *knees) for high, knees in _ASKED if top >= by_unit(room, *high) - _NEAR),
        by_unit(room, *_LOW),
    )
    over, each = style["island_seat_overhang"].value, by_unit(room, *_A_SEAT)
    long = nodes[f"{island.key}.counter_length"].value
    seats = int(long // each)
    if over < need:
        yield Breach(
            island.key,
            f"the counter of {island.spec.title} stands {length(room, over)} over knees, "
            f"{length(room, top)} above the floor; planning guidelines ask for "
            f"{length(room, need)} there, and {length(room, each)} of width for each of {seats}",
            measured=length(room, over),
            limit=length(room, need),
            remedies=(
                f"island_seat_overhang {length(room, need - over)} greater in [style]",
                "no seats: let people stand there",
            ),
        )
    if not seats:
        yield Breach(
            island.key,
            f"the counter of {island.spec.title} is {length(room, long)} long: one who sits there "
            f"takes {length(room, each)}",
            measured=length(room, long),
            limit=length(room, each),
            remedies=(f"boxes together {length(room, each - long)} wider",),
        )


RULE = Rule("seats at counter", Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
