"""Rounding on a grid as value and remainder."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

__all__ = ["HAIR", "Way", "round_to"]

HAIR = Fraction(1, 4)
"""Share of a step that `Way.CLOSE` makes up [-]: what no saw is set to (common practice)."""


class Way(Enum):
    """Direction of rounding. Doors go down, fillers up.

    `CLOSE` goes down too, but not where the next mark above is a quarter of a step away or less:
    nobody gives up a whole step for a hair.
    """

    DOWN = "down"
    UP = "up"
    NEAREST = "nearest"
    CLOSE = "close"


def round_to(value: Fraction, step: Fraction, way: Way) -> tuple[Fraction, Fraction]:
    """Value on the grid and the remainder, exactly.

    Parameters
    ----------
    value
        Length [mm].
    step
        Grid [mm], over 0.
    way
        Nearest rounds a half up.

    Returns
    -------
    Rounded value and `value - rounded` [mm].

    Examples
    --------
    >>> round_to(Fraction(17, 2), Fraction(1), Way.DOWN)
    (Fraction(8, 1), Fraction(1, 2))
    """
    if step <= 0:
        msg = f"a rounding step must be over 0, not {step}"
        raise ValueError(msg)
    count = value / step
    if way is Way.DOWN:
        whole = count.__floor__()
    elif way is Way.UP:
        whole = count.__ceil__()
    elif way is Way.CLOSE:
        whole = (count + HAIR).__floor__()
    else:
        whole = (count + Fraction(1, 2)).__floor__()
    rounded = whole * step
    return rounded, value - rounded
