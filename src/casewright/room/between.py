"""Everything that is proved between the cases: rows on their walls, trims, islands."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.casework.proof import Failure, Proof
from casewright.casework.proof.prove import GRID
from casewright.room.island_proof import prove_island
from casewright.room.model import Room
from casewright.room.proof import prove_run
from casewright.room.trims.bend_proof import bend_failures
from casewright.room.trims.beside_proof import beside_failures

__all__ = ["RoomProof", "failures_between", "proofs_between"]


class RoomProof(NamedTuple):
    """What was proved of one row, of all trims, or of one island.

    Parameters
    ----------
    owner
        Path of the row or the island; empty of trims, which are named by their failures.
    proof
        What fails.
    case
        The island as a case, whose goods may be to blame; None of all else.
    """

    owner: str
    proof: Proof
    case: Case | None = None


def proofs_between(room: Room) -> Iterator[RoomProof]:
    """The proofs of what the cases' own proofs do not look at."""
    grid = max(room.spec.style["cut_step"].value, GRID)
    spacing = room.spec.style["sleeper_spacing"].value
    for run in room.runs:
        yield RoomProof(f"run.{run.spec.key}", prove_run(run, spacing=spacing, grid=grid))
    yield RoomProof("", Proof((*bend_failures(room, grid), *beside_failures(room))))
    for island in room.islands:
        proof = prove_island(room, island, grid=grid)
        yield RoomProof(island.key, proof, room.case_of(island))


def failures_between(room: Room) -> Iterator[Failure]:
    """What does not go together of what the cases' own proofs do not look at."""
    for each in proofs_between(room):
        yield from each.proof.failures
