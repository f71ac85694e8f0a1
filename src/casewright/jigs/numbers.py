"""Numbers of jigs on the chain, each entered once."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Chain, Dim, Place, Way
from casewright.room.model import Room
from casewright.room.style_numbers import style_number

__all__ = ["ROOT", "JigNumbers"]

ROOT = "jig"
"""Under which they stand on the chain."""


@dataclass(frozen=True, slots=True)
class JigNumbers:
    """Where the numbers of a jig are named.

    Parameters
    ----------
    chain
        That holds the room's numbers.
    """

    room: Room
    chain: Chain

    def place(self, name: str) -> Place:
        """Where those of a jig stand."""
        return self.chain.place(ROOT).at(name)

    def named(self, name: str, number: str, dim: Dim) -> Dim:
        """A number of a jig, the one known already where it was asked for before."""
        known = self.chain.nodes.get(f"{ROOT}.{name}.{number}")
        return known or self.place(name).let(number, dim)

    def on_grid(self, name: str, number: str, dim: Dim, step: Fraction) -> Dim:
        """The same, rounded down."""
        known = self.chain.nodes.get(f"{ROOT}.{name}.{number}")
        return known or self.place(name).rounded(number, dim, step, Way.DOWN)[0]

    def style(self, key: str) -> Dim:
        """A style value, `style.<key>`."""
        return style_number(self.room, self.chain, key)
