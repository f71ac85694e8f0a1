"""Numbers of the chain that are no lengths: densities, weights, coefficients."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim, Origin

__all__ = ["plain_number"]


def plain_number(house: House, path: str, value: Fraction, power: int, origin: Origin) -> Dim:
    """A number that is no length, entered the first time it is asked for.

    Parameters
    ----------
    power
        Power of a length in it: 0 for a ratio or a weight, -3 for a density [-].
    """
    known = house.chain.nodes.get(path)
    if known is None:
        known = Dim("", (), value, power)
        known.origin = origin
        house.chain.register(path, known)
    return known
