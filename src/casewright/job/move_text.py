"""How a move of a fence or a blade is written."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Unit, format_length, is_on_grid, size_text

__all__ = ["move_size"]

_FRACTION = {"in": 128, "mm": 20}
_PARTS = {"in": 128, "mm": 100}
"""What a move is written in: twentieths of a millimetre are decimals."""


def move_size(off: Fraction, unit: Unit) -> str:
    """The size of a move: 1/64 where it is a fraction of the tape, else as a calliper shows it.

    Examples
    --------
    >>> move_size(Fraction(254, 640), "in"), move_size(Fraction(1, 4), "mm")
    ('1/64', '0.25')
    """
    size = abs(off)
    if is_on_grid(size, unit, _FRACTION[unit]):
        return format_length(size, unit, precision=_PARTS[unit])
    return size_text(size, unit, calliper=True).removeprefix("~")
