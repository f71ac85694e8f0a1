"""Kinds of stock and the list a job draws from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.dims import Given

__all__ = [
    "EMISSION_LABELS",
    "Board",
    "EdgeBand",
    "Emission",
    "Glazing",
    "Sheet",
    "Stock",
    "StockList",
]

Emission = Literal[
    "TSCA Title VI", "CARB 2", "E1", "E2", "no added formaldehyde", "none on its label",
]  # fmt: skip
"""How much formaldehyde a panel may give off, by its label."""

EMISSION_LABELS: frozenset[Emission | None] = frozenset(
    ("TSCA Title VI", "CARB 2", "E1", "no added formaldehyde")
)
"""Classes to ask for."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet good: plywood, fibreboard.

    Parameters
    ----------
    key
        Name in the job file.
    title
        What to ask for at the yard.
    length, width
        Size of the whole sheet by its label [mm]; grain runs along `length` when it has one.
    thickness
        By the label [mm]. A reading comes in as a fact on `stock.<key>.thickness`.
    grain
        Whether the show face has a direction.
    material
        plywood, fibreboard, hardboard or melamine.
    density
        [kg/m3].
    modulus
        Bending stiffness along the grain [MPa]; None: unknown, so no sag is computed.
    measured
        Whether the job gives a reading of the thickness.
    price
        Price a sheet as typed, with its date and source as text; None when not given.
    measured_length, measured_width
        Least readings of the sheets in hand [mm]; None: by the label still.
    by_sheet
        What is chalked on each sheet in hand, with its thickness [mm]; empty: not read apart.
    emission
        Its emission class by its label; None: nobody has said.
    """

    key: str
    title: str
    length: Given
    width: Given
    thickness: Given
    grain: bool
    material: str
    density: Fraction
    modulus: int | None = None
    measured: Given | None = None
    price: str | None = None
    measured_length: Given | None = None
    measured_width: Given | None = None
    by_sheet: tuple[tuple[str, Fraction], ...] = ()
    emission: Emission | None = None

    @property
    def length_in_hand(self) -> Given:
        """Length that plans reckon with [mm]."""
        return self.measured_length or self.length

    @property
    def is_fibreboard(self) -> bool:
        """Whether its edges take filler and paint as its faces do."""
        return self.material in ("fibreboard", "hardboard")

    @property
    def width_in_hand(self) -> Given:
        """Width that plans reckon with [mm]."""
        return self.measured_width or self.width


@dataclass(frozen=True, slots=True)
class Board:
    """Solid lumber bought by the piece.

    Parameters
    ----------
    thickness, width
        As dressed [mm].
    lengths
        Lengths the yard has [mm].
    trim
        Lost at each end before a piece is cut, the blade included [mm]; None: nothing.
    prices
        Of one board of each length, as typed, each with its amount first; empty: the less length
        is bought in all the better.
    species
        Which wood, by its key in `casewright.sources.MOVEMENT`; empty: nobody has said.
    sawn
        How its growth rings lie: flat-sawn boards move more.
    moulded
        Whether it has a profile, so that nothing is ripped or milled out of it.
    """

    key: str
    title: str
    thickness: Given
    width: Given
    lengths: tuple[Given, ...]
    density: Fraction
    measured: Given | None = None
    price: str | None = None
    species: str = ""
    sawn: Literal["flat", "quarter"] = "flat"
    moulded: bool = False
    trim: Given | None = None
    prices: tuple[str, ...] = ()

    @property
    def grain(self) -> bool:
        """Solid wood always has a grain."""
        return True

    @property
    def lost(self) -> Fraction:
        """What both ends of a board lose together [mm]."""
        return Fraction(0) if self.trim is None else 2 * self.trim.value

    def price_of(self, length: Fraction) -> str | None:
        """Price as typed of a board of one of the lengths."""
        known = {each.value: text for each, text in zip(self.lengths, self.prices, strict=False)}
        return known.get(length, self.price if len(self.lengths) == 1 else None)


@dataclass(frozen=True, slots=True)
class EdgeBand:
    """Iron-on edge band from a roll: thickness and width [mm]; the price of a roll as typed."""

    key: str
    title: str
    thickness: Given
    width: Given
    roll: Given
    price: str | None = None


@dataclass(frozen=True, slots=True)
class Glazing:
    """Glass or plastic panels, ordered to size, or cut from a sheet: thickness [mm].

    The price is as typed.
    """

    key: str
    title: str
    thickness: Given
    material: Literal["tempered glass", "acrylic"]
    density: Fraction
    measured: Given | None = None
    price: str | None = None


Stock = Sheet | Board | EdgeBand | Glazing
StockList = Mapping[str, Stock]
