"""The shop: tools owned, and what they can do."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.lengths import Between, Length, Weight
from casewright.job.tables.table import OneOrMore, Table
from casewright.shop import ToolKind

__all__ = ["ShopTable", "ToolTable"]

_Kerf = Annotated[Length, Between("1/32", "1/4", "0.8", "6")]
_Strays = Annotated[Length, Between("0", "1/8", "0", "3")]


class ToolTable(Table):
    """What one tool can do."""

    kerf: _Kerf | None = None
    """Width the blade takes, by its label."""

    measured_kerf: Annotated[list[_Kerf], Field(max_length=30), OneOrMore(_Kerf)] = Field(
        default_factory=list
    )
    """The same as read on test cuts: one reading, or several of which the greatest governs."""

    reach: Annotated[Length, Between("1", "120", "25", "3000")] | None = None
    """Greatest rip or crosscut it can do."""

    strays: _Strays | None = None
    """How far its cuts or readings usually stray either way: one standard deviation."""

    at_most: _Strays | None = None
    """How far they stray at most. Alone: they lie anywhere up to that alike."""


class ShopTable(Table):
    """Tools owned, and what one person there can lift."""

    tools: Annotated[list[ToolKind], Field(min_length=1, max_length=20)] | None = None
    """Tools owned. Default: the home shop's, all but the mitre saw, the router table and
    what goes on them: dado stack, slot cutter."""

    tool: dict[ToolKind, ToolTable] = Field(default_factory=dict)
    """What a tool can do, by its name in quotes: [shop.tool."table saw"]."""

    bits: (
        Annotated[
            list[Annotated[Length, Between("1/16", "2", "1.5", "50")]],
            Field(min_length=1, max_length=40),
        ]
        | None
    ) = None
    """Diameters of the straight router bits owned."""

    lift: Weight | None = None
    """What one person lifts alone. Default: 25 kg."""

    straightedge: Annotated[Length, Between("12", "144", "300", "3600")] | None = None
    """Length of the longest guide for the circular saw."""
