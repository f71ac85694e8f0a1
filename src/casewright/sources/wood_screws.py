"""Diameters of wood screws by number."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from casewright.sources.inch import INCH
from casewright.sources.provenance import Provenance

__all__ = ["WOOD_SCREWS", "WoodScrew"]

_NDS = Provenance("nds", "from memory", "appendix L")


@dataclass(frozen=True, slots=True)
class WoodScrew:
    """A wood screw by its number: shank and root of the thread [mm]."""

    shank: Fraction
    root: Fraction
    provenance: Provenance


def _screw(shank: str, root: str) -> WoodScrew:
    return WoodScrew(INCH * Fraction(shank), INCH * Fraction(root), _NDS)


WOOD_SCREWS: Mapping[int, WoodScrew] = MappingProxyType(
    {
        6: _screw("0.138", "0.113"),
        8: _screw("0.164", "0.131"),
        9: _screw("0.177", "0.142"),
        10: _screw("0.190", "0.152"),
        12: _screw("0.216", "0.171"),
        14: _screw("0.242", "0.196"),
    }
)
"""By number."""
