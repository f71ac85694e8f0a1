"""The root of 2 between two fractions: what lies at 45 degrees is worked out exactly.

Lengths across a corner are multiples of the root of 2, which no fraction is. Each is taken a
hair under or a hair over, whichever can do no harm, and goes on to the grid the same way.
1393/985 and 3363/2378 are convergents of the root's continued fraction: their squares miss 2 by
one part in 985 squared and in 2378 squared, which no shop can measure.
"""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.maker import Maker
from casewright.dims import Dim, Place, Way

__all__ = ["OVER_ROOT_2", "UNDER_ROOT_2", "across", "onto_grid"]

UNDER_ROOT_2 = Fraction(1393, 985)
OVER_ROOT_2 = Fraction(3363, 2378)


def across(maker: Maker, place: Place, name: str, leg: Dim, way: Way) -> Dim:
    """The length that cuts a square corner at 45 degrees, on the grid [mm].

    Parameters
    ----------
    leg
        From the corner to either of its ends [mm].
    way
        Down where it must fit between, up where it must keep clear.

    Raises
    ------
    ValueError
        When it is to be rounded to the nearest: neither is safe then.
    """
    if way is Way.NEAREST:
        msg = f"{name} lies at 45 degrees: say which way is safe"
        raise ValueError(msg)
    exact = place.let(f"{name}_exact", leg * (UNDER_ROOT_2 if way is Way.DOWN else OVER_ROOT_2))
    return onto_grid(maker, place, name, exact, way)


def onto_grid(maker: Maker, place: Place, name: str, exact: Dim, way: Way) -> Dim:
    """A length on the grid that parts are cut to [mm]."""
    step = maker.style("cut_step").value
    if not step or not exact.value % step:
        return place.let(name, exact)
    return place.rounded(name, exact, step, way)[0]
