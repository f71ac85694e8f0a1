"""What stands free on the floor, by its place in the job."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim
from casewright.room.floor_spec import FloorSide

__all__ = ["FreeStand"]


@dataclass(frozen=True, slots=True)
class FreeStand:
    """An island, or a case in no run, where it stands: in the measure of a wall.

    Parameters
    ----------
    key
        Of the case: an island's panels and cleats, or the case itself.
    title
        Its name in words.
    wall
        Key of the wall that it is measured from.
    side
        Which side of it looks to that wall.
    left, right
        Of its body, from the wall's left end [mm].
    near, far
        Of its body, out from the wall [mm].
    counter
        Left, right, near and far edge of its counter, likewise; of a case those of its fronts.
    shims
        Under its corners, near left, near right, far right, far left, to its own highest corner
        [mm]; empty: the floor there was not read.
    """

    key: str
    title: str
    wall: str
    side: FloorSide
    left: Dim
    right: Dim
    near: Dim
    far: Dim
    counter: tuple[Dim, Dim, Dim, Dim]
    shims: tuple[Dim, ...] = ()

    @property
    def is_turned(self) -> bool:
        """Whether its front runs out from the wall, not along it."""
        return self.side in ("left", "right")

    def at(self, x: Fraction, z: Fraction) -> tuple[Fraction, Fraction]:
        """Along the wall and out from it, of a place in its own axes, seen from above.

        Parameters
        ----------
        x
            From its left end to its right, as who faces its front sees it [mm].
        z
            From its rear to its front [mm].
        """
        left, right, near, far = (
            edge.value for edge in (self.left, self.right, self.near, self.far)
        )
        places = {
            "front": (right - x, far - z),
            "back": (left + x, near + z),
            "left": (right - z, near + x),
            "right": (left + z, far - x),
        }
        return places[self.side]
