"""Room for an appliance between the cases of a run."""

from __future__ import annotations

from typing import Annotated

from casewright.job.lengths import Between, Length
from casewright.job.tables.table import Line, Table

__all__ = ["ApplianceTable"]


class ApplianceTable(Table):
    """Room for an appliance between the cases of a run."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    width: Annotated[Length, Between("6", "72", "150", "1900")] | None = None
    """Width that the appliance's own sheet asks for, not that of the appliance. While it is
    missing it is asked for, and what is sized by it waits."""

    height: Annotated[Length, Between("6", "108", "150", "2800")] | None = None
    """How high the appliance stands, for the drawings. Default: as high as a base case."""
