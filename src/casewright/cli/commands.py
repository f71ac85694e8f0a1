"""Each command: call the job, show what comes back, return the exit code."""

from __future__ import annotations

import sys
from pathlib import Path

from casewright.cli.exits import CLEAN, FAILED_PROOF, code_of
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.cli.texts import check_lines, parts_lines, why_lines
from casewright.job.documents import (
    check_document,
    parts_document,
    paths_document,
    why_document,
)
from casewright.job.load import load_job
from casewright.job.numbers import hangs_on_plans
from casewright.job.reasons import reasons
from casewright.job.recorded import Use, read_record, work_out_recorded
from casewright.job.reminders import with_reminder
from casewright.job.worked import WorkedJob
from casewright.record import Rescue

__all__ = ["has_failed", "load_and_work_out", "run_check", "run_parts", "run_why", "tell_rescue"]


def load_and_work_out(job: Path, use: Use | None = None, *, reminds: bool = False) -> WorkedJob:
    """A job file read and worked out with its record, with a sign of life.

    Parameters
    ----------
    use
        Which state of the record, or none of it.
    reminds
        Whether an open proposal is told among the findings.

    Raises
    ------
    JobFileError
        With everything that is wrong in the file.
    RecordError
        When its record cannot be used.
    """
    loaded = load_job(job)
    recorded = read_record(job, use)
    tell_rescue(recorded.rescue)
    with working("working out every part"):
        worked = work_out_recorded(loaded, recorded)
        return with_reminder(worked, loaded) if reminds and use is None else worked


def tell_rescue(rescue: Rescue | None) -> None:
    """Say that a record was damaged, and what is left of it."""
    if rescue is not None:
        print(rescue, file=sys.stderr)


def has_failed(worked: WorkedJob, *, as_json: bool) -> bool:
    """Whether the proof failed; then nothing is to be cut, and what failed is printed instead."""
    if worked.failures and as_json:
        print_json(check_document(worked))
    elif worked.failures:
        print_lines(check_lines(worked))
    return bool(worked.failures)


def run_check(job: Path, use: Use | None = None, *, as_json: bool) -> int:
    """`check`: errors of the file, or else findings, questions and the proof."""
    worked = load_and_work_out(job, use, reminds=True)
    if as_json:
        print_json(check_document(worked))
    else:
        print_lines(check_lines(worked))
    return code_of(worked)


def run_parts(job: Path, use: Use | None = None, *, as_json: bool) -> int:
    """`parts`: every piece."""
    worked = load_and_work_out(job, use)
    if has_failed(worked, as_json=as_json):
        return FAILED_PROOF
    if as_json:
        print_json(parts_document(worked))
    else:
        print_lines(parts_lines(worked))
    return code_of(worked)


def run_why(job: Path, path: str, use: Use | None = None, *, as_json: bool) -> int:
    """`why`: a number and everything it rests on, or the list of what can be asked."""
    worked = load_and_work_out(job, use)
    spec = worked.room.spec
    if not path:
        paths = sorted(worked.room.chain.nodes)
        if as_json:
            print_json(paths_document(spec, paths))
        else:
            print_lines(paths)
        return CLEAN
    what = "planning the cuts" if hangs_on_plans(worked.room, path) else "looking it up"
    with working(what):
        nodes = reasons(worked.room, path)
    if as_json:
        print_json(why_document(spec, nodes))
    else:
        print_lines(why_lines(nodes, spec.unit, spec.shop))
    return CLEAN
