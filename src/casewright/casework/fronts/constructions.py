"""What every construction of a door offers: it is cut, then put in front of its opening."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["Construction", "Corner", "edge_words", "upright"]


@dataclass(frozen=True, slots=True)
class Corner:
    """Lower left back corner of a leaf in case axes [mm]."""

    x: Dim
    y: Dim
    z: Dim


class Construction(Protocol):
    """A leaf whose pieces are cut but have no place yet.

    Its size follows from the pieces; its place follows from its size and the box.
    """

    @property
    def width(self) -> Dim:
        """Outside width [mm]."""

    @property
    def height(self) -> Dim:
        """Outside height [mm]."""

    @property
    def thickness(self) -> Dim:
        """Outside thickness [mm]."""

    @property
    def pieces(self) -> tuple[str, ...]:
        """Paths of its parts."""

    @property
    def cup_part(self) -> str:
        """Path of the part that the hinge cups are bored into, from its face B."""

    @property
    def cup_backing(self) -> Dim:
        """Wood there is behind the back face where the cups go [mm]."""

    @property
    def pull_parts(self) -> tuple[str, ...]:
        """Paths of the parts that the pull's screws pass, from the front."""

    def put(self, at: Corner) -> None:
        """Give the pieces their places, machine and join them, tell the steps."""


def upright(hand: Hand | None) -> str:
    """How an upright piece lies whose datum edge w0 is on its left or, without a hand, right."""
    return "+y +x +z" if hand == "left" else "+y -x +z"


def edge_words(outer: str, inner: str) -> tuple[str, str, str, str]:
    """Words for the ends and edges of an upright piece."""
    return ("bottom", "top", outer, inner)
