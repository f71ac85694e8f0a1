"""Causes of deviation: why a real thing differs from its number."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

__all__ = ["Cause", "Law", "reading_causes"]

Law = Literal["normal", "even"]
"""How deviations lie: most of them near nothing, or anywhere between the limits alike."""

_HOOK, _OWN, _HALF = Fraction(3, 5), Fraction(4, 5), Fraction(1, 2)

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


def reading_causes(key: str, sigma: Fraction, limit: Fraction, tool: str) -> tuple[Cause, ...]:
    """How a reading strays: by itself, and with a tape by its hook too.

    The hook of the one tape is one deviation of all that is read with it: it adds from reading to
    reading, and drops out of their differences. As standard deviations it is 3/5 and what is left
    4/5 of all that the tape strays by (3, 4, 5: together they are that); at most, each is half.

    Parameters
    ----------
    key
        Of the reading.
    sigma, limit
        How far it strays in all: standard deviation and greatest [mm].
    tool
        What it was read with.

    Sources
    -------
    Common practice, from memory: a hook that is bent or whose rivets are worn is off by up to half
    a millimetre, about half of what readings with such a tape stray by.
    """
    if tool != "tape":
        return (Cause(key, sigma, limit, tool=tool),)
    own = Cause(key, _OWN * sigma, _HALF * limit, tool=tool)
    return (own, Cause("hook of the tape", _HOOK * sigma, _HALF * limit, bias=True, tool=tool))
