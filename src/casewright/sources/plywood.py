"""How far plywood may be from its label: thickness, size and squareness."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from casewright.sources.inch import INCH
from casewright.sources.provenance import Provenance

__all__ = [
    "PLYWOOD_PANEL",
    "PLYWOOD_THICKNESS",
    "Band",
    "PanelTolerance",
    "PlywoodFace",
    "ThicknessRule",
    "plywood_band",
]

PlywoodFace = Literal["unsanded", "sanded", "hardwood"]

_PS1 = Provenance("ps1", "secondary copy")
_HP1 = Provenance("hp1", "shaky", "not seen in the 2020 text; 0.703 in for 3/4 was seen")


@dataclass(frozen=True, slots=True)
class Band:
    """From the thinnest to the thickest that still is what the label says [mm]."""

    low: Fraction
    high: Fraction

    def holds(self, size: Fraction) -> bool:
        """Whether a reading [mm] lies in the band, ends included."""
        return self.low <= size <= self.high


@dataclass(frozen=True, slots=True)
class ThicknessRule:
    """Tolerance for labels up to a thickness.

    Parameters
    ----------
    up_to
        Greatest label it is for [mm]; None: everything thicker.
    inclusive
        Whether it is for a label of just that thickness.
    under, over
        Tolerance below and above the label [mm].
    share
        Tolerance either way as a share of the label [-], added to the two lengths.
    """

    up_to: Fraction | None
    inclusive: bool
    under: Fraction
    over: Fraction
    share: Fraction
    provenance: Provenance

    def covers(self, label: Fraction) -> bool:
        """Whether a label [mm] falls under this rule, those before it set aside."""
        if self.up_to is None:
            return True
        return label <= self.up_to if self.inclusive else label < self.up_to


@dataclass(frozen=True, slots=True)
class PanelTolerance:
    """Tolerances of a whole panel.

    Parameters
    ----------
    under, over
        Of length and width [mm].
    square
        Out of square per foot of the longest edge [mm].
    straight
        Bow of an edge from corner to corner [mm].
    """

    under: Fraction
    over: Fraction
    square: Fraction
    straight: Fraction
    provenance: Provenance


def _rule(
    provenance: Provenance,
    up_to: str | None,
    *,
    under: str = "0",
    over: str = "0",
    share: str = "0",
    inclusive: bool = True,
) -> ThicknessRule:
    top = None if up_to is None else INCH * Fraction(up_to)
    lengths = INCH * Fraction(under), INCH * Fraction(over)
    return ThicknessRule(top, inclusive, *lengths, Fraction(share), provenance)


PLYWOOD_THICKNESS: Mapping[PlywoodFace, tuple[ThicknessRule, ...]] = MappingProxyType({
    "unsanded": (
        _rule(_PS1, "13/16", under="1/32", over="1/32"),
        _rule(_PS1, None, share="0.05"),
    ),
    "sanded": (
        _rule(_PS1, "3/4", under="1/64", over="1/64"),
        _rule(_PS1, None, share="0.03"),
    ),
    "hardwood": (
        _rule(_HP1, "1/4", under="1/32", inclusive=False),
        _rule(_HP1, None, under="3/64"),
    ),
})  # fmt: skip
"""By face, thinnest first. Unsanded includes touch-sanded and overlaid panels."""

PLYWOOD_PANEL = PanelTolerance(INCH / 16, Fraction(0), INCH / 64, INCH / 16, _PS1)
"""Structural plywood: never over its size, so that a 48 in sheet may be 47 15/16."""


def plywood_band(label: Fraction, face: PlywoodFace) -> tuple[Band, Provenance]:
    """How thick a sheet with that label may be.

    Parameters
    ----------
    label
        Thickness by the label [mm].
    face
        unsanded (with touch-sanded and overlaid), sanded, or hardwood.

    Returns
    -------
    The band [mm] and where the rule comes from.

    Sources
    -------
    `ps1`; `hp1` for hardwood faces.
    """
    rule = next(rule for rule in PLYWOOD_THICKNESS[face] if rule.covers(label))
    share = label * rule.share
    return Band(label - rule.under - share, label + rule.over + share), rule.provenance
