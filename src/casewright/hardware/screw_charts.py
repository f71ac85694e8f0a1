"""Usual lengths of screws: by the board for pocket holes, as sold for walls."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from casewright.dims import Unit
from casewright.sources import INCH

__all__ = ["WALL_SCREWS", "pocket_screw_length", "screw_lengths"]

_POCKET: tuple[tuple[Fraction, Mapping[Unit, Fraction]], ...] = tuple(
    (Fraction(thickest) * INCH, {"in": Fraction(inches) * INCH, "mm": Fraction(millimetres)})
    for thickest, inches, millimetres in (
        ("31/64", "3/4", "20"), ("11/16", "1", "25"), ("13/16", "5/4", "32"),
        ("19/16", "3/2", "38"), ("7/4", "5/2", "64"),
    )
)  # fmt: skip
"""Thickest board for each length of screw, in the sizes sold in either unit [mm]."""


def pocket_screw_length(thickness: Fraction, unit: Unit = "in") -> Fraction | None:
    """Length of pocket screw for two boards of a thickness.

    Parameters
    ----------
    thickness
        Of the board that is bored [mm].
    unit
        Whose sizes are sold: 1 1/4 in, or 32 mm.

    Returns
    -------
    Length [mm]; None: thicker than the chart goes.

    Sources
    -------
    `common practice`: as jig makers' charts give them, from memory; the chart of the jig in hand
    governs.

    Examples
    --------
    >>> pocket_screw_length(Fraction(18), "mm")
    Fraction(32, 1)
    """
    return next((screw[unit] for thickest, screw in _POCKET if thickness <= thickest), None)


WALL_SCREWS: Mapping[Unit, tuple[Fraction, ...]] = MappingProxyType({
    "in": tuple(Fraction(n) * INCH for n in ("2", "9/4", "5/2", "3", "7/2", "4")),
    "mm": tuple(Fraction(n) for n in (50, 60, 65, 70, 80, 90, 100)),
})  # fmt: skip
"""Lengths that structural washer-head screws are sold in [mm] (common practice, from memory)."""

_SCREWS: Mapping[Unit, tuple[Fraction, ...]] = MappingProxyType({
    "in": tuple(Fraction(n) * INCH for n in (
        "5/8", "3/4", "1", "5/4", "3/2", "13/8", "7/4", "2", "9/4", "5/2", "3",
    )),
    "mm": tuple(Fraction(n) for n in (16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80)),
})  # fmt: skip


def screw_lengths(unit: Unit = "in") -> tuple[Fraction, ...]:
    """Lengths that wood screws are sold in [mm], shortest first.

    Sources
    -------
    `common practice`: from memory.
    """
    return _SCREWS[unit]
