"""Causes of deviation: why a real thing differs from its number."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

__all__ = ["Cause", "Law"]

Law = Literal["normal", "even"]
"""How deviations lie: most of them near nothing, or anywhere between the limits alike."""

_ROOT_OF_A_THIRD = Fraction(780, 1351)
"""A convergent of the root of 1/3, right to seven digits [-]."""


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
    law
        How the deviations lie between the limits.
    tool
        What it comes from in words: the kind of tool, or empty.
    """

    key: str
    sigma: Fraction
    limit: Fraction
    bias: bool = False
    law: Law = "normal"
    tool: str = ""

    @classmethod
    def even(cls, key: str, limit: Fraction, *, bias: bool = False, tool: str = "") -> Cause:
        """A deviation of which only the limits are known: anywhere between them alike.

        Sources
        -------
        JCGM 100:2008, 4.3.7 (`gum`): its standard deviation is the limit over the root of 3.
        """
        return cls(key, limit * _ROOT_OF_A_THIRD, limit, bias, "even", tool)

    def named(self, key: str) -> Cause:
        """Another cause that strays alike."""
        return Cause(key, self.sigma, self.limit, self.bias, self.law, self.tool)

    def scaled(self, share: Fraction) -> Cause:
        """The same at a share of what it was [-]."""
        sigma, limit = self.sigma * share, self.limit * share
        return Cause(self.key, sigma, limit, self.bias, self.law, self.tool)

    @property
    def variance(self) -> Fraction:
        """Its variance, exact for either law [mm2]."""
        return self.limit**2 / 3 if self.law == "even" else self.sigma**2
