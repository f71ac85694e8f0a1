"""Gaps between doors that the swelling of their frames closes.

A stile of solid wood grows across its width from the day it is made to the dampest month: size x
coefficient of the wood x change of moisture. Hinges hold the outer edges of a pair, so that both
leaves grow towards each other; an inset door grows towards its case. A gap that is left with less
than 1/32 in will bind some day. Paint slows the change, but does not keep it away. Frames of
boards whose wood is not named are passed over.

Passes
------
A pair of flat-sawn poplar frames, stiles 2 1/2 wide, made at 8 % for a room that comes to 11 %,
1/8 apart.

Fails
-----
The same pair of red oak, made at 6 %.

Sources
-------
`wood-handbook`: equation 13-2 and table 13-5; what must be left is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from casewright.casework.cases import Case, Face
from casewright.casework.parts import Part
from casewright.casework.specs import front_spec
from casewright.casework.wood import movement_of
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Dim, Origin, tell
from casewright.findings import Limit, Severity
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "wood movement"
_KEPT = Limit("wood_movement.kept", "1/32", "0.8", "what must be left, or a door binds some day")
_BINDS = "closes it: the doors bind"


def _examine(room: Room) -> Iterator[Breach]:
    moisture = room.spec.moisture
    more = moisture.damp.value - moisture.made.value
    if more <= 0:
        return
    for case in room.cases:
        for face in case.faces:
            for leaves, gap in _gaps(case, face):
                grown = more * sum((_growing(room, case, leaf) for leaf in leaves), Fraction(0))
                if grown and gap.value - grown < _KEPT.of(room.spec.unit):
                    parts = [part for leaf in leaves for part in _across(case, leaf)]
                    yield _breach(room, leaves[-1], gap, (grown, parts))


def _gaps(case: Case, face: Face) -> Iterator[tuple[tuple[str, ...], Dim]]:
    """Each gap that leaves grow into, with those leaves: between a pair; beside a lone inset one.

    A door over the edge of its box has nothing beside its free edge.
    """
    pairs = zip(pairwise(face.leaves), face.gaps, strict=False)
    yield from (((one, other), gap) for (one, other), gap in pairs)
    asked = front_spec(case.spec, face.opening)
    hung = {door.path: door.hinge_side for door in case.doors}
    if asked is not None and asked.overlay == "inset" and len(face.leaves) == 1:
        left = hung.get(face.leaves[0]) == "right"
        yield face.leaves, face.left if left else face.right


def _growing(room: Room, case: Case, leaf: str) -> Fraction:
    """How much a leaf grows in width for each percent of moisture [mm/%]."""
    return sum((_moves(room, part) for part in _across(case, leaf)), Fraction(0))


def _across(case: Case, leaf: str) -> list[Part]:
    return [part for part in case.parts if part.front == leaf and _is_across(part)]


def _is_across(part: Part) -> bool:
    """Whether its width adds to that of its door; a panel moves inside its grooves."""
    return part.role != "panel" and part.placed.orientation.width.axis == 0


def _moves(room: Room, part: Part) -> Fraction:
    return part.finished.width.value * (movement_of(room.spec.stock[part.stock]) or 0)


def _breach(room: Room, leaf: str, gap: Dim, grows: tuple[Fraction, list[Part]]) -> Breach:
    own, (grown, parts) = reckoning(room, _NAME, leaf), grows
    grow = own.worked("grown", grown, _grows(room, parts), *(p.finished.width for p in parts))
    need, left = own.limit(_KEPT), own.let("left", gap - grow)
    kept = left if left.value > 0 else own.none
    says = tell("leaves {} of it", own.length(left)) if left.value > 0 else _BINDS
    return Breach(
        leaf,
        tell(
            "the gap beside it is {} as made; in the dampest month the swelling of the frames {}",
            own.length(gap, "gap"), says,
        ),
        measured=own.length(kept).text,
        limit=own.length(need).text,
        remedies=(
            "boards kept in the room until they are as moist as it makes them",
            tell("a gap of {} or more", own.length(gap + need - left, "wide_enough")),
            "quarter-sawn boards, which move about half as much",
        ),
        own=own,
    )  # fmt: skip


def _grows(room: Room, parts: list[Part]) -> Origin:
    """Width x coefficient of the wood x change of moisture, with its figures."""
    moisture, stock = room.spec.moisture, room.spec.stock
    keys = dict.fromkeys(part.stock for part in parts)
    woods = " and ".join(
        f"{float(movement_of(stock[key]) or 0):.5f} a percent ({stock[key].title})" for key in keys
    )
    more = float(moisture.damp.value - moisture.made.value)
    return Origin("solved", f"widths x {woods} x {more:g} percent of moisture", "wood-handbook")


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "wood-handbook", _examine)
