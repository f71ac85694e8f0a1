"""The outside of a case held to the size asked for."""

from __future__ import annotations

from casewright.casework.maker import Maker
from casewright.dims import Dim, greatest

__all__ = ["hold_outside"]

Sizes = tuple[Dim, Dim, Dim]


def hold_outside(maker: Maker, sizes: Sizes, wanted: Sizes) -> Dim:
    """Declare the fits of width, height and depth; returns how far they may stray [mm].

    Parameters
    ----------
    sizes, wanted
        Width, height and depth as they result from the parts, and as asked for [mm].
    """
    place = maker.place
    band = place.let("tolerance", greatest(maker.style("cut_step"), maker.style("gap_tolerance")))
    for name, real, asked in zip(("width", "height", "depth"), sizes, wanted, strict=True):
        place.fit(f"{name}_error", real - asked, -band.value, band.value, place.path)
    return band
