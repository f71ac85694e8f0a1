"""Moisture of wood from its table, with every number knowing who decided it."""

from __future__ import annotations

from casewright.dims import Given, Origin
from casewright.job.origins import Origins
from casewright.job.tables.wood import WoodTable
from casewright.stock import Moisture, usual_moisture

__all__ = ["moisture_of"]


def moisture_of(table: WoodTable, origins: Origins) -> Moisture:
    """Moisture as read and as the room makes it; the usual ones where nothing is said."""
    made = None
    if table.moisture is not None:
        where = origins.where(("wood", "moisture"))
        made = Given(table.moisture, Origin("measured", "moisture meter", where=where))
    if table.humidity is None:
        usual = usual_moisture()
        return usual if made is None else Moisture(made, usual.dry, usual.damp, placeholder=False)
    low, high = sorted(table.humidity)
    return Moisture.of(low, high, made, origins.where(("wood", "humidity")))
