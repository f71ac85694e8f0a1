"""Writing a length: fractions of an inch as on a tape, or millimetres."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import NamedTuple, TypedDict

from casewright.dims.rounding import Way, round_to
from casewright.dims.units import FINEST, PRECISION, Unit
from casewright.sources import INCH

__all__ = [
    "LengthJson",
    "MixedNumber",
    "exact_text",
    "format_length",
    "is_on_grid",
    "length_json",
    "reading_text",
    "shop_text",
    "size_text",
    "split_fraction",
]

_PER_MILLIMETRE = {"in": (INCH.denominator, INCH.numerator), "mm": (1, 1)}
_THOUSANDTHS = 1000
_CALLIPER = {"in": INCH / _THOUSANDTHS, "mm": Fraction(1, 100)}  # what it still reads [mm]
_CALLIPER_REACH = 6 * INCH
"""As far as a usual calliper opens (common practice) [mm]."""

_MARKS = {"in": '"', "mm": " mm"}


class MixedNumber(NamedTuple):
    """A number in whole and fraction, for stacked fractions on a drawing.

    Parameters
    ----------
    sign
        1, or -1 when under 0 [-].
    whole, numerator, denominator
        Of the size without its sign; the fraction is in lowest terms, 0/1 when there is none [-].
    exact
        False when it was rounded.
    """

    sign: int
    whole: int
    numerator: int
    denominator: int
    exact: bool


class LengthJson(TypedDict):
    """A length as data: exact millimetres, and as the job writes it."""

    mm: str
    text: str


def _counted(value: Fraction, unit: Unit, precision: int) -> tuple[int, bool]:
    """How many parts of a unit the size without its sign has, halves up; whether exactly."""
    over, under = _PER_MILLIMETRE[unit]
    parts = abs(value.numerator) * over * precision
    size = value.denominator * under
    count, rest = divmod(parts, size)
    return (count + 1 if 2 * rest >= size else count), rest == 0


def split_fraction(value: Fraction, unit: Unit, precision: int | None = None) -> MixedNumber:
    """A length as a mixed number.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit to write in.
    precision
        Parts of one unit; rounded to the nearest, a half away from 0. None: 1/32 in, 0.1 mm.

    Examples
    --------
    >>> split_fraction(Fraction(2413, 8), "in")
    MixedNumber(sign=1, whole=11, numerator=7, denominator=8, exact=True)
    """
    parts = precision or PRECISION[unit]
    count, exact = _counted(value, unit, parts)
    whole, rest = divmod(count, parts)
    common = gcd(rest, parts)
    sign = -1 if value < 0 and count else 1
    return MixedNumber(sign, whole, rest // common, parts // common, exact)


def is_on_grid(value: Fraction, unit: Unit, precision: int | None = None) -> bool:
    """Whether a length [mm] is a whole number of parts of a unit."""
    return _counted(value, unit, precision or PRECISION[unit])[1]


def format_length(
    value: Fraction,
    unit: Unit,
    *,
    precision: int | None = None,
    feet: bool = False,
    with_unit: bool = False,
    rounded_mark: str = "~",
) -> str:
    """A length as a person writes it.

    What is on the grid is read back by `parse_length` as the same length.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit to write in.
    precision
        Parts of one unit: 16 for sixteenths of an inch; 1, 10 or 100 for millimetres with no, one
        or two decimals. Rounded to the nearest, a half away from 0. None: 1/32 in, 0.1 mm.
    feet
        Inches as feet and inches, with their marks.
    with_unit
        Put the unit behind the number.
    rounded_mark
        What stands before a number that had to be rounded.

    Raises
    ------
    ValueError
        When the precision is none: a defect of the program.

    Examples
    --------
    >>> format_length(Fraction(2413, 8), "in")
    '11 7/8'
    >>> format_length(Fraction(91, 5), "mm")
    '18.2'
    """
    parts = PRECISION[unit] if precision is None else precision
    number = split_fraction(value, unit, parts)
    if unit == "mm":
        size = _decimals(number, parts)
    elif feet:
        size = _feet(number)
    else:
        size = _mixed(number.whole, number)
    sign = "-" if number.sign < 0 else ""
    mark = _MARKS[unit] if with_unit and not (feet and unit == "in") else ""
    return f"{'' if number.exact else rounded_mark}{sign}{size}{mark}"


def _mixed(whole: int, number: MixedNumber) -> str:
    if not number.numerator:
        return str(whole)
    part = f"{number.numerator}/{number.denominator}"
    return f"{whole} {part}" if whole else part


def _feet(number: MixedNumber) -> str:
    feet, inches = divmod(number.whole, 12)
    size = f'{_mixed(inches, number)}"'
    return f"{feet}' {size}" if feet else size


def _decimals(number: MixedNumber, parts: int) -> str:
    places = len(str(parts)) - 1
    if parts != 10**places:
        msg = f"millimetres are written in 1, 10 or 100 parts, not {parts}"
        raise ValueError(msg)
    if not number.numerator:
        return str(number.whole)
    digits = number.numerator * parts // number.denominator
    return f"{number.whole}.{digits:0{places}d}".rstrip("0")


def shop_text(value: Fraction, unit: Unit, *, with_unit: bool = False) -> str:
    """A length as the shop would say it: a hole at `37 mm` stays that in a job in inches.

    In the job's unit when the tape shows it, or a calliper, as far as one reaches, in thousandths
    of an inch; else in the other unit, named, when that is exact; else in the job's unit, rounded
    and marked.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit of the job.
    with_unit
        Put the job's unit behind the number; the other unit always stands there.

    Examples
    --------
    >>> shop_text(Fraction(37), "in"), shop_text(Fraction(1000, 3), "in")
    ('37 mm', '~13 1/8')
    >>> shop_text(Fraction(254, 20), "in", with_unit=True)
    '1/2"'
    """
    if is_on_grid(value, unit, FINEST[unit]):
        return format_length(value, unit, precision=FINEST[unit], with_unit=with_unit)
    if unit == "in" and abs(value) <= _CALLIPER_REACH and is_on_grid(value, unit, _THOUSANDTHS):
        return _in_thousandths(value, with_unit=with_unit)
    other: Unit = "mm" if unit == "in" else "in"
    if is_on_grid(value, other):
        return format_length(value, other, with_unit=True)
    return format_length(value, unit, with_unit=with_unit)


def _in_thousandths(value: Fraction, *, with_unit: bool) -> str:
    number = split_fraction(value, "in", _THOUSANDTHS)
    sign, mark = "-" if number.sign < 0 else "", _MARKS["in"] if with_unit else ""
    return f"{sign}{_decimals(number, _THOUSANDTHS)}{mark}"


def reading_text(
    value: Fraction, unit: Unit, *, calliper: bool = False, with_unit: bool = False
) -> str:
    """A length as the tool shows it that it is read with; what the tool does not show gets a '~'.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit of the job.
    calliper
        Read with a calliper, to a thousandth of an inch or 0.01 mm; else with a tape.
    with_unit
        Put the job's unit behind the number; the other unit always stands there.

    Examples
    --------
    >>> thick = Fraction(703, 1000) * INCH
    >>> reading_text(thick, "in", calliper=True), reading_text(thick, "in")
    ('0.703', '~11/16')
    """
    if is_on_grid(value, unit, FINEST["in"] if unit == "in" else PRECISION["mm"]):
        return shop_text(value, unit, with_unit=with_unit)
    if calliper:
        fine, rest = round_to(value, _CALLIPER[unit], Way.NEAREST)
        text = shop_text(fine, unit, with_unit=with_unit)
        if unit == "in" and not is_on_grid(fine, unit, FINEST[unit]):
            text = _in_thousandths(fine, with_unit=with_unit)
        return f"{'~' if rest else ''}{text}"
    if unit == "in" and is_on_grid(value, "mm"):
        return shop_text(value, unit)
    return format_length(value, unit, with_unit=with_unit)


def size_text(value: Fraction, unit: Unit, *, calliper: bool = False) -> str:
    """A size with its unit: as goods are sold in either unit, else as its tool shows it.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit of the job.
    calliper
        Read with a calliper; else with a tape.

    Examples
    --------
    >>> thick = Fraction(703, 1000) * INCH
    >>> (
    ...     size_text(Fraction(18), "in"),
    ...     size_text(thick, "in", calliper=True),
    ...     size_text(thick, "in"),
    ... )
    ('18 mm', '0.703"', '~11/16"')
    """
    other: Unit = "mm" if unit == "in" else "in"
    if is_on_grid(value, other):
        return shop_text(value, unit, with_unit=True)
    return reading_text(value, unit, calliper=calliper, with_unit=True)


def exact_text(value: Fraction) -> str:
    """A length as an exact ratio of millimetres, `3302/5`, for data that programs read."""
    return str(value)


def length_json(value: Fraction, unit: Unit) -> LengthJson:
    """A length as data: `{"mm": "3302/5", "text": "26"}`.

    Parameters
    ----------
    value
        Length [mm].
    unit
        Unit of the job, for the text.
    """
    return {"mm": exact_text(value), "text": shop_text(value, unit)}
