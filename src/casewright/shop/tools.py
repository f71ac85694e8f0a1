"""Tools, their reach, their accuracy."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.dims import Given

__all__ = ["Shop", "SurveyTool", "Tool", "ToolKind"]

ToolKind = Literal[
    "table saw", "circular saw", "router", "router table", "pocket-hole jig", "pin jig",
    "hinge jig", "drill", "mitre saw", "dado stack", "slot cutter", "tape", "calliper", "laser",
    "steel rule", "level",
]  # fmt: skip

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
    """

    kind: ToolKind
    sigma: Fraction
    limit: Fraction
    kerf: Given | None = None
    reach: Given | None = None


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
    """

    tools: Mapping[ToolKind, Tool]
    bits: tuple[Given, ...]
    lift: Fraction
    straightedge: Given

    def has(self, kind: ToolKind) -> bool:
        """Whether the shop owns such a tool."""
        return kind in self.tools
