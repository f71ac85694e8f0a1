"""What can be bought."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Key, Line, OneOrMore, Table
from casewright.stock import Emission

__all__ = ["BandTable", "BoardTable", "GlazingTable", "SheetTable", "Species", "StockTable"]

_Long = Annotated[Length, Between("12", "240", "300", "6000")]
_Thick = Annotated[Length, Between("1/16", "4", "1.5", "100")]
_Readings = Annotated[list[_Long], Field(min_length=1, max_length=30), OneOrMore(_Long)]
Species = Literal[
    "yellow-poplar", "red maple", "sugar maple", "northern red oak", "white oak",
    "eastern white pine", "ponderosa pine", "yellow birch", "paper birch", "black cherry",
    "black walnut",
]  # fmt: skip
_Density = Annotated[int, Field(ge=50, le=3000)]


class _Goods(Table):
    title: Line | None = None
    """What to ask for at the yard. Default: the key, with spaces for _."""

    price: Line | None = None
    """Price of one, with its date and where it was asked, as text: "62.40, 3 May, the yard".
    The buy list reckons up what so many cost where it begins with the amount."""


class SheetTable(_Goods):
    """A sheet good: plywood, fibreboard."""

    kind: Literal["sheet"]
    """A sheet good."""

    size: Annotated[list[_Long], Field(min_length=2, max_length=2)]
    """Length and width of the whole sheet by its label; the grain runs along the length."""

    measured_size: Annotated[list[_Readings], Field(min_length=2, max_length=2)] | None = None
    """Length and width of the sheets in hand as read with a tape: one reading each, or a list of
    readings each, of which the least governs. Plans that just fit wait for it."""

    thickness: _Thick
    """By the label."""

    measured: Annotated[list[_Thick], Field(max_length=30), OneOrMore(_Thick)] = Field(
        default_factory=list
    )
    """Thickness as read with a calliper: one reading, or several whose mean counts."""

    sheets: Annotated[dict[Key, _Thick], Field(max_length=100)] = Field(default_factory=dict)
    """Thickness of each sheet as read, by what is chalked on it, instead of `measured`:
    sheets = { a = 0.720, b = 0.703 }. Their mean counts until `casewright sheets` sorts them by
    case."""

    grain: Literal["length", "none"] = "length"
    """Whether the face has a direction, and which."""

    material: Literal["plywood", "fibreboard", "hardboard", "melamine"] = "plywood"
    """What it is made of."""

    density: _Density | None = None
    """Weight of a cubic metre in kg. Default: the usual one of the material."""

    stiffness: Annotated[int, Field(ge=500, le=20000)] | None = None
    """Bending modulus along the grain in MPa, from a data sheet. Without it no sag is worked
    out."""

    emission: Emission | None = None
    """How much formaldehyde it may give off, by the class on its label. Left out, the buy list
    says what to ask for."""


class BoardTable(_Goods):
    """Solid lumber, bought by the piece."""

    kind: Literal["board"]
    """Solid lumber."""

    thickness: _Thick
    """As dressed."""

    width: Annotated[Length, Between("1/2", "24", "12", "600")]
    """As dressed."""

    lengths: Annotated[list[_Long], Field(min_length=1, max_length=20), OneOrMore(_Long)]
    """Lengths the yard has."""

    prices: Annotated[list[Line], Field(max_length=20)] = Field(default_factory=list)
    """Price of one board of each of the `lengths`, in their order, as text that begins with the
    amount: prices = ["6.40", "8.90", "11.20, 3 May"]. With them the boards that cost least are
    bought, otherwise those of the least length in all."""

    trim: Annotated[Length, Between("0", "6", "0", "150")] | None = None
    """Lost at each end of a board, splits and dirt, before a piece is cut from it, the blade
    included. Default: 0."""

    measured: Annotated[list[_Thick], Field(max_length=30), OneOrMore(_Thick)] = Field(
        default_factory=list
    )
    """Thickness as read with a calliper: one reading, or several whose mean counts."""

    density: _Density | None = None
    """Weight of a cubic metre in kg. Default: that of its species at 12 % of moisture, else
    550."""

    species: Species | None = None
    """Which wood it is: how much a panel of it swells and shrinks follows from that."""

    sawn: Literal["flat", "quarter"] | None = None
    """How its growth rings lie: along the width, or square to it. Flat-sawn boards move more.
    Default: flat."""


class BandTable(_Goods):
    """Iron-on edge band."""

    kind: Literal["band"]
    """Edge band from a roll."""

    thickness: Annotated[Length, Between("1/128", "1/4", "0.2", "6")]
    """By the label."""

    width: Annotated[Length, Between("1/4", "4", "6", "100")]
    """By the label."""

    roll: Annotated[Length, Between("12", "24000", "300", "600000")]
    """Length of a roll."""


class GlazingTable(_Goods):
    """Glass or plastic for door frames, ordered to size or cut from a sheet."""

    kind: Literal["glazing"]
    """Glass or plastic."""

    thickness: Annotated[Length, Between("1/16", "1", "1.5", "25")]
    """By the label."""

    material: Literal["tempered glass", "acrylic"]
    """What it is made of. Ordinary glass is not for doors."""

    measured: Annotated[list[_Thick], Field(max_length=30), OneOrMore(_Thick)] = Field(
        default_factory=list
    )
    """Thickness as read with a calliper: one reading, or several whose mean counts."""

    density: _Density | None = None
    """Weight of a cubic metre in kg. Default: the usual one of the material."""


StockTable = Annotated[
    SheetTable | BoardTable | BandTable | GlazingTable, Field(discriminator="kind")
]
