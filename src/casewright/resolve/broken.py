"""What of a case does not go together, thing by thing, so that two states can be compared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from casewright.casework.cases import Case
from casewright.casework.proof import Failure, Proof, told_of
from casewright.casework.proof.prove import GRID
from casewright.casework.verification import verify
from casewright.findings import Severity
from casewright.room.as_read import without_play
from casewright.room.between import failures_between
from casewright.room.model import Room

__all__ = ["Broken", "Key", "Told", "broken", "broken_between"]

Key: TypeAlias = tuple[str, tuple[str, ...], str]
"""Check, paths and sentence of a failure: the same by whatever length it fails."""


@dataclass(frozen=True, slots=True)
class Told:
    """One thing that does not hold.

    Parameters
    ----------
    says
        What, in words, with by how much.
    paths
        The parts, joints or features it is about.
    stops
        Whether it stops the work.
    helps
        What can be asked otherwise, best first; empty where no rule of the room says it.
    """

    says: str
    paths: tuple[str, ...]
    stops: bool
    helps: tuple[str, ...] = ()


Broken: TypeAlias = Mapping[Key, Told]


def broken(room: Room, case: Case) -> Broken:
    """What of a case does not go together by its pieces; by how much it is off, its fits judge.

    What glue lines and clamps take up, or a reading of the box shows to be taken up, is left out.
    """
    grid = max(room.spec.style["cut_step"].value, GRID)
    failures = verify(case, hardware=room.spec.hardware, grid=grid).failures
    proof = Proof(tuple(each for each in failures if each.check != "size" or not each.amount))
    return {
        _key(failure): Told(found.says, failure.paths, found.severity is Severity.STOP)
        for failure, found in told_of(without_play(room, case, proof), unit=room.spec.unit)
        if found.severity is not Severity.NOTE
    }


def broken_between(room: Room) -> Broken:
    """What stops the work between the cases: rows on their walls, trims, islands."""
    found: dict[Key, Told] = {
        _key(failure): Told(each.says, failure.paths, stops=True)
        for failure, each in told_of(Proof(tuple(failures_between(room))), unit=room.spec.unit)
        if each.severity is Severity.STOP
    }
    for each in room.findings:
        if each.severity is Severity.STOP:
            found[each.rule, (each.path,), ""] = Told(
                each.says, (each.path,), stops=True, helps=each.remedies
            )
    return found


def _key(failure: Failure) -> Key:
    return failure.check, failure.paths, failure.says
