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
from casewright.checks.words import hinge_of, reckoning
from casewright.dims import Dim, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "door beside front"
_LEAST = Limit("door_beside_front.least", "1/16", "1.5", "under that two painted fronts rub")


class _Seam(NamedTuple):
    """Two fronts side by side in neighbouring cases, the left one that wide [mm]."""

    left: Front
    right: Front
    wide: Dim

    @property
    def air(self) -> Fraction:
        """Between them [mm]."""
        left = self.left
        return self.wide.value - left.x.value - left.width.value + self.right.x.value

    @property
    def gap(self) -> Dim:
        """`air`, as it follows [mm]."""
        return self.wide - self.left.x - self.left.width + self.right.x

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
    least = _LEAST.of(room.spec.unit)
    for face in case.faces:
        held = [gap for gap in face.gaps if _holds(room, gap)]
        narrowest = min(held, key=lambda gap: gap.value, default=None)
        if narrowest is not None and narrowest.value < least:
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
            yield _strikes_end(room, case, front, hand)


def _strikes_end(room: Room, case: Case, front: Front, hand: Hand) -> Breach:
    own = reckoning(room, _NAME, f"{front.path}.end")
    out = hinge_of(room, own, "stand_off")
    gap = own.let("air", front.x if hand == "left" else case.width - front.x - front.width)
    air, stands = own.length(gap), own.length(out)
    return Breach(
        front.path,
        tell(
            "{} lies between {} and the flush end beside it; at a right angle the door stands "
            "out {} by the hinge's sheet",
            air, front.path, stands,
        ),
        measured=air.text,
        limit=stands.text,
        remedies=(
            tell("a reveal {} greater for this case", own.length(out - gap, "more")),
            "the door hinged on its other side",
            'a skin instead: end = "skin"',
        ),
        own=own,
    )  # fmt: skip


def _seams(room: Room, one: Case, other: Case) -> Iterator[_Seam]:
    for left in _outermost(one, right=True):
        for right in _outermost(other, right=False):
            low = max(_height(room, one, left), _height(room, other, right))
            high = min(_height(room, case, front) + front.height.value
                       for case, front in ((one, left), (other, right)))  # fmt: skip
            if low < high:
                yield _Seam(left, right, one.width)


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
    out = seam.swinging * room.spec.hardware.hinge.stand_off.value
    if seam.air < _LEAST.of(room.spec.unit):
        yield _rubs(room, seam.right.path, seam.gap, "reveal")
    elif seam.air < out:
        yield _swings_into(room, seam)


def _swings_into(room: Room, seam: _Seam) -> Breach:
    own, count = reckoning(room, _NAME, seam.right.path), seam.swinging
    gap, sheet = own.let("air", seam.gap), hinge_of(room, own, "stand_off")
    out = own.let("out", sheet if count == 1 else sheet * count)
    who = "both doors, open, stand" if count > 1 else "the door hinged there stands"
    air, stands = own.length(gap), own.length(out)
    most = own.length(gap if count == 1 else gap / count, "most")
    return Breach(
        seam.right.path,
        tell(
            "{} lies between {} and {}; at a right angle {} out {} by the hinge's sheet",
            air, seam.left.path, seam.right.path, who, stands,
        ),
        measured=air.text,
        limit=stands.text,
        remedies=(
            tell("a reveal {} greater in [style], at both", own.length((out - gap) / 2, "more")),
            "one of the doors hinged on its other side",
            tell("a hinge that stands out {} at most: stand_off under [hardware.hinge]", most),
        ),
        own=own,
    )  # fmt: skip


def _rubs(room: Room, path: str, gap: Dim, key: str) -> Breach:
    own = reckoning(room, _NAME, path)
    lacks = own.limit(_LEAST) - gap
    air, least = own.length(gap, "air"), own.length(own.limit(_LEAST))
    more = own.length(lacks / 2 if key == "reveal" else lacks, "more")
    return Breach(
        path,
        tell(
            "{} is left between {} and the front beside it: under {} they rub once they are "
            "painted",
            air, path, least,
        ),
        measured=air.text,
        limit=least.text,
        remedies=(tell("a {} {} greater in [style]", key, more),),
        own=own,
    )  # fmt: skip


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
