"""Lines of things that are counted, and packed."""

from __future__ import annotations

from fractions import Fraction

from casewright.buying.line import Aisle, BuyLine, packed
from casewright.buying.spares import Spare

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
    """
    extra = spare.of(need)
    count = packed(Fraction(need), Fraction(extra), Fraction(spare.pack))
    words = f"{why}; {spare.words}: {need} + {extra} = {need + extra}" if extra else why
    if spare.pack > 1:
        words += f", in packs of {spare.pack}"
    return BuyLine(
        aisle, what, key, "pieces", Fraction(need), Fraction(extra), Fraction(spare.pack), count,
        spare.unit, words, paths, note=note,
    )  # fmt: skip
