"""Angles in degrees, and how well they are known: for the eye, and to compare readings."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, slack

__all__ = ["Angle", "angle_of", "departure_mm"]

_FLAT = 1e-12


@dataclass(frozen=True, slots=True)
class Angle:
    """An angle.

    Parameters
    ----------
    degrees, sigma_degrees
        Its size, and its standard deviation [deg].
    """

    degrees: float
    sigma_degrees: float


def angle_of(cosine: Dim) -> Angle:
    """The angle of a cosine on the chain, with the deviations of the readings behind it.

    First-order propagation: the deviation of the cosine over the sine.
    """
    near = max(-1.0, min(1.0, float(cosine.value)))
    sine = math.sqrt(max(1.0 - near * near, _FLAT))
    found = slack(cosine)
    strays = math.hypot(found.sigma_mm, found.bias_mm)
    return Angle(math.degrees(math.acos(near)), math.degrees(strays / sine))


def departure_mm(cosine: Fraction, depth: Fraction) -> float:
    """How far a wall departs from square over a depth, D / tan(angle) [mm].

    Above 0 where the corner is sharper than square, so that the wall comes in.

    Parameters
    ----------
    cosine
        Of the corner [-].
    depth
        Out from the other wall [mm].
    """
    near = max(-1.0, min(1.0, float(cosine)))
    return float(depth) * near / math.sqrt(max(1.0 - near * near, _FLAT))
