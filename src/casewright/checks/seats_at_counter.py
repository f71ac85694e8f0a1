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
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.model import Island, Room
from casewright.sources import INCH

__all__ = ["RULE"]

_NAME = "seats at counter"
_PLANNING = "kitchen-planning"


def _knees(name: str, inches: str, millimetres: str, high: str) -> Limit:
    note = f"room for knees under a counter {high}"
    return Limit(f"seats.knees_{name}", inches, millimetres, note, _PLANNING)


_ASKED = (
    (Limit("seats.bar", "42", "1070", "a high counter", _PLANNING),
     _knees("bar", "12", "305", "42 in high")),
    (Limit("seats.counter", "36", "915", "a counter", _PLANNING),
     _knees("counter", "15", "380", "36 in high")),
)  # fmt: skip
"""From a height of counter on, so much over knees; below all of them `_LOW`."""
_LOW = _knees("table", "18", "460", "as low as a table")
_A_SEAT = Limit("seats.width", "24", "610", "width for each who sits there", _PLANNING)
_NEAR = INCH / 2
"""Counters of 35 1/2 in count as 36 [mm]."""


def _examine(room: Room) -> Iterator[Breach]:
    for island in room.islands:
        if not island.spec.back:
            yield from _seated(room, island)


def _seated(room: Room, island: Island) -> Iterator[Breach]:
    own, unit = reckoning(room, _NAME, island.key), room.spec.unit
    top = room.case_of(island).height + style_of(room, own, "counter")
    need = next(
        (knees for high, knees in _ASKED if top.value >= high.of(unit) - _NEAR),
        _LOW,
    )
    over = style_of(room, own, "island_seat_overhang")
    long = room.chain.nodes[f"{island.key}.counter_length"]
    seats = int(long.value // _A_SEAT.of(unit))
    if over.value < need.of(unit):
        yield _short(own, island, (over, top, own.limit(need)), seats)
    if not seats:
        each = own.limit(_A_SEAT)
        yield Breach(
            island.key,
            tell(
                "the counter of {} is {} long: one who sits there takes {}",
                island.spec.title, own.length(long), own.length(each),
            ),
            measured=own.length(long).text,
            limit=own.length(each).text,
            remedies=(tell("boxes together {} wider", own.length(each - long, "wider")),),
            own=own,
        )  # fmt: skip


def _short(own: Reckoning, island: Island, sizes: tuple[Dim, Dim, Dim], seats: int) -> Breach:
    over, top, need = sizes
    out, asked = own.length(over), own.length(need)
    return Breach(
        island.key,
        tell(
            "the counter of {} stands {} over knees, {} above the floor; planning guidelines ask "
            "for {} there, and {} of width for each of {}",
            island.spec.title, out, own.length(top, "top"), asked, own.length(own.limit(_A_SEAT)),
            seats,
        ),
        measured=out.text,
        limit=asked.text,
        remedies=(
            tell(
                "island_seat_overhang {} greater in [style]", own.length(need - over, "greater")
            ),
            "no seats: let people stand there",
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "kitchen-planning", _examine)
