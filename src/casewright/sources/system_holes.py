"""The rows of holes that shelf pins and hinge plates share."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.sources.provenance import Provenance

__all__ = ["SYSTEM_HOLES", "SystemHoles"]


@dataclass(frozen=True, slots=True)
class SystemHoles:
    """The common pattern of holes.

    Parameters
    ----------
    diameter
        [mm].
    pitch
        Between neighbours in a row [mm].
    front_line
        Front row from the front edge of the side, for overlay fronts [mm].
    """

    diameter: Fraction
    pitch: Fraction
    front_line: Fraction
    provenance: Provenance


SYSTEM_HOLES = SystemHoles(
    Fraction(5), Fraction(32), Fraction(37), Provenance("system-32", "secondary copy")
)
