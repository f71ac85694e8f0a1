"""The mouth of a diagonal corner, which what lies in it is placed in."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["CaseMouth"]


@dataclass(frozen=True, slots=True)
class CaseMouth:
    """The mouth of a diagonal corner, and how what lies in it lies in the case.

    In its own axes x runs along the face, seen from the room, and z out of it. The middle of its
    width lies where both walls are equally far.

    Parameters
    ----------
    corner
        End of the run that the corner is at.
    width
        Between the outer faces of its strips [mm].
    front
        Its own plane z of the face [mm].
    reach
        Of any place on the face, the distances from both walls together [mm].
    side
        Depth of the return side on the run's wall [mm].
    beside
        Depth of the neighbour beside it [mm]: as that, or with its face frame more.
    band
        What is ironed on the slants of its boards [mm].
    """

    corner: Hand
    width: Dim
    front: Dim
    reach: Dim
    side: Dim
    beside: Dim
    band: Dim
