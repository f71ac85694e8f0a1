"""The two units a job may be written in."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal, TypeAlias

from casewright.sources import INCH

__all__ = ["FINEST", "PRECISION", "TAPE_MARK", "Unit"]

Unit: TypeAlias = Literal["in", "mm"]
"""Unit of a job: what a bare number means and how lengths are written back."""

PRECISION: Mapping[Unit, int] = MappingProxyType({"in": 32, "mm": 10})
"""Parts of one unit that a shop reads off by default: 1/32 in, 0.1 mm."""

FINEST: Mapping[Unit, int] = MappingProxyType({"in": 64, "mm": 100})
"""Finest parts of one unit that are still written as exact on paper: 1/64 in, 0.01 mm."""

TAPE_MARK: Mapping[Unit, Fraction] = MappingProxyType({"in": INCH / 16, "mm": Fraction(1)})
"""From mark to mark of a tape [mm]: what it is read to at a glance (common practice)."""
