"""How much of a straight way in plan lies within a convex shape."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from casewright.room.wall_stands import Spot

__all__ = ["share_inside"]


def share_inside(way: tuple[Spot, Spot], shape: Sequence[Spot]) -> Fraction:
    """Share of a way from one place to another that lies within a convex shape, exactly [-].

    Parameters
    ----------
    shape
        Corners in order, either way round.

    Sources
    -------
    Clipping of a line at each edge of a convex polygon in turn (a general method).
    """
    (x0, y0), (x1, y1) = way
    first, last = Fraction(0), Fraction(1)
    turned = 1 if _area(shape) >= 0 else -1
    for number, (bx, by) in enumerate(shape):
        ax, ay = shape[number - 1]
        # Where the way is inside this edge: at + share * by >= 0.
        at = turned * ((bx - ax) * (y0 - ay) - (by - ay) * (x0 - ax))
        more = turned * ((bx - ax) * (y1 - y0) - (by - ay) * (x1 - x0))
        if more > 0:
            first = max(first, -at / more)
        elif more < 0:
            last = min(last, -at / more)
        elif at <= 0:
            return Fraction(0)
    return max(last - first, Fraction(0))


def _area(shape: Sequence[Spot]) -> Fraction:
    """Twice its area, positive where its corners go round against the clock."""
    return sum(
        (shape[n - 1][0] * y - x * shape[n - 1][1] for n, (x, y) in enumerate(shape)), Fraction(0)
    )
