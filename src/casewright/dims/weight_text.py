"""Weights as a shop reads them."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims.units import Unit
from casewright.sources import POUND

__all__ = ["weight_text"]


def weight_text(weight: Fraction, unit: Unit, *, fine: bool = False) -> str:
    """A weight in kilograms, with whole pounds before it in a job in inches.

    Parameters
    ----------
    weight
        [kg].
    unit
        Unit of the job.
    fine
        Kilograms to a tenth; else whole.

    Examples
    --------
    >>> weight_text(Fraction(27, 5), "in", fine=True), weight_text(Fraction(27, 5), "mm")
    ('12 lb (5.4 kg)', '5 kg')
    """
    tenths = round(10 * weight)
    kilos = f"{tenths // 10}.{tenths % 10} kg" if fine else f"{round(weight)} kg"
    return kilos if unit == "mm" else f"{round(weight / POUND)} lb ({kilos})"
