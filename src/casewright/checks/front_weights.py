"""What the fronts and the drawers of a case weigh."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.cases import Case
from casewright.room.model import Room

__all__ = ["front_weights"]


def front_weights(room: Room, case: Case) -> dict[str, Fraction]:
    """Weight of each front and of each drawer's box, from their parts, by their paths [kg]."""
    found: dict[str, Fraction] = {}
    stock = room.spec.stock
    for part in case.parts:
        if part.front:
            weight = part.weight(getattr(stock[part.stock], "density", Fraction(0)))
            found[part.front] = found.get(part.front, Fraction(0)) + weight
    return found
