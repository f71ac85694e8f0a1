"""What is asked for by a place on the floor."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.dims import Given
from casewright.survey.readings import Reading

__all__ = ["FloorPlace", "FloorSide"]

FloorSide = Literal["front", "back", "left", "right"]
"""A side of what stands on the floor, named as who stands before its front sees it."""


@dataclass(frozen=True, slots=True)
class FloorPlace:
    """Where an island, or a case in no run, stands.

    Parameters
    ----------
    of
        Key of the case, or `island.` and the island's.
    wall, run
        What it is measured from: the wall, and its run whose fronts count instead; empty: none.
    off
        From there to its counter [mm]; None: not known yet.
    band
        Least and greatest that a layout may choose from [mm]; None: not told.
    along
        From the wall's left end to its left edge, seen by who faces the wall [mm]; None: not
        known.
    centre
        Key of what its middle is to stand before; empty: nothing.
    side
        Which side of it looks to the wall; None: not told.
    floor
        From the level line down to the floor at its corners: near left, near right, far right,
        far left; empty: not read.
    side_is_solved
        Whether an accepted layout chose the side.
    where
        Place in the job file.
    """

    of: str
    wall: str
    run: str
    off: Given | None
    along: Given | None
    centre: str
    side: FloorSide | None
    band: tuple[Given, Given] | None = None
    floor: tuple[Reading, ...] = ()
    side_is_solved: bool = False
    where: str = ""

    @property
    def is_known(self) -> bool:
        """Whether it says where the thing stands."""
        return self.off is not None and (self.along is not None or bool(self.centre))
