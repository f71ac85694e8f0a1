"""What the record waits for a person to say yes to, as a finding beside the others."""

from __future__ import annotations

from dataclasses import replace

from casewright.findings import Finding, Severity
from casewright.job.load import LoadedJob
from casewright.job.recorded import is_kept
from casewright.job.worked import WorkedJob

__all__ = ["with_reminder"]


def with_reminder(worked: WorkedJob, job: LoadedJob) -> WorkedJob:
    """The job, reminded of a proposal that nobody has said yes to yet.

    Raises
    ------
    RecordError
        When its record cannot be used.
    """
    if not is_kept(job.path):
        return worked
    from casewright.job.resolving import resolve  # nobody else here needs so much

    proposal = resolve(job).proposal
    if proposal.is_empty:
        return worked
    changes = len(proposal.changes) + len(proposal.again)
    stops = proposal.stops
    told = [f"{changes} piece{'s' if changes != 1 else ''} to be made otherwise"] * bool(changes)
    told += [f"{stops} thing{'s' if stops != 1 else ''} impossible now"] * bool(stops)
    finding = Finding(
        rule="open proposal",
        severity=Severity.NOTE,
        path=job.path.stem,
        says=f"what was read and cut brings {' and '.join(told)}; nobody has said yes to it yet",
        remedies=("look at it and accept it: casewright resolve JOB --accept",),
    )
    return replace(worked, findings=(*worked.findings, finding))
