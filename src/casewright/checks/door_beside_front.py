"""Fronts so close that they rub, or that an opening door runs into its neighbour.

Two fronts side by side need air for paint, damp weather and the hinge's adjustment: not under
1/16 in, or 1.5 mm. And a door opened to a right angle stands out a little past its closed edge;
how far is the hinge's own affair, the sheet in its box tells (`stand_off`). At a seam where both
doors are hinged, both may be open at once. The edge of a flush end is a neighbour like any front.

Passes
------
A run of pairs with reveals of 1/16: 1/8 between neighbours, on hinges that stand out 1.5 mm.

Fails
-----
The same run with reveals of 1/32; a pair with a gap of 1/32.

Sources
-------
`common practice`: 2 to 3 mm between fronts, never under 1.5; how far a usual hinge stands out, on
doors of 16 to 19 mm, is from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Case, Door, Front
from casewright.casework.specs import Hand
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import by_unit, length
from casewright.dims import Dim
from casewright.findings import Severity
from casewright.room.model import Room

__all__ = ["RULE"]


class _Seam(NamedTuple):
    """Two fronts side by side in neighbouring cases, and the air between them [mm]."""

    left: Front
    right: Front
    air: Fraction

    @property
    def swinging(self) -> int:
        """How many of the two are doors hinged here."""
        sides = ((self.left, "right"), (self.right, "left"))
        return sum(isinstance(front, Door) and front.hinge_side == side for front, side in sides)


def _examine(room: Room) -> Iterator[Breach]:
    for case in room.cases:
        yield from _in_case(room, case)
    for run in room.runs:
        for one, other in run.neighbours:
            # Rows of fronts over one another meet their neighbours alike: one word is enough.
            told = (list(_at_seam(room, seam)) for seam in _seams(room, one, other))
            yield from next((breaches for breaches in told if breaches), ())


def _in_case(room: Room, case: Case) -> Iterator[Breach]:
    least = by_unit(room, "1/16", "1.5")
    for face in case.faces:
        narrowest = min((gap.value for gap in face.gaps if _holds(room, gap)), default=least)
        if narrowest < least:
            yield _rubs(room, face.leaves[-1], narrowest, "gap")
    if case.spec.end == "flush":
        told = (list(_at_end(room, case, hand)) for hand in case.spec.finished)
        yield from next((breaches for breaches in told if breaches), ())


def _holds(room: Room, gap: Dim) -> bool:
    """Whether a gap is within its band: the rule of fits tells one that is not."""
    fit = room.chain.fits.get(f"{gap.path}_fit")
    return fit is None or fit.holds


def _at_end(room: Room, case: Case, hand: Hand) -> Iterator[Breach]:
    """The outermost doors hinged beside a flush end."""
    out = room.spec.hardware.hinge.stand_off.value
    for front in _outermost(case, right=hand == "right"):
        past = case.width.value - front.x.value - front.width.value
        air = front.x.value if hand == "left" else past
        if isinstance(front, Door) and front.hinge_side == hand and air < out:
            yield Breach(
                front.path,
                f"{length(room, air)} lies between {front.path} and the flush end beside it; at a "
                f"right angle the door stands out {length(room, out)} by the hinge's sheet",
                measured=length(room, air),
                limit=length(room, out),
                remedies=(
                    f"a reveal {length(room, out - air)} greater for this case",
                    "the door hinged on its other side",
                    'a skin instead: end = "skin"',
                ),
            )


def _seams(room: Room, one: Case, other: Case) -> Iterator[_Seam]:
    for left in _outermost(one, right=True):
        for right in _outermost(other, right=False):
            low = max(_height(room, one, left), _height(room, other, right))
            high = min(_height(room, case, front) + front.height.value
                       for case, front in ((one, left), (other, right)))  # fmt: skip
            if low < high:
                margin = one.width.value - left.x.value - left.width.value
                yield _Seam(left, right, margin + right.x.value)


def _outermost(case: Case, *, right: bool) -> list[Front]:
    """The last front of each row, toward a neighbour."""
    rows: dict[str, Front] = {}
    for front in sorted(case.wall_fronts, key=lambda each: each.x.value, reverse=not right):
        rows[front.opening] = front
    return list(rows.values())


def _height(room: Room, case: Case, front: Front) -> Fraction:
    """Height of a front's lower end in the room [mm]."""
    foot = room.wall_bottom.value if case.spec.is_hung else Fraction(0)
    return foot + front.y.value


def _at_seam(room: Room, seam: _Seam) -> Iterator[Breach]:
    least = by_unit(room, "1/16", "1.5")
    out = seam.swinging * room.spec.hardware.hinge.stand_off.value
    if seam.air < least:
        yield _rubs(room, seam.right.path, seam.air, "reveal")
    elif seam.air < out:
        who = "both doors, open, stand" if seam.swinging > 1 else "the door hinged there stands"
        yield Breach(
            seam.right.path,
            f"{length(room, seam.air)} lies between {seam.left.path} and {seam.right.path}; at a "
            f"right angle {who} out {length(room, out)} by the hinge's sheet",
            measured=length(room, seam.air),
            limit=length(room, out),
            remedies=(
                f"a reveal {length(room, (out - seam.air) / 2)} greater in [style], at both",
                "one of the doors hinged on its other side",
                (
                    f"a hinge that stands out {length(room, seam.air / seam.swinging)} at most: "
                    "stand_off under [hardware.hinge]"
                ),
            ),
        )


def _rubs(room: Room, path: str, air: Fraction, key: str) -> Breach:
    limit = by_unit(room, "1/16", "1.5")
    least, lacks = length(room, limit), limit - air
    more = length(room, lacks / 2 if key == "reveal" else lacks)
    return Breach(
        path,
        f"{length(room, air)} is left between {path} and the front beside it: under {least} they "
        "rub once they are painted",
        measured=length(room, air),
        limit=least,
        remedies=(f"a {key} {more} greater in [style]",),
    )


RULE = Rule("door beside front", Severity.CARE, __doc__ or "", "common practice", _examine)
