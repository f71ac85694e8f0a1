"""The jigs of a job, worked out from its model."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.dims import Chain, Unit, least
from casewright.jigs.corners import corner_templates
from casewright.jigs.model import UNIT_PARTS, Jigs, Spacer, Square
from casewright.jigs.numbers import JigNumbers
from casewright.jigs.sticks import sticks
from casewright.jigs.templates import templates
from casewright.room.model import Room
from casewright.sources import INCH

__all__ = ["jigs"]

_SPACERS = 4
_LEG: Mapping[Unit, Fraction] = {"in": INCH, "mm": Fraction(20)}
"""Steps of the long leg of a square, so that the others are on the tape as well [mm]."""


def jigs(room: Room, chain: Chain) -> Jigs:
    """What is worth making before the work begins.

    Parameters
    ----------
    chain
        That holds the room's numbers; those of the jigs are entered into it, once.
    """
    numbers = JigNumbers(room, chain)
    return Jigs(
        tuple(templates(numbers)),
        tuple(sticks(numbers)),
        tuple(_spacers(numbers)),
        tuple(_squares(numbers)),
        tuple(corner_templates(numbers)),
    )


def _spacers(numbers: JigNumbers) -> Iterator[Spacer]:
    """Strips for the gap of the style, where fronts have gaps between them."""
    room = numbers.room
    if not any(face.gaps or face.leaves for case in room.cases for face in case.faces):
        return
    gap = numbers.named("gap", "thickness", numbers.style("gap"))
    how = (
        "Plane them to the calliper, or pack card to it. Put two under a leaf and two beside it "
        "while its plates are tightened; between two leaves they show the gap all the way up."
    )
    yield Spacer("jig.gap", "Gap spacers", how, gap, _SPACERS)


def _squares(numbers: JigNumbers) -> Iterator[Square]:
    """Two squares that go into the smallest box."""
    room = numbers.room
    boxes = room.boxes
    if not boxes:
        return
    most = numbers.style("jig_square")
    insides = [side for case in boxes for side in (case.width, case.depth)]
    free = least(most, *(each / Fraction(2) for each in insides))
    long = numbers.on_grid("square", "long", free, _LEG[room.spec.unit])
    part = long / UNIT_PARTS[0]
    short = numbers.named("square", "short", part * UNIT_PARTS[1])
    across = numbers.named("square", "across", part * UNIT_PARTS[2])
    how = (
        "Cut two right triangles out of a flat offcut and take off the point at the right angle, "
        "so that glue finds room. Check them: between the ends of the legs it must read what is "
        "told. Clamp them into opposite corners before the screws go in."
    )
    yield Square("jig.square", "Assembly squares", how, long, short, across)
