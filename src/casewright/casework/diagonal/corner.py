"""What the pieces of a diagonal corner are laid out from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.features import Plane
from casewright.casework.maker import Outline
from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["Corner", "Rabbet"]


@dataclass(frozen=True, slots=True)
class Rabbet:
    """A rabbet for a back, as cut into a return side.

    Parameters
    ----------
    path
        Of the cut.
    width, depth
        From the side's rear edge, and into its inside [mm].
    """

    path: str
    width: Dim
    depth: Dim


@dataclass(frozen=True, slots=True)
class Corner:
    """The closed box. Its own wall is its run's; the far one is that round the corner.

    Distances along either wall are told from the corner; `at` turns one along the own wall into
    case x, one along the far wall is case z as it is.

    Parameters
    ----------
    hand
        End of its run that the corner is at.
    own, far
        The return sides, by the wall that each stands on.
    own_rabbet, far_rabbet
        In them.
    width, depth
        Along the own and along the far wall [mm].
    clear_width, clear_depth
        Of the box inside, between back and return side [mm].
    foot, deck, ceiling, head
        Heights [mm]: lower end of the sides, underside of the bottom, underside of the top, upper
        end.
    bottom, top
        The two boards, clipped; no top where a bowl hangs.
    blocks
        There, the corner blocks on the own and on the far return side, clipped.
    """

    hand: Hand
    own: Outline
    far: Outline
    own_rabbet: Rabbet
    far_rabbet: Rabbet
    width: Dim
    depth: Dim
    clear_width: Dim
    clear_depth: Dim
    foot: Dim
    deck: Dim
    ceiling: Dim
    head: Dim
    bottom: Outline
    top: Outline | None
    blocks: tuple[Outline, ...] = ()

    @property
    def left(self) -> bool:
        """Whether the corner is at the left of its run."""
        return self.hand == "left"

    @property
    def own_hand(self) -> Hand:
        """Hand of what stands on the own wall, seen from the room."""
        return "right" if self.left else "left"

    @property
    def far_hand(self) -> Hand:
        """Hand of what stands on the far wall."""
        return self.hand

    @property
    def floor(self) -> Dim:
        """Upper face of the bottom [mm]."""
        return self.deck + self.bottom.thickness if self.deck.path else self.bottom.thickness

    @property
    def inner_head(self) -> Dim:
        """Upper end of what stands inside, along the walls [mm]."""
        return self.head if self.top is None else self.ceiling

    @property
    def own_leg(self) -> Dim:
        """From the front of the own side to the line of the face, along the own wall [mm]."""
        return self.width - self.own.width

    def at(self, along: Dim) -> Dim:
        """Case x of a place so far along the own wall."""
        return along if self.left else self.width - along

    def low(self, along: Dim, length: Dim) -> Dim:
        """Case x of the left end of what begins so far along the own wall and is so long."""
        return along if self.left else self.width - along - length

    def toward(self, where: Literal["corner", "room"], low: Plane, high: Plane) -> Plane:
        """Of two planes, at lower and at higher x, the one that looks that way."""
        return low if (where == "corner") == self.left else high
