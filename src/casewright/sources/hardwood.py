"""Hardwood boards: thickness by quarters, rough and surfaced."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from casewright.sources.inch import INCH
from casewright.sources.provenance import Provenance

__all__ = ["QUARTERS", "QuarterSize"]

_READ = Provenance("nhla", "secondary copy")
_MEMORY = Provenance("nhla", "from memory")


@dataclass(frozen=True, slots=True)
class QuarterSize:
    """One thickness as hardwood is sold.

    Parameters
    ----------
    quarters
        Quarter inches by name [-]: 4 for 4/4.
    rough
        As sawn [mm].
    surfaced
        Planed on two sides [mm].
    """

    quarters: int
    rough: Fraction
    surfaced: Fraction
    provenance: Provenance


def _size(quarters: int, sixteenths: int, provenance: Provenance) -> QuarterSize:
    return QuarterSize(quarters, INCH * quarters / 4, INCH * sixteenths / 16, provenance)


QUARTERS: Mapping[int, QuarterSize] = MappingProxyType({
    4: _size(4, 13, _READ),
    5: _size(5, 17, _READ),
    6: _size(6, 21, _MEMORY),
    8: _size(8, 28, _READ),
})  # fmt: skip
"""By the number of quarters."""
