"""Replay the assembly of a case, step by step."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.pocket_screws import PocketScrew, pocket_screws
from casewright.casework.replay.bench import moves
from casewright.casework.replay.drivers import check_drivers
from casewright.casework.replay.holds import check_holds
from casewright.casework.replay.marks import check_marks
from casewright.casework.replay.metal import check_metal
from casewright.casework.replay.order import check_order
from casewright.casework.replay.paths import check_paths
from casewright.casework.replay.shown import check_shown
from casewright.casework.replay.square import check_square

__all__ = ["Replay", "replay", "replay_assembled", "replay_failures"]


@dataclass(frozen=True, slots=True)
class Replay:
    """The outcome of replaying an assembly: everything that cannot be done as it says."""

    failures: tuple[Failure, ...]

    @property
    def holds(self) -> bool:
        """Whether it can be put together."""
        return not self.failures


def replay(case: Case) -> Replay:
    """Carry out the steps of a case: order, straight paths, room for the driver, square.

    Fasteners other than pocket screws have no exact places in the model; room for a nailer is
    not checked.
    """
    assembled = Assembled.of(case)
    return replay_assembled(assembled, tuple(pocket_screws(assembled)))


def replay_assembled(case: Assembled, screws: tuple[PocketScrew, ...]) -> Replay:
    """`replay` for a case already in whole units."""
    return Replay(tuple(replay_failures(case, screws)))


def replay_failures(case: Assembled, screws: tuple[PocketScrew, ...]) -> Iterator[Failure]:
    """What `replay_assembled` finds, one by one."""
    steps = list(moves(case))
    by_joint: dict[str, list[PocketScrew]] = {}
    for screw in screws:
        if screw.joint is not None:
            by_joint.setdefault(screw.joint.path, []).append(screw)
    yield from check_order(case, steps)
    yield from check_marks(case, steps)
    yield from check_paths(case, steps)
    yield from check_drivers(case, steps, by_joint)
    yield from check_metal(case, screws)
    yield from check_square(case, steps)
    yield from check_holds(case, steps)
    yield from check_shown(case)
