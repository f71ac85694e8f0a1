"""How wide a filler must be for the doors of the case beside it to open to a right angle."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import Case, Door
from casewright.dims import Unit
from casewright.hardware import HardwareList
from casewright.room.specs import RunSide
from casewright.sources import INCH

__all__ = ["doors_toward", "filler_for_door"]

_AIR: dict[Unit, Fraction] = {"in": INCH / 8, "mm": Fraction(3)}


def doors_toward(case: Case, side: RunSide) -> list[Door]:
    """Outermost doors of a case that are hinged at a side and have pulls."""
    doors = [front for front in case.wall_fronts if isinstance(front, Door)]
    own = [front for front in doors if front.hinge_side == side and front.pull]
    x = min if side == "left" else max
    outer = x((front.x.value for front in doors), default=None)
    return [front for front in own if front.x.value == outer]


def filler_for_door(
    hardware: HardwareList, unit: Unit, case: Case, door: Door, side: RunSide
) -> Fraction:
    """The least filler at a side of a case whose door is hinged there [mm].

    Sources
    -------
    `common practice`: the projection of the pull, what the hinge asks for by its sheet, and
    1/8 in, or 3 mm; less the edge of the box left bare beside the door, which the pull has too.
    """
    bare = door.x.value
    if side == "right":
        bare = case.width.value - bare - door.width.value
    return hardware.pull.projection.value + hardware.hinge.stand_off.value + _AIR[unit] - bare
