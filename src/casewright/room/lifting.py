"""What is lifted when a case goes to its wall."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import Case
from casewright.room.model import Room

__all__ = ["lifted_weight"]

_LOOSE = ("shelf", "plinth rail", "sleeper")


def lifted_weight(room: Room, case: Case) -> Fraction:
    """Weight of the box as it is carried: no doors, loose shelves or plinth [kg]."""
    return sum(
        (
            part.weight(getattr(room.spec.stock[part.stock], "density", Fraction(0)))
            for part in case.lifted
            if part.role not in _LOOSE
        ),
        Fraction(0),
    )
