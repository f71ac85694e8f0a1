"""How the buy list writes lengths: as tape and calliper show them, long ones in feet or metres."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Unit, size_text

__all__ = ["counted", "length", "long_length", "thickness"]

_FOOT = Fraction(3048, 10)
_METRE = Fraction(1000)


def counted(number: int, thing: str, things: str = "") -> str:
    """A number with its noun: '1 sheet', '3 sheets'."""
    return f"{number} {thing if number == 1 else things or thing + 's'}"


def length(value: Fraction, unit: Unit) -> str:
    """A length as sold or as a tape shows it, with its unit: '1 1/4"', '32 mm'."""
    return size_text(value, unit)


def thickness(value: Fraction, unit: Unit) -> str:
    """A thickness as sold or as a calliper shows it, with its unit: '18 mm', '0.748"'."""
    return size_text(value, unit, calliper=True)


def long_length(value: Fraction, unit: Unit) -> str:
    """A long length as it is bought: feet or metres, rounded up to a tenth."""
    step = _FOOT if unit == "in" else _METRE
    whole, part = divmod(int(-(-value * 10 // step)), 10)
    return f"{whole}{f'.{part}' if part else ''} {'ft' if unit == 'in' else 'm'}"
