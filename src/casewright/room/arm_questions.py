"""Questions about the arms of hinges: cranked ones, where no data sheet says by how much."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.casework.cases import Case
from casewright.findings import Question
from casewright.room.model import Room

__all__ = ["arm_questions"]

_ARMS = (("half_crank", "doors that lie over a part of the edge"), ("inset_crank", "inset doors"))


def arm_questions(room: Room, cases: Iterable[Case]) -> Iterator[Question]:
    """One question for each cranked arm in use whose crank is only the usual one."""
    doors = [door for case in cases for door in case.doors if door.crank is not None]
    for key, called in _ARMS:
        given = getattr(room.spec.hardware.hinge, key)
        if given.origin.where:
            continue
        path = f"hardware.hinge.{key}"
        bored = [door for door in doors if door.crank is not None and door.crank.path == path]
        if bored:
            yield Question(
                path=path,
                needs=f"the crank of the hinges' arm for {called}",
                because="where cups and plates go hangs on it; the number here is a usual one",
                waiting=tuple(
                    hinge.cup.rpartition(".")[0] for d in bored for hinge in d.hinges[:1]
                ),
                how=f"under [hardware.hinge] write {key}, as the sheet in the box gives it",
            )
