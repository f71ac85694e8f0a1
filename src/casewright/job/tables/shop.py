"""The shop: tools owned, and what they can do."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.lengths import Between, Length, Weight
from casewright.job.tables.table import OneOrMore, Table
from casewright.shop import ToolKind

__all__ = ["MendingTable", "ShopTable", "ToolTable"]

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


_Minutes = Annotated[int, Field(ge=0, le=480)] | None


class MendingTable(Table):
    """Minutes that mending takes here, and measuring: hold points go by them."""

    measure: _Minutes = None
    """To read one thing, write it down and set the saw up once more. Default: 8."""

    drawer: _Minutes = None
    """To plane a glued drawer, or to pack it out on both sides. Default: 45."""

    front: _Minutes = None
    """To cut, edge and bore a front again. Default: 40."""

    box: _Minutes = None
    """To make up for a box that is out of size. Default: 30."""

    back: _Minutes = None
    """To cut a back again. Default: 20."""

    shelf: _Minutes = None
    """To cut a shelf again. Default: 10."""

    filler: _Minutes = None
    """To cut a filler again. Default: 15."""

    piece: _Minutes = None
    """To cut any other piece again. Default: 20."""


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

    minutes: MendingTable = Field(default_factory=MendingTable)
    """Minutes that mending and measuring take."""
