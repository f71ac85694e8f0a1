"""Commands of cutting: `cut`, for a job or a bare problem, and `verify`."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from pathlib import Path
from typing import NoReturn

from casewright.cli.answer_texts import answer_lines
from casewright.cli.commands import has_failed, load_and_work_out
from casewright.cli.cut_texts import cut_lines
from casewright.cli.exits import BAD_INPUT, CLEAN, FAILED_PROOF, OPEN
from casewright.cli.interrupt import interruptible
from casewright.cli.printing import print_json, print_lines
from casewright.cli.progress import working
from casewright.cli.verdict_texts import verdict_lines
from casewright.cutting.problem import ProblemError
from casewright.dims.count_text import counted
from casewright.errors import Location, Problem
from casewright.job.bare_cutting import CutAnswer, cut, cut_again
from casewright.job.cut_documents import answer_document, cut_document, verdict_document
from casewright.job.cut_file import Stages, read_problem
from casewright.job.json_file import STANDARD_INPUT, CutFileError, faults_error
from casewright.job.nudges import plan_job
from casewright.job.patience import USUAL_WORK, Patience
from casewright.job.plan_file import file_breaches, read_plan
from casewright.job.recorded import Use

__all__ = ["CutOptions", "run_cut", "run_verify"]


@dataclass(frozen=True, slots=True)
class CutOptions:
    """How a bare problem is to be planned; None: as usual.

    Parameters
    ----------
    seconds
        How long to look about, at the most [s].
    work
        How many places to try.
    stages
        In place of the file's own.
    last, done
        A plan to stay near to, and which of its sheets are cut, from 1: '1,3'.
    """

    seconds: float | None = None
    work: int | None = None
    stages: Stages | None = None
    last: Path | None = None
    done: str | None = None

    @property
    def is_usual(self) -> bool:
        """Whether nothing was asked for."""
        return self == CutOptions()


def run_cut(
    job: Path | None,
    problem: Path | None,
    options: CutOptions,
    use: Use | None = None,
    *,
    as_json: bool,
) -> int:
    """`cut`: the plans of a job, or of a bare problem in whole numbers."""
    if (job is None) == (problem is None):
        what = "there is nothing to cut" if job is None else "a job and a problem are one too many"
        _refuse(what, "name a job file, or --problem and its file")
    if problem is not None:
        return _cut_problem(problem, options, as_json=as_json)
    if not options.is_usual:
        _refuse("a job is planned in its own way", "give these options with --problem")
    worked = load_and_work_out(job or Path(), use)
    if has_failed(worked, as_json=as_json):
        return FAILED_PROOF
    with working("planning the cuts"):
        breakdown = plan_job(worked, quick=True)
    if as_json:
        print_json(cut_document(worked.room, breakdown))
    else:
        print_lines(cut_lines(breakdown, worked.room))
    is_open = breakdown.waiting or breakdown.questions or breakdown.findings
    return OPEN if is_open else CLEAN


def _cut_problem(file: Path, options: CutOptions, *, as_json: bool) -> int:
    answer = _planned(file, options)
    if as_json:
        print_json(answer_document(answer))
    else:
        print_lines(answer_lines(answer))
    return OPEN if answer.solution.unplaced else CLEAN


def _planned(file: Path, options: CutOptions) -> CutAnswer:
    seconds, work = options.seconds, options.work
    if seconds is not None and work is not None:
        _refuse("time and work are both limited", "give --seconds or --work, not both")
    if seconds is not None and not (math.isfinite(seconds) and seconds > 0):
        _refuse(f"--seconds is {seconds}", "give a number of seconds above 0")
    done = _sheet_numbers(options)
    before = _second(file, options.last) if options.last else None
    task = read_problem(file, options.stages)
    last = read_plan(before).solution if before else None
    with interruptible() as asked, working("planning the cuts") as tell:
        patience = Patience(USUAL_WORK if work is None else work, seconds, asked)
        if last is None or before is None:
            return cut(task, patience, tell)
        numbers = {tree.sheet for tree in last.tree}
        for number in sorted(done):
            if number not in numbers:
                want = f"it has {counted(len(numbers), 'sheet')}, numbered from 1"
                _refuse(f"sheet {number + 1} is not in the last plan", want)
        try:
            return cut_again(task, last, done, patience, tell)
        except ProblemError as error:
            raise faults_error(before, error.faults) from None


def _sheet_numbers(options: CutOptions) -> frozenset[int]:
    """Numbers of the sheets that are cut, from 0."""
    if options.done is None:
        return frozenset()
    if options.last is None:
        _refuse("there is no plan whose sheets are cut", "name it with --last")
    if not re.fullmatch(r"\s*\d{1,9}\s*(,\s*\d{1,9}\s*)*", options.done):
        _refuse(f'--cut is "{options.done}"', "give numbers of sheets, such as 1,3")
    return frozenset(int(word) - 1 for word in options.done.split(","))


def run_verify(problem: Path, plan: Path, stages: Stages | None, *, as_json: bool) -> int:
    """`verify`: everything wrong with a plan for a problem, whoever made it."""
    plan = _second(problem, plan)
    task, found = read_problem(problem, stages), read_plan(plan)
    with working("checking the plan"):
        breaches = file_breaches(task, found)
    if as_json:
        print_json(verdict_document(task, found, breaches))
    else:
        print_lines(verdict_lines(task, found, breaches))
    return BAD_INPUT if breaches else CLEAN


def _second(first: Path, second: Path) -> Path:
    """The second of two files; only one can be piped in."""
    if first == second == STANDARD_INPUT:
        _refuse("both files are standard input", "name a file for one of them")
    return second


def _refuse(what: str, want: str) -> NoReturn:
    raise CutFileError((Problem(Location(""), what, want),))
