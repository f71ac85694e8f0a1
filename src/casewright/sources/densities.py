"""What materials weigh."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from casewright.sources.provenance import Provenance

__all__ = ["DENSITIES", "SPECIFIC_GRAVITY", "Density", "SpecificGravity", "wood_density"]


@dataclass(frozen=True, slots=True)
class Density:
    """Weight by volume.

    Parameters
    ----------
    low, high
        What is met with [kg/m3].
    usual
        What to reckon with when nothing better is known [kg/m3].
    """

    low: int
    usual: int
    high: int
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class SpecificGravity:
    """Ovendry weight over the volume at 12 % moisture, relative to water [-]."""

    value: Fraction
    provenance: Provenance


_AVERAGE = Provenance("trade-averages", "secondary copy")
_AVERAGE_MEMORY = Provenance("trade-averages", "from memory")
_READ = Provenance("wood-handbook", "secondary copy")
_MEMORY = Provenance("wood-handbook", "from memory")

DENSITIES: Mapping[str, Density] = MappingProxyType({
    "hardwood plywood": Density(
        545, 590, 670,
        Provenance("trade-averages", "secondary copy", "2.3 lb/ft2 at 3/4 in; range from memory"),
    ),
    "softwood plywood": Density(510, 577, 577, _AVERAGE),
    "birch plywood": Density(660, 680, 690, _AVERAGE_MEMORY),
    "fibreboard": Density(700, 770, 1000, _AVERAGE),
    "particleboard": Density(680, 745, 770, _AVERAGE_MEMORY),
    "acrylic": Density(1180, 1190, 1190, Provenance("plastic-sheets", "secondary copy")),
    "polycarbonate": Density(1200, 1200, 1200, Provenance("plastic-sheets", "from memory")),
    "glass": Density(2400, 2500, 2530, Provenance("glass-sheets", "from memory")),
})  # fmt: skip
"""Panels, plastics and glass."""

SPECIFIC_GRAVITY: Mapping[str, SpecificGravity] = MappingProxyType(
    {
        "yellow-poplar": SpecificGravity(Fraction("0.42"), _MEMORY),
        "red maple": SpecificGravity(Fraction("0.54"), _READ),
        "sugar maple": SpecificGravity(Fraction("0.63"), _READ),
        "northern red oak": SpecificGravity(Fraction("0.63"), _READ),
        "white oak": SpecificGravity(Fraction("0.68"), _MEMORY),
        "eastern white pine": SpecificGravity(Fraction("0.35"), _READ),
        "ponderosa pine": SpecificGravity(Fraction("0.40"), _READ),
        "yellow birch": SpecificGravity(Fraction("0.62"), _READ),
        "black cherry": SpecificGravity(Fraction("0.50"), _READ),
        "black walnut": SpecificGravity(Fraction("0.55"), _MEMORY),
    }
)
"""Solid wood."""


def wood_density(gravity: Fraction, moisture: Fraction = Fraction(12)) -> Fraction:
    """Weight of solid wood with its water.

    Parameters
    ----------
    gravity
        Specific gravity on the volume at that moisture [-].
    moisture
        Moisture content [%].

    Returns
    -------
    Density [kg/m3].

    Sources
    -------
    `wood-handbook`: equation 4-9, from memory.
    """
    return 1000 * gravity * (1 + moisture / 100)
