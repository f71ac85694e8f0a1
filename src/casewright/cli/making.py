"""Commands that plan and make: `new`, `demo`, `cut`, `packet`."""

from __future__ import annotations

import sys
from pathlib import Path

from casewright.breakdown import break_down
from casewright.cli.commands import has_failed, load_and_work_out
from casewright.cli.cut_texts import cut_lines, solution_lines
from casewright.cli.exits import CLEAN, FAILED_PROOF, OPEN
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.cutting.solution_codec import write_solution
from casewright.errors import Location, Problem
from casewright.job.cut_documents import cut_document
from casewright.job.cut_file import CutFileError, read_problem, solve_checked
from casewright.job.editor_schema import schema_text
from casewright.job.packets import packet_files, plan_purchases
from casewright.job.starter import DEMO_FILE, demo_text, starter_text, write_new
from casewright.outputs.files import check_folder, write_file, write_folder

__all__ = ["run_cut", "run_demo", "run_new", "run_packet"]


def run_new(file: Path, *, metric: bool, schema: Path | None) -> int:
    """`new`: a short job file with notes; `--schema`: what editors need to help."""
    write_new(file, starter_text(file.name, "mm" if metric else "in"))
    print(f"{file} written. Change it to your own, then: casewright check {file}")
    if schema is not None:
        write_file(schema, schema_text().encode())
        print(f"{schema} written, for editors that know JSON Schema.")
    return CLEAN


def run_demo(out: Path) -> int:
    """`demo`: the demo's job file and its packet, in one folder.

    Its open questions and findings are there on purpose: they do not count as a failure.
    """
    job = out / DEMO_FILE
    if job.exists():
        print(f"{job} is there already and is used as it is.", file=sys.stderr)
    else:
        write_new(job, demo_text())
    print(job)
    code = run_packet(job, out)
    return CLEAN if code == OPEN else code


def run_cut(job: Path | None, problem: Path | None, *, as_json: bool) -> int:
    """`cut`: the plans of a job, or of a bare problem in whole numbers."""
    if (job is None) == (problem is None):
        what = "there is nothing to cut" if job is None else "a job and a problem are one too many"
        want = "name a job file, or --problem and its file"
        raise CutFileError((Problem(Location(""), what, want),))
    if problem is not None:
        return _cut_problem(problem, as_json=as_json)
    worked = load_and_work_out(job or Path())
    spec = worked.room.spec
    if has_failed(worked, as_json=as_json):
        return FAILED_PROOF
    with working("planning the cuts"):
        breakdown = break_down(worked.room)
    if as_json:
        print_json(cut_document(spec, breakdown))
    else:
        print_lines(cut_lines(breakdown, spec))
    is_open = breakdown.waiting or breakdown.questions or breakdown.findings
    return OPEN if is_open else CLEAN


def _cut_problem(file: Path, *, as_json: bool) -> int:
    problem = read_problem(file)
    with working("planning the cuts"):
        solution = solve_checked(problem)
    if as_json:
        print_json(write_solution(problem, solution))
    else:
        print_lines(solution_lines(problem, solution))
    return OPEN if solution.unplaced else CLEAN


def run_packet(job: Path, out: Path | None) -> int:
    """`packet`: the whole packet into a folder, or nothing at all."""
    folder = out or Path("out") / job.stem
    check_folder(folder)
    worked = load_and_work_out(job)
    if has_failed(worked, as_json=False):
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
