"""Each command: call the job, show what comes back, return the exit code."""

from __future__ import annotations

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
from casewright.job.trial import work_out_job
from casewright.job.worked import WorkedJob

__all__ = ["has_failed", "load_and_work_out", "run_check", "run_parts", "run_why"]


def load_and_work_out(job: Path) -> WorkedJob:
    """A job file read and worked out, with a sign of life.

    Raises
    ------
    JobFileError
        With everything that is wrong in the file.
    """
    loaded = load_job(job)
    with working("working out every part"):
        return work_out_job(loaded)


def has_failed(worked: WorkedJob, *, as_json: bool) -> bool:
    """Whether the proof failed; then nothing is to be cut, and what failed is printed instead."""
    if worked.failures and as_json:
        print_json(check_document(worked))
    elif worked.failures:
        print_lines(check_lines(worked))
    return bool(worked.failures)


def run_check(job: Path, *, as_json: bool) -> int:
    """`check`: errors of the file, or else findings, questions and the proof."""
    worked = load_and_work_out(job)
    if as_json:
        print_json(check_document(worked))
    else:
        print_lines(check_lines(worked))
    return code_of(worked)


def run_parts(job: Path, *, as_json: bool) -> int:
    """`parts`: every piece."""
    worked = load_and_work_out(job)
    if has_failed(worked, as_json=as_json):
        return FAILED_PROOF
    if as_json:
        print_json(parts_document(worked))
    else:
        print_lines(parts_lines(worked))
    return code_of(worked)


def run_why(job: Path, path: str, *, as_json: bool) -> int:
    """`why`: a number and everything it rests on, or the list of what can be asked."""
    worked = load_and_work_out(job)
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
        print_lines(why_lines(nodes, spec.unit))
    return CLEAN
