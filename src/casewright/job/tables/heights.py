"""Heights of a room as they were laid out."""

from __future__ import annotations

from typing import Annotated

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Line, Table

__all__ = ["HeightsTable"]


class HeightsTable(Table):
    """An answer of `casewright layout --heights` that was accepted, written by it.

    It holds until it is taken out or another one is accepted: what a new reading of floor or
    ceiling takes or gives goes into the frieze, or stays open above.
    """

    wall_bottom: Annotated[Length, Between("30", "80", "760", "2030")] | None = None
    """Where wall cases begin above the highest floor."""

    wall_height: Annotated[Length, Between("4", "108", "100", "2750")] | None = None
    """How high wall cases are that have no height of their own, also those under a crown that
    would set it."""

    because: Line | None = None
    """What spoke for it."""
