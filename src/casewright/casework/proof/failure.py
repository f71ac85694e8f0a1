"""What a check of a case brings up."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

__all__ = ["CheckName", "Failure", "Proof"]

CheckName = Literal[
    "parts", "cuts", "bores", "overlap", "joints", "size", "fronts", "pins", "hinges",
    "drawers", "pockets", "fasteners", "hands", "edges", "order", "path", "driver",
    "metal", "square", "show", "marks", "set-up",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Failure:
    """One thing that does not hold.

    Parameters
    ----------
    check
        Name of the check in the trade's word.
    paths
        Parts, joints or features it is about, the most telling one first.
    says
        What is wrong, as a sentence without numbers.
    amount
        By how much [mm]; 0 where no length measures it.
    mended_by
        Where the length of a fastener that was bought is to blame, not the model: what would do.
    """

    check: CheckName
    paths: tuple[str, ...]
    says: str
    amount: Fraction = Fraction(0)
    mended_by: Literal["a longer one", "a shorter one"] | None = None

    @property
    def of_goods(self) -> bool:
        """Whether what was bought is to blame, not the model."""
        return self.mended_by is not None


@dataclass(frozen=True, slots=True)
class Proof:
    """The outcome of proving a case: everything that does not hold."""

    failures: tuple[Failure, ...]

    @property
    def holds(self) -> bool:
        """Whether nothing failed."""
        return not self.failures
