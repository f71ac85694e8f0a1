"""Bands of hold points on a chain, so that each end of one says why it is what it is."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.dims import Chain, Dim, Origin
from casewright.resolve.hold_points import HoldPoint, hold_points
from casewright.room.model import Room

__all__ = ["HOLD", "band_path", "hold_numbers"]

HOLD = "hold"
"""Under which they stand on the chain."""

_WHY: Mapping[str, str] = {
    "go": "as far off as it may be read while every piece that waits fits as it is printed",
    "sound": "as far off as it may be read while what is read is itself right",
}


def band_path(point: HoldPoint, name: str, end: str) -> str:
    """Where an end of a band stands.

    Parameters
    ----------
    name
        Of the band: go or sound.
    end
        low or high.
    """
    return f"{HOLD}.{point.path}.{name}_{end}"


def hold_numbers(room: Room, chain: Chain) -> None:
    """Enter the bands of a room's hold points on a chain that holds the room's own."""
    for point in hold_points(room):
        planned = chain.nodes[point.path]
        for name, band in (("go", point.go), ("sound", point.sound)):
            if band is not None:
                _enter(chain, point, name, planned, band)


def _enter(
    chain: Chain, point: HoldPoint, name: str, planned: Dim, band: tuple[Fraction, Fraction]
) -> None:
    place, origin = chain.place(f"{HOLD}.{point.path}"), Origin("solved", _WHY[name])
    low, high = band
    if point.read is not None:  # what was planned stands on the chain no longer
        place.enter(f"{name}_low", low, origin)
        place.enter(f"{name}_high", high, origin)
        return
    under = place.enter(f"{name}_under", planned.value - low, origin)
    over = place.enter(f"{name}_over", high - planned.value, origin)
    place.let(f"{name}_low", planned - under)
    place.let(f"{name}_high", planned + over)
