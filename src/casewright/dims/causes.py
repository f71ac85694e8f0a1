"""Causes of deviation: why a real thing differs from its number."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

__all__ = ["Cause"]


@dataclass(frozen=True, slots=True)
class Cause:
    """One reason for real things to differ from their numbers.

    Things that share a cause (one fence setting, one batch of sheets, one tape's hook) carry
    the same key and move together; what varies from piece to piece has a key of its own.

    Parameters
    ----------
    key
        Identity: equal keys are one and the same deviation.
    sigma
        Standard deviation [mm].
    limit
        Greatest deviation either way [mm].
    bias
        True when it does not average out: it adds, it does not combine at random.
    """

    key: str
    sigma: Fraction
    limit: Fraction
    bias: bool = False
