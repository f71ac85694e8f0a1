"""Everything that is proved between the cases: rows on their walls, trims, islands."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.proof import Failure
from casewright.casework.proof.prove import GRID
from casewright.room.island_proof import prove_island
from casewright.room.model import Room
from casewright.room.proof import prove_run
from casewright.room.trims.bend_proof import bend_failures
from casewright.room.trims.beside_proof import beside_failures

__all__ = ["failures_between"]


def failures_between(room: Room) -> Iterator[Failure]:
    """What does not go together of what the cases' own proofs do not look at."""
    grid = max(room.spec.style["cut_step"].value, GRID)
    spacing = room.spec.style["sleeper_spacing"].value
    for run in room.runs:
        yield from prove_run(run, spacing=spacing, grid=grid).failures
    yield from bend_failures(room, grid)
    yield from beside_failures(room)
    for island in room.islands:
        yield from prove_island(room, island, grid=grid).failures
