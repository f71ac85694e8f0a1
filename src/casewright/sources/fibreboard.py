"""How far fibreboard may be from its label."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.sources.provenance import Provenance

__all__ = ["FIBREBOARD", "FibreboardTolerance"]


@dataclass(frozen=True, slots=True)
class FibreboardTolerance:
    """Tolerances either way.

    Parameters
    ----------
    thickness
        [mm].
    length_width
        Of the panel [mm].
    """

    thickness: Fraction
    length_width: Fraction
    provenance: Provenance


FIBREBOARD = FibreboardTolerance(
    Fraction(125, 1000), Fraction(2), Provenance("a208.2", "secondary copy", "2009 edition")
)
"""Medium density fibreboard of every grade."""
