"""Each command: call the job, show what comes back, return the exit code."""

from __future__ import annotations

import sys
from pathlib import Path

from casewright.cli.exits import BAD_INPUT, CLEAN, code_of
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.cli.texts import check_lines, parts_lines, why_lines
from casewright.errors import JobFileError
from casewright.job.documents import (
    check_document,
    errors_document,
    parts_document,
    paths_document,
    why_document,
)
from casewright.job.load import load_job
from casewright.job.numbers import hangs_on_plans
from casewright.job.reasons import reasons
from casewright.job.worked import work_out

__all__ = ["run_check", "run_parts", "run_why"]


def run_check(job: Path, *, as_json: bool) -> int:
    """`check`: errors of the file, or else findings, questions and the proof."""
    try:
        spec = load_job(job).spec
    except JobFileError as error:
        if as_json:
            print_json(errors_document(error))
        else:
            print(error, file=sys.stderr)
        return BAD_INPUT
    with working("working out every part"):
        worked = work_out(spec)
    if as_json:
        print_json(check_document(worked))
    else:
        print_lines(check_lines(worked))
    return code_of(worked)


def run_parts(job: Path, *, as_json: bool) -> int:
    """`parts`: every piece."""
    spec = load_job(job).spec
    with working("working out every part"):
        worked = work_out(spec)
    if as_json:
        print_json(parts_document(worked))
    else:
        print_lines(parts_lines(worked))
    return code_of(worked)


def run_why(job: Path, path: str, *, as_json: bool) -> int:
    """`why`: a number and everything it rests on, or the list of what can be asked."""
    spec = load_job(job).spec
    with working("working out every part"):
        worked = work_out(spec)
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
