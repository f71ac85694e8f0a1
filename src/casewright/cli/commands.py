"""Each command: call the job, show what comes back, return the exit code."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from casewright.cli.main import BAD_INPUT, CLEAN, FAILED_PROOF, OPEN
from casewright.cli.progress import working
from casewright.cli.texts import check_lines, parts_lines, why_lines
from casewright.errors import JobFileError
from casewright.job.documents import (
    check_document,
    errors_document,
    parts_document,
    why_document,
)
from casewright.job.load import load_job
from casewright.job.packets import packet_files, plan_purchases
from casewright.job.reasons import reasons
from casewright.job.worked import WorkedJob, work_out
from casewright.outputs.files import write_folder

__all__ = ["run_check", "run_packet", "run_parts", "run_why"]


def _code(worked: WorkedJob) -> int:
    if worked.failures:
        return FAILED_PROOF
    return CLEAN if worked.is_clean else OPEN


def _print(lines: Iterable[str]) -> None:
    for line in lines:
        print(line)


def _print_json(document: Any) -> None:
    json.dump(document, sys.stdout, indent=1, ensure_ascii=False)
    print()


def run_check(job: Path, *, as_json: bool) -> int:
    """`check`: errors of the file, or else findings, questions and the proof."""
    try:
        spec = load_job(job).spec
    except JobFileError as error:
        if as_json:
            _print_json(errors_document(error))
        else:
            print(error, file=sys.stderr)
        return BAD_INPUT
    with working("working out every part"):
        worked = work_out(spec)
    if as_json:
        _print_json(check_document(worked))
    else:
        _print(check_lines(worked))
    return _code(worked)


def run_parts(job: Path, *, as_json: bool) -> int:
    """`parts`: every piece."""
    spec = load_job(job).spec
    with working("working out every part"):
        worked = work_out(spec)
    if as_json:
        _print_json(parts_document(worked))
    else:
        _print(parts_lines(worked))
    return _code(worked)


def run_why(job: Path, path: str, *, as_json: bool) -> int:
    """`why`: a number and everything it rests on, or the list of what can be asked."""
    spec = load_job(job).spec
    with working("working out every part"):
        worked = work_out(spec)
    if not path:
        _print(sorted(worked.room.chain.nodes))
        return CLEAN
    nodes = reasons(worked.room, path)
    if as_json:
        _print_json(why_document(spec, nodes))
    else:
        _print(why_lines(nodes, spec.unit))
    return CLEAN


def run_packet(job: Path, out: Path | None) -> int:
    """`packet`: the whole packet into a folder, or nothing at all."""
    spec = load_job(job).spec
    folder = out or Path("out") / job.stem
    with working("working out every part"):
        worked = work_out(spec)
    if worked.failures:
        _print(check_lines(worked))
        print("No packet was made: the parts do not go together.", file=sys.stderr)
        return FAILED_PROOF
    with working("planning the cuts"):
        purchases = plan_purchases(worked)
    with working("drawing and printing"):
        files = packet_files(purchases)
    write_folder(folder, files)
    print(folder / "packet.pdf")
    for name in sorted(set(files) - {"packet.pdf"}):
        print(folder / name)
    opened, found = len(purchases.questions), len(purchases.findings)
    if opened or found:
        print(f"{opened} open, {found} found: they stand on the cover.")
    return CLEAN if purchases.is_clean else OPEN
