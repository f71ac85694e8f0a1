"""What a job asks of the trims of a run."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from casewright.casework.specs import Hand
from casewright.dims import Given

__all__ = ["NO_TRIMS", "AtHoodSpec", "CrownSpec", "InsideCut", "LightRailSpec", "RunTrims",
           "ScribeMouldingSpec", "ToeSkinSpec"]  # fmt: skip

InsideCut = Literal["coped", "mitred"]
"""How two crowns meet in an inside corner."""


@dataclass(frozen=True, slots=True)
class ToeSkinSpec:
    """Thin sheet over the toe boards of a run, put on after the floor.

    Parameters
    ----------
    stock
        Key of the sheet.
    """

    stock: str


@dataclass(frozen=True, slots=True)
class LightRailSpec:
    """A strip under the front of wall cases, with a return at each open end.

    Parameters
    ----------
    stock
        Key of the boards.
    """

    stock: str


@dataclass(frozen=True, slots=True)
class ScribeMouldingSpec:
    """Thin strips that cover the joint between the ends of a run and the wall behind.

    Parameters
    ----------
    stock
        Key of the strips.
    ends
        At which open ends.
    """

    stock: str
    ends: tuple[Hand, ...]


@dataclass(frozen=True, slots=True)
class AtHoodSpec:
    """A crown's way round a hood in its run.

    Parameters
    ----------
    left_corner, right_corner
        Angle of the corner at either end of its front as read [deg], as text; empty: not.
    """

    left_corner: str = ""
    right_corner: str = ""

    def corner(self, side: Hand) -> str:
        """The angle read at an end, as text; empty: not read."""
        return self.left_corner if side == "left" else self.right_corner


@dataclass(frozen=True, slots=True)
class CrownSpec:
    """A crown moulding over a run, with what it is nailed to.

    Parameters
    ----------
    stock
        Key of the moulding.
    backing
        Key of the boards behind it.
    drop, projection
        Of the moulding as it stands [mm]: down the wall and out along the ceiling.
    frieze
        How far its foot is to stand over the cases [mm]; None: what the ceiling leaves.
    to_ceiling
        Whether it reaches the ceiling.
    fitted
        Keys of the cases that reach up to it.
    inside
        How it meets another crown in an inside corner.
    left_corner, right_corner
        Angle of the corner at a return as read [deg], as text of a decimal number; empty: not.
    at_hoods
        What was read round the hoods of its run, by their keys.
    """

    stock: str
    backing: str
    drop: Given
    projection: Given
    frieze: Given | None = None
    to_ceiling: bool = True
    fitted: tuple[str, ...] = ()
    inside: InsideCut = "coped"
    left_corner: str = ""
    right_corner: str = ""
    at_hoods: Mapping[str, AtHoodSpec] = field(default_factory=dict)

    def corner(self, side: Hand) -> str:
        """The angle read at an end, as text; empty: not read."""
        return self.left_corner if side == "left" else self.right_corner


@dataclass(frozen=True, slots=True)
class RunTrims:
    """The trims of one run; None for what it has not."""

    toe_skin: ToeSkinSpec | None = None
    light_rail: LightRailSpec | None = None
    scribe_moulding: ScribeMouldingSpec | None = None
    crown: CrownSpec | None = None


NO_TRIMS = RunTrims()
