"""What was kept of a sheet."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

__all__ = ["Offcut"]


@dataclass(frozen=True, slots=True)
class Offcut:
    """A piece of a stock that was kept.

    Parameters
    ----------
    path
        What it is called: offcut.3f2a91c0.
    stock
        Key of its stock.
    length, width
        Length along the grain [mm].
    """

    path: str
    stock: str
    length: Fraction
    width: Fraction

    @property
    def area(self) -> Fraction:
        """Area [mm squared]."""
        return self.length * self.width

    def holds(self, length: Fraction, width: Fraction, *, turns: bool) -> bool:
        """Whether a piece comes out of it, along the grain or, where it may, across."""
        along = length <= self.length and width <= self.width
        return along or (turns and width <= self.length and length <= self.width)
