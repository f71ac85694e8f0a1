"""What is bought beyond the need, and what packs things come in: house rules, all common practice.

They are judgements of this house unless said otherwise; the sum on each line names the rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

__all__ = [
    "BAND_WASTE", "BRADS", "BUMPERS_A_LEAF", "FIXED_SPARES", "FRAME_SCREWS_A_SEAM",
    "GLUE_ML_PER_MM", "HINGES", "JOINING_SCREWS_A_SEAM", "PINS_A_SHELF", "PLUGS", "PULLS",
    "RETAINERS", "SCREWS", "SHELF_PINS", "SHIMS_A_CASE", "SHIMS_A_STUD", "Spare",
]  # fmt: skip

_FOOT = Fraction(3048, 10)


@dataclass(frozen=True, slots=True)
class Spare:
    """How many more than needed, and the pack.

    Parameters
    ----------
    one_in
        One spare for each so many, or part of so many [-]; 0: none by number.
    least
        At least so many [-].
    pack
        Pieces in a pack [-].
    """

    one_in: int
    least: int
    pack: int = 1

    def of(self, need: int) -> int:
        """Spares for a need [-]; none where nothing is needed."""
        if not need:
            return 0
        return max(self.least, -(-need // self.one_in) if self.one_in else 0)

    @property
    def words(self) -> str:
        """The rule as it stands on the list."""
        if self.one_in:
            return f"1 spare in {self.one_in}"
        return f"{self.least} spare"

    @property
    def unit(self) -> str:
        """What is bought."""
        return "each" if self.pack == 1 else f"box of {self.pack}"


HINGES = Spare(12, 1)
"""Hinges and their plates."""
PULLS = Spare(0, 1)
SHELF_PINS = Spare(0, 4)
"""One shelf's pins."""
RETAINERS = Spare(12, 2)
SCREWS = Spare(10, 1, 100)
BRADS = Spare(10, 1, 1000)
PLUGS = Spare(10, 1, 50)
FIXED_SPARES = Spare(0, 0)
"""Nothing to spare: panes are made to order, bumpers come on a card."""

PINS_A_SHELF = 4
BUMPERS_A_LEAF = 2
JOINING_SCREWS_A_SEAM = 4
FRAME_SCREWS_A_SEAM = 3
SHIMS_A_STUD = 2
"""A pair, from either side, at each crossing of a row of wall screws with a stud."""
SHIMS_A_CASE = 8
"""Pairs under the four corners of a case that stands on the floor."""

BAND_WASTE = Fraction(115, 100)
"""Iron-on band: 15 percent is lost to joints and false starts."""
GLUE_ML_PER_MM = Fraction(250, 60) / _FOOT
"""A quarter litre of glue for 60 feet of glued edge [ml/mm]."""
