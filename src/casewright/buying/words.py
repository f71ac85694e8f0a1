"""How the buy list writes lengths: as tape and calliper show them, long ones in feet or metres."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Unit
from casewright.stock import AMOUNT

__all__ = ["counted", "long_length", "priced"]

_PER_ONE = ("each", "a ", "per ")
_FOOT = Fraction(3048, 10)
_METRE = Fraction(1000)


def counted(number: int, thing: str, things: str = "") -> str:
    """A number with its noun: '1 sheet', '3 sheets'."""
    return f"{number} {thing if number == 1 else things or thing + 's'}"


def priced(price: str | None, count: int) -> str:
    """A price as it was typed, and what so many cost where it begins with the price of one.

    Examples
    --------
    >>> priced("62.40 a sheet, 3 May, at the yard", 5)
    '62.40 a sheet, 3 May, at the yard; 5 x 62.40 = 312.00'
    >>> priced("3 May: ask again", 5)
    '3 May: ask again'
    """
    found = AMOUNT.match(price or "")
    if price is None or found is None or count < 2:
        return price or ""
    before, whole, point, part = found.groups()
    if not part and not before and not price[found.end() :].lstrip().startswith(_PER_ONE):
        return price  # a bare number might as well be a day
    cents = count * int(whole + (part or "00"))
    total = f"{cents // 100}" + (f"{point}{cents % 100:02}" if part else "")
    return f"{price}; {count} x {found[0]} = {before}{total}"


def long_length(value: Fraction, unit: Unit) -> str:
    """A long length as it is bought: feet or metres, rounded up to a tenth."""
    step = _FOOT if unit == "in" else _METRE
    whole, part = divmod(int(-(-value * 10 // step)), 10)
    return f"{whole}{f'.{part}' if part else ''} {'ft' if unit == 'in' else 'm'}"
