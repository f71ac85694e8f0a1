"""Pockets stay off faces that show, unless they are to be plugged."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure

__all__ = ["check_shown"]


def check_shown(case: Assembled) -> Iterator[Failure]:
    """Pockets in a face that shows when the case stands in the room."""
    if case.model.spec.pockets == "plugged":
        return
    for path, rows in case.rows.items():
        part = case.solids[path].part
        for row in rows:
            plane = "t1" if row.bores.face == "A" else "t0"
            if row.bores.kind == "pocket" and plane in part.shows:
                says = f"pockets would show on {part.title}"
                yield Failure("show", (row.bores.path, path), says)
