"""A job worked out: the model, its proof, what was found and what is still to be asked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.casework.cases import Case
from casewright.casework.proof import (
    PROOF_RULE,
    Failure,
    Proof,
    as_findings,
    gathered,
    of_goods,
    that_follow,
)
from casewright.casework.proof.prove import GRID
from casewright.casework.verification import verify
from casewright.checks import check
from casewright.dims import Chain, Dim, Unit
from casewright.facts import NO_FACTS, Facts
from casewright.findings import Finding, Question, Severity, entered
from casewright.job.collector import collector_at_rest
from casewright.room.anew import asks_anew
from casewright.room.as_read import told_as_read, without_play
from casewright.room.between import proofs_between
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import JobSpec

__all__ = ["WorkedJob", "proof_numbers", "work_out"]

_ORDER = {Severity.STOP: 0, Severity.CARE: 1, Severity.NOTE: 2}


@dataclass(frozen=True, slots=True)
class WorkedJob:
    """Everything derived from a job but cutting and paper.

    Parameters
    ----------
    room
        The model.
    failures
        What the proof of assembly or the replay brought up by case: a defect of the program.
        Empty on a sound build.
    findings
        What is bad, risky or needs care, the gravest first.
    questions
        What is missing.
    facts
        Sizes of real things that it was worked out with.
    """

    room: Room
    failures: tuple[tuple[str, Failure], ...]
    findings: tuple[Finding, ...]
    questions: tuple[Question, ...]
    facts: Facts

    @property
    def holds(self) -> bool:
        """Whether everything is proved to go together, with the goods the job names."""
        stops = (f for f in self.findings if f.severity is Severity.STOP)
        return not (self.failures or any(f.rule.startswith(PROOF_RULE) for f in stops))

    @property
    def is_clean(self) -> bool:
        """Whether nothing was found and nothing is open."""
        return not (self.failures or self.findings or self.questions)


def work_out(spec: JobSpec, facts: Facts = NO_FACTS) -> WorkedJob:
    """Build the room, prove it, replay its assembly, and run every check.

    Parameters
    ----------
    facts
        Sizes of real things. With them a failed proof speaks of the things, and is a finding;
        without, of the program.
    """
    with collector_at_rest():
        return _worked(spec, facts)


def _worked(spec: JobSpec, facts: Facts) -> WorkedJob:
    room = build(spec, facts)
    proved, failures = _proved(room, known=bool(facts))
    found = [*room.findings, *proved, *check(room)]
    # What goes with a gap is told after it.
    found.sort(key=lambda each: (_ORDER[each.severity], each.rule == f"{PROOF_RULE}as built"))
    return WorkedJob(room, tuple(failures), _laid_out(room, found), room.questions, facts)


def proof_numbers(room: Room, chain: Chain) -> None:
    """Enter on a chain of the room's by how much each place is off that does not go together."""
    found, _ = _proved(room, known=bool(chain.facts))
    for each in found:
        entered(each.numbers, chain.nodes)


def _proved(room: Room, *, known: bool) -> tuple[list[Finding], list[tuple[str, Failure]]]:
    """What the proof brings up: as findings, and what is a defect of the program.

    Parameters
    ----------
    known
        Whether sizes of real things are.
    """
    spec, nodes = room.spec, room.chain.nodes
    step = spec.style["cut_step"].value
    found: list[Finding] = []
    failures: list[tuple[str, Failure]] = []
    out = [fit.path for fit in room.chain.fits.values() if not fit.holds] if known else []
    for case in room.cases:
        proof = Proof(verify(case, hardware=spec.hardware, grid=max(step, GRID)).failures)
        if known:
            told = as_findings(without_play(room, case, proof), unit=spec.unit, nodes=nodes)
            is_told = any(path.startswith(f"{case.key}.") for path in out)
            found.extend(gathered(told, case.key, case.spec.title, is_told=is_told))
            found.extend(told_as_read(room, case))
        elif proof.failures:
            told, untold = _told(case, proof, spec.unit, nodes)
            found.extend(told)
            failures.extend((case.key, failure) for failure in untold)
    for between in proofs_between(room):
        if known or _was_read(spec, between.owner or "run"):
            found.extend(as_findings(between.proof, unit=spec.unit, nodes=nodes))
            continue
        untold = between.proof.failures
        if between.case is not None and untold:
            told, untold = _told(between.case, between.proof, spec.unit, nodes)
            found.extend(told)
        failures.extend((between.owner or failure.paths[0], failure) for failure in untold)
    return found, failures


def _laid_out(room: Room, found: list[Finding]) -> tuple[Finding, ...]:
    """Findings with what a run would be now, where they ask for it to be laid out anew."""
    if not any(asks_anew(remedy) for finding in found for remedy in finding.remedies):
        return tuple(found)
    from casewright.job.relayout import told_anew  # its solver takes long to load

    return told_anew(room, found)


def _was_read(spec: JobSpec, owner: str) -> bool:
    """Whether something of a run, or of any, was read as built and stands in the job file.

    Where a length was mistyped the proof speaks of that, not of the program.
    """
    return any(path.startswith(f"{owner}.") for path in spec.file_facts)


def _told(
    case: Case, proof: Proof, unit: Unit, nodes: Mapping[str, Dim]
) -> tuple[tuple[Finding, ...], tuple[Failure, ...]]:
    """Failures as findings where goods are to blame for them, and the ones that are left.

    Goods are to blame for all that fails in a case that they stop anyway.
    """
    told = of_goods(proof, case.spec.title, unit, nodes)
    stops = [found for found in (*case.findings, *told) if found.severity is Severity.STOP]
    if stops:
        return (*told, *that_follow(proof, case.spec.title, stops[0])), ()
    return told, proof.failures
