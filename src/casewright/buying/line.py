"""One line of the buy list: what, how many, and the sum that says so."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.dims import Dim

__all__ = ["Aisle", "BuyLine", "Measure", "packed"]

Aisle = Literal[
    "sheets", "boards", "edges", "glass", "door hardware", "drawer hardware", "shelf hardware",
    "fasteners", "wall", "glue and filler", "abrasives",
]  # fmt: skip
"""Where in the shop it is looked for."""

Measure = Literal["pieces", "length", "volume"]
"""What `need`, `spare` and `pack` count: pieces [-], length [mm], volume [ml]."""


@dataclass(frozen=True, slots=True)
class BuyLine:
    """Something to buy.

    Parameters
    ----------
    aisle
        Where it is looked for.
    what
        What to ask for.
    key
        Key of the stock, name of the hardware's sheet, or a word of its own.
    measure
        What the next three count.
    need
        What the model uses up.
    spare
        On top, by the rule that `why` names.
    pack
        What one of `unit` holds.
    count
        How many of `unit` to buy [-].
    unit
        each, sheet, roll, box of 100, bottle of 250 ml.
    why
        The sum in words.
    paths
        What it is for.
    source
        Key in `casewright.sources` of the rule behind the number.
    note
        What to know before buying: a data sheet to wait for, a price as typed.
    numbers
        What its words work out, for their lengths to be asked about.
    """

    aisle: Aisle
    what: str
    key: str
    measure: Measure
    need: Fraction
    spare: Fraction
    pack: Fraction
    count: int
    unit: str
    why: str
    paths: tuple[str, ...]
    source: str = "common practice"
    note: str = ""
    numbers: tuple[Dim, ...] = field(default=(), compare=False, repr=False)


def packed(need: Fraction, spare: Fraction, pack: Fraction) -> int:
    """How many whole packs hold the need and the spare [-]."""
    return -(-(need + spare) // pack)
