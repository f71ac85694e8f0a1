"""Numbers of the day of hanging on the chain, each entered once."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Chain, Dim, Origin, Place
from casewright.room.model import Room
from casewright.room.style_numbers import style_number

__all__ = ["ROOT", "Numbers"]

ROOT = "hanging"
"""Under which they stand on the chain."""

_NOTHING = Origin("chosen", "where a tape is hooked")


@dataclass(frozen=True, slots=True)
class Numbers:
    """Where the numbers of a wall are named.

    Parameters
    ----------
    chain
        The room's, or one that holds its numbers.
    """

    room: Room
    chain: Chain

    def wall(self, key: str) -> Place:
        """Where those of a wall stand."""
        return self.chain.place(ROOT).at(key)

    def style(self, key: str) -> Dim:
        """A style value, `style.<key>`."""
        return style_number(self.room, self.chain, key)

    @property
    def zero(self) -> Dim:
        """Nothing: the datum itself."""
        known = self.chain.nodes.get(f"{ROOT}.datum")
        return known or self.chain.place(ROOT).enter("datum", Fraction(0), _NOTHING)
