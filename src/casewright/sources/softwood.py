"""What a dressed softwood board really measures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from casewright.sources.inch import INCH
from casewright.sources.provenance import Provenance

__all__ = [
    "BOARD_THICKNESS",
    "DIMENSION_THICKNESS",
    "LUMBER_WIDTH",
    "DressedSize",
    "dressed_section",
]

_PS20 = Provenance("ps20", "secondary copy")


@dataclass(frozen=True, slots=True)
class DressedSize:
    """One row of the size tables.

    Parameters
    ----------
    nominal
        Size by name [in], a bare number.
    dry, green
        Least dressed size, surfaced dry and surfaced green [mm]; None where not transcribed.
    """

    nominal: Fraction
    dry: Fraction
    green: Fraction | None
    provenance: Provenance


def _rows(
    dry: Mapping[str, str], green: Mapping[str, str] | None = None
) -> Mapping[Fraction, DressedSize]:
    rows = {}
    for nominal, size in dry.items():
        wet = (green or {}).get(nominal)
        rows[_inches(nominal)] = DressedSize(
            _inches(nominal), INCH * _inches(size), INCH * _inches(wet) if wet else None, _PS20
        )
    return MappingProxyType(rows)


def _inches(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


BOARD_THICKNESS = _rows({
    "3/8": "5/16", "1/2": "7/16", "5/8": "9/16", "3/4": "5/8", "1": "3/4", "1 1/4": "1",
    "1 1/2": "1 1/4",
})  # fmt: skip
"""Boards, under 2 in by name: thickness by nominal thickness [in]."""

DIMENSION_THICKNESS = _rows(
    {"2": "1 1/2", "2 1/2": "2", "3": "2 1/2", "3 1/2": "3", "4": "3 1/2"},
    {"2": "1 9/16", "4": "3 9/16"},
)
"""Dimension lumber, 2 in and more by name: thickness by nominal thickness [in]."""

LUMBER_WIDTH = _rows({
    "2": "1 1/2", "3": "2 1/2", "4": "3 1/2", "5": "4 1/2", "6": "5 1/2", "8": "7 1/4",
    "10": "9 1/4", "12": "11 1/4", "14": "13 1/4", "16": "15 1/4",
})  # fmt: skip
"""Width by nominal width [in]."""


def dressed_section(thickness: Fraction, width: Fraction) -> tuple[Fraction, Fraction]:
    """Thickness and width of dry dressed lumber by its nominal size.

    Parameters
    ----------
    thickness, width
        Nominal [in]: 1 and 4 for a 1x4.

    Returns
    -------
    Dressed thickness and width [mm].

    Raises
    ------
    LookupError
        When the tables have no such size.

    Sources
    -------
    `ps20`.

    Examples
    --------
    >>> dressed_section(Fraction(1), Fraction(4)) == (INCH * Fraction(3, 4), INCH * Fraction(7, 2))
    True
    """
    table = BOARD_THICKNESS if thickness < 2 else DIMENSION_THICKNESS
    if thickness not in table or width not in LUMBER_WIDTH:
        msg = f"no dressed size is listed for {thickness}x{width}"
        raise LookupError(msg)
    return table[thickness].dry, LUMBER_WIDTH[width].dry
