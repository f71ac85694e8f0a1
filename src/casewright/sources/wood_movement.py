"""How much solid wood swells and shrinks, and how moist a room makes it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from casewright.sources.provenance import Provenance

__all__ = ["MOVEMENT", "ROOM_MOISTURE", "Movement", "RoomMoisture", "equilibrium_moisture"]


@dataclass(frozen=True, slots=True)
class Movement:
    """Change of a size across the grain for each percent of moisture, as a share of it [1/%].

    Good between 6 % and 14 % of moisture content.

    Parameters
    ----------
    radial
        Square to the growth rings: the width of a quarter-sawn board.
    tangential
        Along the growth rings: the width of a flat-sawn board.
    """

    radial: Fraction
    tangential: Fraction
    provenance: Provenance


@dataclass(frozen=True, slots=True)
class RoomMoisture:
    """Moisture that wood for interiors is best made at, in a climate [%]."""

    percent: int
    provenance: Provenance


_READ = Provenance("wood-handbook", "secondary copy", "table 13-5")
_MEMORY = Provenance("wood-handbook", "from memory", "table 13-5")


def _row(radial: str, tangential: str, provenance: Provenance) -> Movement:
    return Movement(Fraction(radial), Fraction(tangential), provenance)


MOVEMENT: Mapping[str, Movement] = MappingProxyType({
    "yellow-poplar": _row(
        "0.00158", "0.00289",
        Provenance("wood-handbook", "from memory", "table 13-5; agrees with its shrinkage"),
    ),
    "red maple": _row("0.00137", "0.00289", _READ),
    "sugar maple": _row("0.00165", "0.00353", _READ),
    "northern red oak": _row("0.00158", "0.00369", _READ),
    "white oak": _row("0.00180", "0.00365", _READ),
    "eastern white pine": _row("0.00071", "0.00212", _MEMORY),
    "ponderosa pine": _row("0.00133", "0.00216", _MEMORY),
    "yellow birch": _row("0.00256", "0.00338", _READ),
    "paper birch": _row("0.00219", "0.00304", _READ),
    "black cherry": _row("0.00126", "0.00248", _READ),
    "black walnut": _row("0.00190", "0.00274", _READ),
})  # fmt: skip
"""By species."""

_CLIMATE = Provenance("wood-handbook", "from memory", "table 13-2, average for interiors")
ROOM_MOISTURE: Mapping[str, RoomMoisture] = MappingProxyType({
    "most of the USA": RoomMoisture(8, _CLIMATE),
    "dry southwest of the USA": RoomMoisture(6, _CLIMATE),
    "damp southern coast of the USA": RoomMoisture(11, _CLIMATE),
})  # fmt: skip


def equilibrium_moisture(humidity: Fraction, celsius: Fraction = Fraction(21)) -> Fraction:
    """Moisture content that wood comes to in air that stays as it is.

    Parameters
    ----------
    humidity
        Relative humidity, over 0 and under 100 [%].
    celsius
        Temperature [°C].

    Returns
    -------
    Moisture content [%].

    Sources
    -------
    `wood-handbook`: equation 4-5 with the coefficients for degrees Celsius, read in a secondary
    copy.
    """
    t, h = celsius, humidity / 100
    w = 349 + Fraction("1.29") * t + Fraction("0.0135") * t**2
    k = Fraction("0.805") + Fraction("0.000736") * t - Fraction("0.00000273") * t**2
    k1 = Fraction("6.27") - Fraction("0.00938") * t - Fraction("0.000303") * t**2
    k2 = Fraction("1.91") + Fraction("0.0407") * t - Fraction("0.000293") * t**2
    kh = k * h
    one, two = k1 * kh, k1 * k2 * kh**2
    return 1800 / w * (kh / (1 - kh) + (one + 2 * two) / (1 + one + two))
