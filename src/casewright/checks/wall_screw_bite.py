"""Wall screws that go into the stud far enough, and not too far.

A wall screw passes the nailer, the back, a shim at a hollow and the wall's board before it
meets the stud. Under style 'wall_bite' in the stud it holds too little; over 'wall_bite_most'
it may meet a cable or a pipe. The wall's board and the shim are reckoned from the style until
they are known. Use screws made to hang cabinets, never brittle drywall screws.

Passes
------
A 2 1/2 screw through a nailer of 23/32, a back of 7/32, a 1/16 shim and 1/2 board: 1 in bites.

Fails
-----
A 2 in screw there; a 3 in screw there.

Sources
-------
`common practice`; the two limits are style 'wall_bite' (this house's judgement) and
'wall_bite_most'.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning, style_of
from casewright.dims import Dim, Told, Way, tell
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.wall_fixing import WallFixing, wall_fixings
from casewright.sources import INCH

__all__ = ["RULE"]

_NAME = "wall screw bite"


def _examine(room: Room) -> Iterator[Breach]:
    low = room.spec.style["wall_bite"].value
    high = room.spec.style["wall_bite_most"].value
    for fixing in wall_fixings(room):
        if fixing.bite < low:
            yield _too_little(_Bite(room, fixing))
        elif fixing.bite > high:
            yield _too_much(_Bite(room, fixing))


class _Bite:
    """What a wall screw passes and how far it bites, as numbers."""

    def __init__(self, room: Room, fixing: WallFixing) -> None:
        own = reckoning(room, _NAME, fixing.case)
        self.room, self.own, self.case = room, own, fixing.case
        self.screw = own.given(f"{fixing.case}.wall_screw", fixing.screw)
        shim, board = style_of(room, own, "wall_shim"), style_of(room, own, "wallboard")
        self.passes = own.let("passes", fixing.through_case), shim, board
        self.bite = own.let("bite", self.screw - fixing.through_case - shim - board)

    def limit(self, key: str) -> Dim:
        """A limit of the style [mm]."""
        return style_of(self.room, self.own, key)

    @property
    def stack(self) -> Told:
        """What it passes, in words."""
        sizes = (self.screw, *self.passes, self.bite)
        return tell(
            "a {} wall screw passes {} of the case, {} of shim and {} of wallboard, and bites {}",
            *(self.own.length(size) for size in sizes),
        )


def _too_little(it: _Bite) -> Breach:
    own, low = it.own, it.limit("wall_bite")
    wanted = own.length(it.screw + low - it.bite, "wanted")
    return Breach(
        it.case,
        tell("{}, less than {}", it.stack, own.length(low)),
        measured=own.length(it.bite).text,
        limit=own.length(low).text,
        remedies=(tell("wall screws of {} or a little over", wanted),),
        own=own,
    )


def _too_much(it: _Bite) -> Breach:
    own, high = it.own, it.limit("wall_bite_most")
    step = INCH / 8 if own.unit == "in" else Fraction(1)
    longest = own.rounded("longest", it.screw - it.bite + high, step, Way.DOWN)
    return Breach(
        it.case,
        tell("{}, more than {}: a cable or a pipe may run there", it.stack, own.length(high)),
        measured=own.length(it.bite).text,
        limit=own.length(high).text,
        remedies=(
            tell("wall screws of {} at most", own.length(longest)),
            "find the cables and pipes before driving",
        ),
        own=own,
    )


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
