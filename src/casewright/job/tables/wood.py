"""Moisture of solid wood: as it is cut, and as the room will make it."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.tables.table import Table

__all__ = ["WoodTable"]

_Humidity = Annotated[int, Field(ge=10, le=90)]


class WoodTable(Table):
    """How moist the boards are and how moist the room makes them, for panels of solid wood."""

    moisture: Annotated[float, Field(ge=4, le=20)] | None = None
    """Moisture content of the boards in hand in percent, as read with a meter on the day they
    are cut. Default: 8, usual for interiors."""

    humidity: Annotated[list[_Humidity], Field(min_length=2, max_length=2)] | None = None
    """Relative humidity of the room in its driest and in its dampest month, in percent. Default:
    [30, 60]."""
