"""The pound: 0.453 592 37 kg, exactly."""

from __future__ import annotations

from fractions import Fraction

__all__ = ["POUND"]

POUND = Fraction("0.45359237")
"""One avoirdupois pound [kg], by definition.

Sources
-------
`inch-1959`: the same agreement defines the pound.
"""
