"""Room for an appliance, in a run or in a tall case."""

from __future__ import annotations

from typing import Annotated

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Line, Table

__all__ = ["ApplianceTable"]


class ApplianceTable(Table):
    """Room for an appliance: between the cases of a run, or in a row of a tall case."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    width: Annotated[Length, Between("6", "72", "150", "1900")] | None = None
    """Width that the appliance's own sheet asks for, not that of the appliance. While it is
    missing it is asked for, and what is sized by it waits."""

    height: Annotated[Length, Between("6", "108", "150", "2800")] | None = None
    """How high the appliance stands, for the drawings. Default: as high as a base case. In a row
    of a tall case: clear height of the opening that its sheet asks for; while it is missing it is
    asked for, and the case waits."""

    depth: Annotated[Length, Between("6", "48", "150", "1200")] | None = None
    """In a row of a tall case: clear depth of the opening that its sheet asks for."""

    cooks: bool | None = None
    """Whether it is cooked on: a cooktop, a range. Default: false."""

    clear_above: Annotated[Length, Between("18", "60", "450", "1500")] | None = None
    """Of what is cooked on: the least height that its own sheet wants free above it, up to wood.
    While it is missing it is asked for."""
