"""Lines of things that are counted, and packed."""

from __future__ import annotations

from fractions import Fraction

from casewright.buying.line import Aisle, BuyLine, packed
from casewright.buying.spares import Spare
from casewright.dims import Dim, joined

__all__ = ["pieces"]


def pieces(
    aisle: Aisle,
    what: str,
    key: str,
    need: int,
    spare: Spare,
    *,
    paths: tuple[str, ...],
    why: str,
    note: str = "",
    numbers: tuple[Dim, ...] = (),
) -> BuyLine:
    """A line of counted things, its spares worked out and said.

    Parameters
    ----------
    need
        Pieces the model uses [-].
    spare
        Rule of the spares and the pack.
    why
        How the need comes about.
    numbers
        What the words work out.
    """
    extra = spare.of(need)
    count = packed(Fraction(need), Fraction(extra), Fraction(spare.pack))
    told = f"; {spare.words}: {need} + {extra} = {need + extra}" if extra else ""
    packs = f", in packs of {spare.pack}" if spare.pack > 1 else ""
    return BuyLine(
        aisle, what, key, "pieces", Fraction(need), Fraction(extra), Fraction(spare.pack), count,
        spare.unit, joined("", (why, told, packs)), paths, note=note, numbers=numbers,
    )  # fmt: skip
