"""Both verdicts on a case: it is what was meant, and it can be put together."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import chain

from casewright.casework.cases import Case
from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure, Proof
from casewright.casework.proof.pocket_screws import pocket_screws
from casewright.casework.proof.prove import (
    GRID,
    fit_failures,
    making_failures,
    odd_parts,
    prove_assembled,
)
from casewright.casework.replay.replay import Replay, replay_assembled, replay_failures
from casewright.hardware import HardwareList

__all__ = ["Verification", "goes_together", "verify"]


@dataclass(frozen=True, slots=True)
class Verification:
    """Proof and replay of one case."""

    proof: Proof
    replay: Replay

    @property
    def failures(self) -> tuple[Failure, ...]:
        """Everything that does not hold, the proof's first."""
        return (*self.proof.failures, *self.replay.failures)

    @property
    def holds(self) -> bool:
        """Whether nothing failed."""
        return not self.failures


def verify(
    case: Case, *, hardware: HardwareList | None = None, grid: Fraction = GRID
) -> Verification:
    """Prove a case and replay its assembly, from its sizes, features and placements alone.

    Parameters
    ----------
    hardware
        Data sheets, for the law of the hinges' overlay and the sizes of holes.
    grid
        How far rounding may move the outside of a case off what was asked for [mm].
    """
    assembled = Assembled.of(case)
    screws = tuple(pocket_screws(assembled))
    return Verification(
        prove_assembled(assembled, screws, hardware=hardware, grid=grid),
        replay_assembled(assembled, screws),
    )


def goes_together(
    case: Case,
    *,
    hardware: HardwareList | None = None,
    grid: Fraction = GRID,
    like: Assembled | None = None,
) -> bool:
    """Whether `verify` would find nothing: what is soonest looked through is looked at first.

    Parameters
    ----------
    like
        A case with mostly the same parts, for who asks of many that differ little.
    """
    assembled = Assembled.of(case, like)
    if odd_parts(assembled) or next(making_failures(assembled), None) is not None:
        return False
    screws = tuple(pocket_screws(assembled))
    found = chain(
        fit_failures(assembled, screws, hardware=hardware, grid=grid),
        replay_failures(assembled, screws),
    )
    return next(found, None) is None
