"""What is asked for by an island: runs back to back, its ends, its back, its counter."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.dims import Given

__all__ = ["IslandSpec"]


@dataclass(frozen=True, slots=True)
class IslandSpec:
    """Runs of base cases that stand free in the room.

    Parameters
    ----------
    key, title
        Permanent id; name in words.
    front
        Key of the run that its front is.
    back
        Key of the run that stands with its back to that one; empty: seats, before a finished back.
    end_stock, back_stock
        Keys of the sheets that its end panels and its finished back are cut from.
    length
        Least and greatest of its body, where widths of its cases are left open [mm].
    where
        Place in the job file.
    """

    key: str
    title: str
    front: str
    back: str
    end_stock: str
    back_stock: str
    length: tuple[Given, Given] | None = None
    where: str = ""
