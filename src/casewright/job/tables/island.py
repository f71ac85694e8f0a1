"""An island: runs back to back, free in the room."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from casewright.job.lengths import Between, Length
from casewright.job.tables.place import IslandSolvedTable, PlaceTable
from casewright.job.tables.table import Key, Line, OneOrMore, Table

__all__ = ["IslandTable"]

_Long = Annotated[Length, Between("12", "240", "300", "6000")]


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

    length: Annotated[list[_Long], Field(min_length=1, max_length=2), OneOrMore(_Long)] | None = (
        None
    )
    """Length of its body, end panels included, where widths of its cases are left out: they get
    equal shares. Two numbers are the least and the greatest that `casewright layout` may choose
    from; until then the least counts."""

    place: PlaceTable | None = None
    """Where it stands in the room. Default: nowhere yet; nothing of its build rests on that."""

    solved: IslandSolvedTable | None = None
    """An answer of `casewright layout` that was accepted."""
