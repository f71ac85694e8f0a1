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
from casewright.checks.words import length
from casewright.dims import Way, round_to
from casewright.findings import Severity
from casewright.room.model import Room
from casewright.room.wall_fixing import WallFixing, wall_fixings
from casewright.sources import INCH

__all__ = ["RULE"]


def _examine(room: Room) -> Iterator[Breach]:
    low = room.spec.style["wall_bite"].value
    high = room.spec.style["wall_bite_most"].value
    for fixing in wall_fixings(room):
        if fixing.bite < low:
            wanted = fixing.length + low - fixing.bite
            yield Breach(
                fixing.case,
                f"{_stack(room, fixing)}, less than {length(room, low)}",
                measured=length(room, fixing.bite),
                limit=length(room, low),
                remedies=(f"wall screws of {length(room, wanted)} or a little over",),
            )
        elif fixing.bite > high:
            yield Breach(
                fixing.case,
                f"{_stack(room, fixing)}, more than {length(room, high)}: a cable or a pipe may "
                "run there",
                measured=length(room, fixing.bite),
                limit=length(room, high),
                remedies=(
                    f"wall screws of {_most(room, fixing, high)} at most",
                    "find the cables and pipes before driving",
                ),
            )


def _most(room: Room, fixing: WallFixing, high: Fraction) -> str:
    """The longest that bite no deeper, down to an eighth of an inch or to a millimetre."""
    step = INCH / 8 if room.spec.unit == "in" else Fraction(1)
    return length(room, round_to(fixing.length - fixing.bite + high, step, Way.DOWN)[0])


def _stack(room: Room, fixing: WallFixing) -> str:
    return (
        f"a {length(room, fixing.length)} wall screw passes {length(room, fixing.case_depth)} of "
        f"the case, {length(room, fixing.shim)} of shim and {length(room, fixing.wallboard)} of "
        f"wallboard, and bites {length(room, fixing.bite)}"
    )


RULE = Rule("wall screw bite", Severity.CARE, __doc__ or "", "common practice", _examine)
