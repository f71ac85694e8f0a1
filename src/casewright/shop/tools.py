"""Tools, their reach, their accuracy."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.dims import Cause, Given, Law
from casewright.shop.learning import Learned
from casewright.shop.mending import Mending

__all__ = ["Shop", "SurveyTool", "Tool", "ToolKind"]

ToolKind = Literal[
    "table saw", "circular saw", "router", "router table", "pocket-hole jig", "pin jig",
    "hinge jig", "drill", "mitre saw", "dado stack", "slot cutter", "tape", "calliper", "laser",
    "steel rule", "level",
]  # fmt: skip

_USUAL_MENDING = Mending()

SurveyTool = Literal["tape", "laser", "steel rule", "level"]
"""What a room is measured with."""


@dataclass(frozen=True, slots=True)
class Tool:
    """One tool the shop owns.

    Parameters
    ----------
    kind
        What it is.
    sigma, limit
        How far a cut or a reading strays: standard deviation and greatest [mm].
    kerf
        Width the blade takes [mm], None for tools without one.
    reach
        Greatest rip or crosscut it can do [mm], None where it does not limit.
    law
        How it strays between the limits: even where nothing but the limits is known.
    is_stated
        Whether the job says how far it strays: what the shop's readings show is then only told.
    learned
        What the shop's own readings show of it, or None while there are too few.
    """

    kind: ToolKind
    sigma: Fraction
    limit: Fraction
    kerf: Given | None = None
    reach: Given | None = None
    law: Law = "normal"
    is_stated: bool = False
    learned: Learned | None = None

    def strays(self, key: str, *, share: Fraction = Fraction(1)) -> Cause:
        """How far a cut or a reading with it strays, as a cause of that key.

        Parameters
        ----------
        share
            Of all that it strays by [-].
        """
        known = self.learned
        if known is None or self.is_stated:
            strays = Cause(key, self.sigma, self.limit, law=self.law, tool=self.kind)
        else:
            strays = Cause(key, known.sigma, known.limit, tool=self.kind)
        return strays if share == 1 else strays.scaled(share)

    def offset(self) -> tuple[Cause, ...]:
        """What the shop's readings show it to be off by throughout: one cause for all its cuts."""
        known = self.learned
        if known is None or not known.offset:
            return ()
        off = abs(known.offset)
        return (Cause(f"offset of the {self.kind}", off, off, bias=True, tool=self.kind),)


@dataclass(frozen=True, slots=True)
class Shop:
    """Everything the shop owns and what one person there can lift.

    Parameters
    ----------
    tools
        By kind.
    bits
        Straight router bits owned, diameters [mm], smallest first.
    lift
        What one person lifts alone [kg].
    straightedge
        Length of the longest guide [mm].
    mending
        Minutes that mending and measuring take.
    """

    tools: Mapping[ToolKind, Tool]
    bits: tuple[Given, ...]
    lift: Fraction
    straightedge: Given
    mending: Mending = _USUAL_MENDING

    def has(self, kind: ToolKind) -> bool:
        """Whether the shop owns such a tool."""
        return kind in self.tools
