"""Numbers of what is doubtful: readings as they are, and what is worked out from them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, Measure, Origin, Told, Unit, tell
from casewright.survey.slips import meant
from casewright.survey.walls import SurveyedWall
from casewright.survey.words import size_of

__all__ = ["DoubtNumbers"]


@dataclass(frozen=True, slots=True)
class DoubtNumbers:
    """Tells the numbers of a wall, and enters those that a doubt works out where it is told."""

    wall: SurveyedWall
    unit: Unit

    def said(self, dim: Dim) -> Measure:
        """A number as a sentence says it."""
        return size_of(dim, self.unit)

    def named(self, name: str, dim: Dim, origin: Origin | None = None) -> Dim:
        """A number that a doubt works out, entered the first time it is told [mm].

        Parameters
        ----------
        name
            At the wall.
        """
        place, nodes = self.wall.place, self.wall.place.chain.nodes
        count, asked = 1, name
        while (known := nodes.get(f"{place.path}.{name}")) and known.value != dim.value:
            count += 1
            name = f"{asked}_{count}"  # another doubt makes something else of it
        if known is None:
            known = place.let(name, dim)
            known.origin = origin or known.origin
        return known

    def apart(self, name: str, one: Dim, other: Dim) -> Measure:
        """How far two numbers lie apart."""
        off = one - other if one.value >= other.value else other - one
        return self.said(self.named(name, off))

    def slip(self, name: str, read: Dim, near: Fraction, within: Fraction) -> Told:
        """What was probably meant by a reading, and why; empty where no slip explains it.

        Parameters
        ----------
        name
            Of the reading at the wall.
        near, within
            Where others put it, and how closely [mm].
        """
        found = meant(read.value, near, within, self.unit)
        if found is None:
            return Told()
        origin = Origin("solved", f"what it was if {found.because}")
        size = self.named(f"{name}.meant", Dim("by", (read,), found.value), origin)
        return tell("{} was probably meant ({})", self.said(size), found.because)
