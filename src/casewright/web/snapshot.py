"""The job at one moment, and how far it has been worked out."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.breakdown import Breakdown, SheetCount
from casewright.errors import Problem
from casewright.findings import Finding, Question
from casewright.job.load import LoadedJob
from casewright.job.packets import Purchases
from casewright.job.recorded import Recorded
from casewright.job.worked import WorkedJob

__all__ = ["Snapshot", "Standing"]


@dataclass(frozen=True, slots=True)
class Snapshot:
    """A job file and its record, worked out.

    Parameters
    ----------
    version
        Counts what was written into the file or the record, from 1.
    loaded
        The file.
    recorded
        What the record says.
    worked
        The model, its findings and questions.
    count
        Its sheets as counted soon, or None while they are being counted.
    purchases
        Its cuts and what to buy, or None while they are being planned.
    begun
        Its cuts as they were planned before the first piece was cut, where they were asked for.
    cuts
        Its cuts, as soon as they are planned.
    """

    version: int
    loaded: LoadedJob
    recorded: Recorded
    worked: WorkedJob
    count: SheetCount | None = None
    purchases: Purchases | None = None
    begun: Breakdown | None = None
    cuts: Breakdown | None = None

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All that was found so far."""
        return (self.purchases or self.worked).findings

    @property
    def questions(self) -> tuple[Question, ...]:
        """All that is open so far."""
        return (self.purchases or self.worked).questions


@dataclass(frozen=True, slots=True)
class Standing:
    """What is known now.

    Parameters
    ----------
    version
        Of what lies on the disk.
    snapshot
        The last one that had a meaning; None: none did yet.
    problems
        What is wrong in the file on the disk, or with its record; empty when nothing is.
    """

    version: int
    snapshot: Snapshot | None = None
    problems: tuple[Problem, ...] = ()
