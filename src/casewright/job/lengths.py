"""Lengths and weights as fields of a table: read in the job's unit, kept inside a range."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Any, NoReturn, TypeAlias

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, PlainValidator, WithJsonSchema
from pydantic_core import CoreSchema, core_schema
from pydantic_core.core_schema import ValidationInfo

from casewright.dims import Unit, format_length, parse_length, shop_text
from casewright.errors import LengthError
from casewright.job.refusal import refuse
from casewright.sources import POUND

__all__ = ["Between", "Length", "Weight", "unit_of"]

_LARGEST_EXPONENT = 6

_WEIGHT = re.compile(r"(\d+(?:\.\d+)?)\s*(kg|lb|lbs)")


def unit_of(info: ValidationInfo) -> Unit:
    """Unit of the job being read; inches where it gives none."""
    context: dict[str, Unit] = info.context or {}
    return context.get("unit", "in")


def _length(value: object, info: ValidationInfo) -> Fraction:
    if isinstance(value, str):
        return _written(value, unit_of(info))
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        refuse("this is no length", 'write a length such as "11 7/8", 36 or "302 mm"')
    number = Decimal(value)
    if not number.is_finite() or number.adjusted() > _LARGEST_EXPONENT:
        refuse("this number is no length", "write a length that fits a room")
    if number.adjusted() < -_LARGEST_EXPONENT and number:
        number = Decimal(0)
    return _written(f"{number:f}", unit_of(info))


def _written(text: str, unit: Unit) -> Fraction:
    try:
        return parse_length(text, unit)
    except LengthError as error:
        refuse(error.what, error.want, position=error.position)


Length: TypeAlias = Annotated[
    Fraction,
    PlainValidator(_length),
    WithJsonSchema(
        {
            "type": ["string", "number"],
            "examples": ["11 7/8", 36, "302 mm"],
            "x-kind": "length",
        }
    ),
]
"""A length [mm], written as text or as a plain number in the job's unit."""


@dataclass(frozen=True, slots=True)
class Between:
    """Range a length must lie in, ends included; round numbers in either unit.

    Parameters
    ----------
    low, high
        In an inch job, as written there.
    low_mm, high_mm
        In a metric job.
    """

    low: str
    high: str
    low_mm: str
    high_mm: str

    def bounds(self, unit: Unit) -> tuple[Fraction, Fraction]:
        """Least and greatest [mm]."""
        low, high = (self.low, self.high) if unit == "in" else (self.low_mm, self.high_mm)
        return parse_length(low, unit), parse_length(high, unit)

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Check the range after the length is read."""
        return core_schema.with_info_after_validator_function(self.check, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Tell the range to editors and to the reference."""
        told = handler(schema)
        told["x-range"] = {
            "in": f"{self.low} to {self.high}", "mm": f"{self.low_mm} to {self.high_mm}",
        }  # fmt: skip
        return told

    def check(self, value: Fraction, info: ValidationInfo) -> Fraction:
        """Pass a length that lies in the range; refuse it otherwise."""
        low, high = self.bounds(unit_of(info))
        if not low <= value <= high:
            _refuse_size(value, low, high, unit_of(info))
        return value


def _refuse_size(value: Fraction, low: Fraction, high: Fraction, unit: Unit) -> NoReturn:
    what = f"{_text(value, unit)} is {'too small' if value < low else 'too large'} here"
    want = f"write {_text(low, unit)} to {_text(high, unit)}"
    foreign = "mm" if unit == "in" else "in"
    if low <= _other_unit(value, unit) <= high:
        inch = parse_length("1", "in")
        size = value if unit == "mm" else value / inch
        number = format_length(size, "mm", precision=1000)
        if unit == "mm" and not (fraction := shop_text(size * inch, "in")).startswith("~"):
            number = fraction
        want += f'; if {foreign} was meant: "{number} {foreign}"'
    refuse(what, want, kind="size")


def _text(value: Fraction, unit: Unit) -> str:
    mark = "in" if unit == "in" else "mm"
    text = shop_text(value, unit)
    return text if text.endswith(("mm", '"')) else f"{text} {mark}"


def _other_unit(value: Fraction, unit: Unit) -> Fraction:
    inch = parse_length("1", "in")
    return value / inch if unit == "in" else value * inch


def _weight(value: object) -> Fraction:
    match = _WEIGHT.fullmatch(value.strip()) if isinstance(value, str) else None
    if match is None:
        refuse("this is no weight", 'write one such as "25 kg" or "55 lb"')
    number = Fraction(match[1])
    kilograms = number if match[2] == "kg" else number * POUND
    if not 1 <= kilograms <= 200:
        refuse("this weight is out of reason", 'write "1 kg" to "200 kg"')
    return kilograms


Weight: TypeAlias = Annotated[
    Fraction,
    PlainValidator(_weight),
    WithJsonSchema({"type": "string", "examples": ["25 kg", "55 lb"], "x-kind": "weight"}),
]
"""A weight [kg]."""
