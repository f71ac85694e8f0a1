"""Weights as sentences tell them: numbers of the chain that nothing is built from."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Measure, Unit, weight_text

__all__ = ["LIFT", "lift_path", "told_weight"]

LIFT = "lift"
"""Under which they stand: `lift.CASE.weight`, `lift.CASE.PART.weight`."""


def lift_path(of: str, name: str = "weight") -> str:
    """Where a weight stands.

    Parameters
    ----------
    of
        Path of a case, a part or a trim.
    name
        It ends in 'weight'.
    """
    return f"{LIFT}.{of}.{name}"


def told_weight(kilos: Fraction, unit: Unit, path: str, *, fine: bool = False) -> Measure:
    """A weight as `weight_text` writes it.

    Parameters
    ----------
    kilos
        [kg].
    unit
        Unit of the job.
    path
        Its own.
    fine
        Kilograms to a tenth; else whole.
    """
    return Measure(kilos, unit, path, said=weight_text(kilos, unit, fine=fine))
