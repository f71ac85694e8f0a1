"""How lumber is counted when it is sold."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from casewright.sources.inch import FOOT, INCH

__all__ = ["BOARD_FOOT", "HardwoodTally", "board_feet", "hardwood_tally"]

BOARD_FOOT = 144 * INCH**3
"""One board foot [mm3], by definition: a square foot, an inch thick.

Sources
-------
`board-foot`.
"""

_HALF = Fraction(1, 2)


class HardwoodTally(NamedTuple):
    """What the yard writes down for one board.

    Parameters
    ----------
    surface
        Surface measure, whole square feet [ft2].
    board_feet
        What is paid for [board feet].
    """

    surface: int
    board_feet: Fraction


def board_feet(thickness: Fraction, width: Fraction, length: Fraction) -> Fraction:
    """Board feet in a piece, exactly.

    Parameters
    ----------
    thickness, width, length
        As it is counted, nominal or actual [mm].

    Returns
    -------
    Volume [board feet].

    Sources
    -------
    `board-foot`.
    """
    return thickness * width * length / BOARD_FOOT


def hardwood_tally(quarters: int, width: Fraction, length: Fraction) -> HardwoodTally:
    """Board feet of a rough hardwood board as the yard tallies it.

    Width as it is, length down to a whole foot, surface to the nearest whole square foot (a half
    goes up), thickness by name; under an inch counts as an inch.

    Parameters
    ----------
    quarters
        Thickness by name [quarter inches]: 5 for 5/4.
    width, length
        As measured [mm].

    Sources
    -------
    `nhla`; which way a half goes is our choice.
    """
    surface = (width / INCH * (length // FOOT) / 12 + _HALF).__floor__()
    return HardwoodTally(surface, surface * Fraction(max(quarters, 4), 4))
