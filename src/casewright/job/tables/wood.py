"""Moisture of solid wood: as it is cut, and as the room will make it."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Annotated

from pydantic import Field, PlainValidator, WithJsonSchema

from casewright.job.refusal import refuse
from casewright.job.tables.table import Table

__all__ = ["WoodTable"]

_DRIEST, _DAMPEST = 4, 20


def _moisture(value: object) -> Fraction:
    """Percent, as a meter shows it."""
    number = isinstance(value, int | float | Decimal) and not isinstance(value, bool)
    if not number or not Decimal(str(value)).is_finite():
        refuse("this is no moisture content", "write percent as a number, such as 8 or 7.5")
    percent = Fraction(str(value))
    if not _DRIEST <= percent <= _DAMPEST:
        refuse("wood for interiors is never so dry or so wet", "write a reading from 4 to 20")
    return percent


_Moisture = Annotated[
    Fraction,
    PlainValidator(_moisture),
    WithJsonSchema({"type": "number", "minimum": _DRIEST, "maximum": _DAMPEST}),
]
_Humidity = Annotated[int, Field(ge=10, le=90)]


class WoodTable(Table):
    """How moist the boards are and how moist the room makes them, for panels of solid wood."""

    moisture: _Moisture | None = None
    """Moisture content of the boards in hand in percent, as read with a meter on the day they
    are cut. Default: 8, usual for interiors."""

    humidity: Annotated[list[_Humidity], Field(min_length=2, max_length=2)] | None = None
    """Relative humidity of the room in its driest and in its dampest month, in percent. Default:
    [30, 60]."""
