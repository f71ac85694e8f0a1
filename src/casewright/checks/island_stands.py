"""Islands are held by the floor alone: what they weigh, and what tips them until they are.

No wall holds an island. Loose, it turns over the front edge of its ladder on the side that is
pressed on; the more its counter stands out there, the less it takes. Its ladders are screwed to
cleats on the floor before the boxes go on, and nobody leans on it before that. A counter that
stands out over knees wants brackets or legs by its own maker's sheet, commonly from 10 in (250 mm)
on.

Passes
------
A job without an island.

Fails
-----
Two boxes of 30 in with seats behind them: about 130 lb; an overhang of 15 in.

Sources
-------
`common practice`. Reckoned: the island empty, without doors and counter, of even weight, rigid, on
a level floor; the press straight down at the counter's edge; nothing of the counter's own weight.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, kilograms, length
from casewright.findings import Severity
from casewright.room.lifting import lifted_weight
from casewright.room.model import Island, Room

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    for island in room.islands:
        yield _tips(room, island)
        seat = room.spec.style["island_seat_overhang"].value
        if not island.spec.back and seat > by_unit(room, "10", "250"):
            yield _overhang(room, island, seat)


def _weight(room: Room, island: Island) -> Fraction:
    cases = [case for run in room.runs_of(island) for case in run.cases]
    return sum((lifted_weight(room, each) for each in (*cases, room.case_of(island))), Fraction(0))


def _tips(room: Room, island: Island) -> Breach:
    """Over the front edge of its ladder, by a press on the edge of the counter there."""
    case, style = room.case_of(island), room.spec.style
    nodes = room.chain.nodes
    setback = style["toe_setback"].value
    seats = not island.spec.back
    # Behind a finished back the ladder ends at the boxes' rear; else it stands back as in front.
    out = nodes[f"{island.key}.back_depth"].value if seats else setback
    doors = Fraction(0) if seats else nodes[f"{island.key}.back_doors"].value
    over = style["island_seat_overhang" if seats else "island_front_overhang"].value
    arm = out + doors + over
    weight = _weight(room, island)
    press = weight * (case.depth.value / 2 - out) / arm
    return Breach(
        island.key,
        f"{island.spec.title} weighs about {kilograms(room, weight)} without doors, counter and "
        f"what is put in; loose, about {kilograms(room, press)} pressed on the edge of its counter"
        f"{' over the seats' if seats else ''}, {length(room, arm)} beyond its ladder, tip it",
        measured=kilograms(room, press),
        remedies=(
            "screw the cleats to the floor and the ladders to the cleats before a box stands",
            "two people for each box; the counter last, by those who made it",
        ),
    )


def _overhang(room: Room, island: Island, seat: Fraction) -> Breach:
    return Breach(
        island.key,
        f"the counter of {island.spec.title} stands out {length(room, seat)} over knees",
        measured=length(room, seat),
        limit=length(room, by_unit(room, "10", "250")),
        remedies=(
            "brackets on the backs' nailers or legs, by the sheet of who makes the counter",
            (
                f"island_seat_overhang {length(room, seat - by_unit(room, '10', '250'))} smaller "
                "in [style], where seats leave that much"
            ),
        ),
    )


RULE = Rule("island stands", Severity.NOTE, __doc__ or "", "common practice", _examine)
