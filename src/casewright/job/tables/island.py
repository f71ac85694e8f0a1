"""An island: runs back to back, free in the room."""

from __future__ import annotations

from casewright.job.tables.place import IslandSolvedTable, PlaceTable
from casewright.job.tables.table import Key, Line, Table

__all__ = ["IslandTable"]


class IslandTable(Table):
    """Runs of base cases on ladders, back to back, between finished ends."""

    title: Line | None = None
    """What people call it. Default: the key, with spaces for _."""

    front: Key
    """The run that its front is, by its name under [run.NAME]: open at both ends, at no wall, of
    base cases with toe = "plinth"."""

    back: Key | None = None
    """The run that stands behind it, back to back, as long and as high. Left out: seats behind
    it, before a finished back."""

    end_sheet: Key | None = None
    """Sheet that the end panels are cut from. Default: the sheet of boxes."""

    back_sheet: Key | None = None
    """Sheet that the finished back is cut from, where there are seats. Default: as the ends."""

    place: PlaceTable | None = None
    """Where it stands in the room. Default: nowhere yet; nothing of its build rests on that."""

    solved: IslandSolvedTable | None = None
    """An answer of `casewright layout` that was accepted."""
