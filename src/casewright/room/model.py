"""The whole job as it is to be made."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Chain, Dim
from casewright.findings import Finding, Question
from casewright.room.specs import JobSpec, RunSpec
from casewright.survey.survey import Survey

__all__ = ["Filler", "Room", "Run", "RunPlinth"]


@dataclass(frozen=True, slots=True)
class Filler:
    """A strip between a run and a wall: cut wide, scribed on the day.

    Parameters
    ----------
    width
        Space it fills [mm].
    part
        The piece as cut, scribe allowance included.
    """

    path: str
    width: Dim
    part: Part


@dataclass(frozen=True, slots=True)
class RunPlinth:
    """A plinth under several cases of a run.

    Parameters
    ----------
    case
        Its model.
    start
        Its left end from the run's left datum [mm].
    carries
        Keys of the cases that stand on it, left to right.
    """

    case: Case
    start: Dim
    carries: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Run:
    """Cases placed along a wall.

    Parameters
    ----------
    starts
        Left outer face of each case from the run's left datum [mm].
    length
        From the left datum to the right end of the last case or filler [mm].
    cases_end
        From the left datum to the right end of the last case [mm].
    plinths
        Those that several of its cases share, left to right.
    """

    spec: RunSpec
    cases: tuple[Case, ...]
    starts: tuple[Dim, ...]
    length: Dim
    cases_end: Dim
    fillers: tuple[Filler, ...]
    plinths: tuple[RunPlinth, ...] = ()


@dataclass(frozen=True, slots=True)
class Room:
    """Everything derived from one job file and its facts.

    Parameters
    ----------
    chain
        Every number by its path.
    designed
        The same build without any facts, for `why`; the same object as `chain` when there are
        none.
    cases
        In the order of the file, then the plinths that several share. `runs` place some of them.
    wall_bottom
        Underside of the wall cases above the finished floor.
    survey
        The room as measured.
    """

    spec: JobSpec
    chain: Chain
    designed: Chain
    cases: tuple[Case, ...]
    runs: tuple[Run, ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    wall_bottom: Dim
    survey: Survey

    @property
    def boxes(self) -> tuple[Case, ...]:
        """The cases without the plinths that several share."""
        return tuple(case for case in self.cases if not case.is_plinth)

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every physical piece, cases first, then fillers."""
        own = [part for case in self.cases for part in case.parts]
        return (*own, *(f.part for run in self.runs for f in run.fillers))
