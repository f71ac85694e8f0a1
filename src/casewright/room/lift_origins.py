"""Where the numbers of a lift come from, wherever they are told."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.dims import Given, Origin
from casewright.stock import StockList

__all__ = ["CLIPPED", "HANDS", "LIMIT", "density_of"]

_NIOSH = "niosh-lifting"
_CUBIC = 10**9  # cubic millimetres in a cubic metre

CLIPPED = Origin("solved", "what its clipped corners and bevels take off its face")
LIMIT = Origin("solved", "recommended weight limit of the lifting equation", _NIOSH)
HANDS: Mapping[str, Origin] = {
    "up": Origin("solved", "hands above the floor, where the equation gives least", _NIOSH),
    "out": Origin("solved", "hands from between the ankles: page 8", _NIOSH),
    "moved": Origin("solved", "how far the hands go up on that way", _NIOSH),
}
"""Where the hands are on the worst place of a lift's way, and how far they have moved by then."""


def density_of(stock: StockList, key: str) -> Given:
    """What a cubic millimetre of a stock weighs [kg]; nothing where it is not told."""
    value = Fraction(getattr(stock[key], "density", 0))
    return Given(value / _CUBIC, Origin("cited", f"{value} kg/m3"))
