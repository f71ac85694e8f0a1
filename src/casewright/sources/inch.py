"""The inch: 25.4 mm, exactly."""

from __future__ import annotations

from fractions import Fraction

__all__ = ["FOOT", "INCH"]

INCH = Fraction(127, 5)
"""One inch [mm], by definition.

Sources
-------
`inch-1959`.
"""

FOOT = 12 * INCH
"""One foot [mm]."""
