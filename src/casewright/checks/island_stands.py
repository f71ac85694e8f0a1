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

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of, weight_of
from casewright.dims import Dim, tell, total
from casewright.findings import Limit, Reckoning, Severity
from casewright.room.lifting import carried_parts
from casewright.room.model import Island, Room

__all__ = ["RULE"]

_NAME = "island stands"
_FAR = Limit("island_stands.far", "10", "250", "how far a counter stands out without brackets")


def _examine(room: Room) -> Iterator[Breach]:
    for island in room.islands:
        yield _tips(room, island)
        seat = room.spec.style["island_seat_overhang"].value
        if not island.spec.back and seat > _FAR.of(room.spec.unit):
            yield _overhang(room, island)


def _weight(room: Room, own: Reckoning, island: Island) -> Dim:
    cases = [case for run in room.runs_of(island) for case in run.cases]
    boxes = [
        own.let(f"{each.key}.weight", weight_of(room, own, carried_parts(each)))
        for each in (*cases, room.case_of(island))
    ]
    return own.let("weight", total(*boxes))


def _tips(room: Room, island: Island) -> Breach:
    """Over the front edge of its ladder, by a press on the edge of the counter there."""
    case, own, nodes = room.case_of(island), reckoning(room, _NAME, island.key), room.chain.nodes
    seats = not island.spec.back
    # Behind a finished back the ladder ends at the boxes' rear; else it stands back as in front.
    out = nodes[f"{island.key}.back_depth"] if seats else style_of(room, own, "toe_setback")
    arm = out if seats else out + nodes[f"{island.key}.back_doors"]
    over = "island_seat_overhang" if seats else "island_front_overhang"
    arm = own.let("arm", arm + style_of(room, own, over))
    weight = _weight(room, own, island)
    press = own.weight(weight * (case.depth / 2 - out) / arm, "press_weight")
    return Breach(
        island.key,
        tell(
            "{} weighs about {} without doors, counter and what is put in; loose, about {} "
            "pressed on the edge of its counter{}, {} beyond its ladder, tip it",
            island.spec.title, own.weight(weight), press, " over the seats" if seats else "",
            own.length(arm),
        ),
        measured=press.text,
        remedies=(
            "screw the cleats to the floor and the ladders to the cleats before a box stands",
            "two people for each box; the counter last, by those who made it",
        ),
        own=own,
    )  # fmt: skip


def _overhang(room: Room, island: Island) -> Breach:
    own = reckoning(room, _NAME, f"{island.key}.seats")
    seat, far = style_of(room, own, "island_seat_overhang"), own.limit(_FAR)
    out, smaller = own.length(seat), own.length(seat - far, "smaller")
    return Breach(
        island.key,
        tell("the counter of {} stands out {} over knees", island.spec.title, out),
        measured=out.text,
        limit=own.length(far).text,
        remedies=(
            "brackets on the backs' nailers or legs, by the sheet of who makes the counter",
            tell("island_seat_overhang {} smaller in [style], where seats leave that much",
                 smaller),
        ),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.NOTE, __doc__ or "", "common practice", _examine)
