"""Numbers a + b sqrt(2) with whole a and b, compared exactly: for what lies at 45 degrees."""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["Surd"]


class Surd(NamedTuple):
    """a + b sqrt(2)."""

    whole: int
    root: int = 0

    def plus(self, other: Surd) -> Surd:
        """Their sum."""
        return Surd(self.whole + other.whole, self.root + other.root)

    def minus(self, other: Surd) -> Surd:
        """Their difference."""
        return Surd(self.whole - other.whole, self.root - other.root)

    @property
    def sign(self) -> int:
        """-1, 0 or 1.

        With unlike signs the larger square decides: a > -b sqrt(2) as a^2 > 2 b^2.

        Examples
        --------
        >>> Surd(3, -2).sign, Surd(-7, 5).sign
        (1, 1)
        """
        a, b = self
        if a >= 0 and b >= 0:
            return 1 if a or b else 0
        if a <= 0 and b <= 0:
            return -1
        lead = a * a - 2 * b * b
        return (1 if lead > 0 else -1) * (1 if a > 0 else -1)
