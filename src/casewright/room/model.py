"""The whole job as it is to be made."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from itertools import pairwise

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.dims import Chain, Dim
from casewright.findings import Finding, Question
from casewright.room.board_screws import BoardScrews
from casewright.room.free_stand import FreeStand
from casewright.room.island_spec import IslandSpec
from casewright.room.made_cases import MadeCase
from casewright.room.specs import ApplianceSpec, JobSpec, RunSide, RunSpec
from casewright.room.trims.model import Trim
from casewright.stock import Offcut
from casewright.survey.survey import Survey

__all__ = ["Appliance", "AsDesigned", "Filler", "Island", "Room", "Run", "RunPlinth"]


@dataclass(frozen=True, slots=True)
class Filler:
    """A strip between a run and what it ends at: cut wide, scribed on the day.

    Parameters
    ----------
    side
        End of the run that it closes.
    width
        Space it fills at its narrowest, as planned [mm].
    part
        Its face as cut, scribe allowance included.
    lip
        The strip behind its case edge that is screwed to the case; None: the gap is too narrow.
    gaps
        Gap at the foot, half way up and at the head [mm]: as read, else as the wall was read.
    beyond
        From the end of the wall to the gap [mm]: nothing, or in a corner how deep the other run
        stands.
    """

    path: str
    side: RunSide
    width: Dim
    part: Part
    lip: Part | None
    gaps: tuple[Dim, ...]
    beyond: Dim

    @property
    def parts(self) -> tuple[Part, ...]:
        """Its face, and its lip where it has one."""
        return (self.part,) if self.lip is None else (self.part, self.lip)

    @property
    def is_read(self) -> bool:
        """Whether its gap was read beside the case."""
        return all(gap.built is not None for gap in self.gaps)

    def with_parts(self, change: Callable[[Part], Part]) -> Filler:
        """The same with every part changed."""
        lip = None if self.lip is None else change(self.lip)
        return replace(self, part=change(self.part), lip=lip)


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
class Appliance:
    """An appliance in its place.

    Parameters
    ----------
    width
        Of the opening that its sheet asks for [mm].
    start
        Its left end from the run's left datum [mm].
    panel
        The panel on its front; None: it has none.
    second_panel
        That of its second door.
    second_start
        Where the room of that begins, from the appliance's left end [mm].
    """

    spec: ApplianceSpec
    width: Dim
    start: Dim
    panel: Case | None = None
    second_panel: Case | None = None
    second_start: Dim | None = None

    @property
    def panels(self) -> tuple[tuple[Case, Dim], ...]:
        """Its panels, each with where its room begins, from the run's left datum [mm]."""
        first = () if self.panel is None else ((self.panel, self.start),)
        if self.second_panel is None:
            return first
        at = self.start if self.second_start is None else self.start + self.second_start
        return (*first, (self.second_panel, at))

    def with_panels(self, cases: Mapping[str, Case]) -> Appliance:
        """The same with its panels taken from others, by their keys."""
        one, other = self.panel, self.second_panel
        return replace(
            self, panel=None if one is None else cases[one.key],
            second_panel=None if other is None else cases[other.key],
        )  # fmt: skip


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
        From the left datum to the right end of the last case or appliance [mm].
    lift
        Lower ends of its cases above the floor [mm].
    plinths
        Those that several of its cases share, left to right.
    appliances
        Those between its cases, left to right.
    housed
        Those that its surrounds stand round and that have panels.
    trims
        What is fitted to it once it stands.
    pulled_off
        Ends without a filler, and how far off the wall they are [mm]: where a blind corner base
        stands off it, or a diagonal corner of the run round it begins the row.
    begins
        From the wall's left end to the run's left datum [mm].
    """

    spec: RunSpec
    cases: tuple[Case, ...]
    starts: tuple[Dim, ...]
    length: Dim
    cases_end: Dim
    lift: Dim
    fillers: tuple[Filler, ...]
    begins: Dim
    plinths: tuple[RunPlinth, ...] = ()
    appliances: tuple[Appliance, ...] = ()
    housed: tuple[Appliance, ...] = ()
    trims: tuple[Trim, ...] = ()
    pulled_off: Mapping[RunSide, Dim] = field(default_factory=dict)

    @property
    def neighbours(self) -> tuple[tuple[Case, Case], ...]:
        """Cases that stand side by side with no appliance between them, left to right."""
        by_key = {case.key: case for case in self.cases}
        return tuple(
            (by_key[one], by_key[other])
            for one, other in pairwise(self.spec.places)
            if one in by_key and other in by_key
        )

    @property
    def panelled(self) -> tuple[Appliance, ...]:
        """Appliances that may have panels: between its cases, and in its surrounds."""
        return (*self.appliances, *self.housed)

    @property
    def own_parts(self) -> tuple[Part, ...]:
        """Pieces that belong to no case of it: fillers and trims."""
        return (
            *(part for filler in self.fillers for part in filler.parts),
            *(part for trim in self.trims for part in trim.parts),
        )

    def with_cases(self, cases: Mapping[str, Case]) -> Run:
        """The same with its cases, plinths and panels taken from others, by their keys."""
        return replace(
            self,
            cases=tuple(cases[case.key] for case in self.cases),
            plinths=tuple(replace(p, case=cases[p.case.key]) for p in self.plinths),
            appliances=tuple(each.with_panels(cases) for each in self.appliances),
            housed=tuple(each.with_panels(cases) for each in self.housed),
        )

    def with_parts(self, change: Callable[[Part], Part]) -> Run:
        """The same with every part that belongs to no case changed."""
        return replace(
            self,
            fillers=tuple(each.with_parts(change) for each in self.fillers),
            trims=tuple(each.with_parts(change) for each in self.trims),
        )


@dataclass(frozen=True, slots=True)
class Island:
    """Runs that stand free in the room, between end panels.

    Parameters
    ----------
    key
        Of the case that its panels and floor cleats are, in axes of its own: x along its front
        from the outside of the left end panel, y up from the floor, z from its back to the front
        edges of its boxes.
    screws
        What holds it together beyond its cases' own.
    """

    spec: IslandSpec
    key: str
    screws: tuple[BoardScrews, ...]


class AsDesigned:
    """The chain of a job without any facts: built when it is first asked for, and kept.

    Parameters
    ----------
    chain
        Where it is at hand; None: not yet.
    make
        Builds it.
    """

    __slots__ = ("_chain", "_make")

    def __init__(self, chain: Chain | None, make: Callable[[], Chain] | None = None) -> None:
        self._chain, self._make = chain, make

    @property
    def chain(self) -> Chain:
        """The chain.

        Raises
        ------
        ValueError
            When there is neither a chain nor what makes it: a defect of the program.
        """
        if self._chain is None:
            if self._make is None:
                msg = "nothing builds the job as it was designed"
                raise ValueError(msg)
            self._chain = self._make()
        return self._chain


@dataclass(frozen=True, slots=True)
class Room:
    """Everything derived from one job file and its facts.

    Parameters
    ----------
    chain
        Every number by its path.
    as_designed
        The same build without any facts, for `why`.
    cases
        In the order of the file, then the plinths that several share, the panels of appliances
        and those of islands. `runs` place some of them.
    wall_bottom
        Underside of the wall cases above the finished floor.
    survey
        The room as measured.
    offcuts
        What was kept of sheets and is on hand.
    islands
        Runs that stand free, with what goes round them.
    free
        Islands, and cases in no run, whose place on the floor is known.
    made
        Cases as they were built, for another build to take over.
    """

    spec: JobSpec
    chain: Chain
    as_designed: AsDesigned = field(compare=False)
    cases: tuple[Case, ...]
    runs: tuple[Run, ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    wall_bottom: Dim
    survey: Survey
    offcuts: tuple[Offcut, ...] = ()
    islands: tuple[Island, ...] = ()
    free: tuple[FreeStand, ...] = ()
    made: Mapping[str, MadeCase] = field(default_factory=dict)

    @property
    def designed(self) -> Chain:
        """Every number without any facts; the same object as `chain` when there are none."""
        return self.as_designed.chain

    def runs_of(self, island: Island) -> tuple[Run, ...]:
        """The run that is its front, and the one behind it, if any."""
        runs = {run.spec.key: run for run in self.runs}
        wanted = (island.spec.front, island.spec.back)
        return tuple(runs[key] for key in wanted if key)

    def case_of(self, island: Island) -> Case:
        """Its panels and cleats."""
        return next(case for case in self.cases if case.key == island.key)

    @property
    def in_islands(self) -> frozenset[str]:
        """Keys of the cases that stand in islands, at no wall."""
        return frozenset(
            case.key for each in self.islands for run in self.runs_of(each) for case in run.cases
        )

    @property
    def boxes(self) -> tuple[Case, ...]:
        """The cases without the plinths that several share and the panels of appliances."""
        return tuple(case for case in self.cases if case.spec.is_box)

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every physical piece, cases first, then fillers."""
        own = [part for case in self.cases for part in case.parts]
        return (*own, *(part for run in self.runs for part in run.own_parts))
