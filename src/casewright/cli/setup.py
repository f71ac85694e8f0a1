"""The command `setup`: a test piece is measured, and the move comes back."""

from __future__ import annotations

import sys
from pathlib import Path

from casewright.cli.commands import has_failed, load_and_work_out, tell_rescue
from casewright.cli.exits import CLEAN, FAILED_PROOF, OPEN
from casewright.cli.printing import print_json, print_lines
from casewright.cli.setup_texts import coached_lines, setting_lines
from casewright.job.coaching import coach, feature_named
from casewright.job.load import load_job
from casewright.job.recorded import read_entries, with_record
from casewright.job.setup_document import coached_document, setting_document
from casewright.job.writer import this_writer

__all__ = ["run_setup"]


def run_setup(job: Path, name: str, words: list[str], *, as_json: bool) -> int:
    """`setup`: 1 when something is to be moved; without a measure, how the tool is set."""
    worked = load_and_work_out(job)
    if has_failed(worked, as_json=as_json):
        print("Nothing was set up: the parts do not go together.", file=sys.stderr)
        return FAILED_PROOF
    room = worked.room
    part, feature = feature_named(room, name)
    if not words:
        if as_json:
            print_json(setting_document(room, part, feature))
        else:
            print_lines(setting_lines(room, part, feature))
        return CLEAN
    entries, rescue = read_entries(job)
    tell_rescue(rescue)
    found = coach(room, entries, part, feature, words, this_writer())
    _, rescue = with_record(load_job(job).path, lambda store: store.add((found.entry,)))
    tell_rescue(rescue)
    if as_json:
        print_json(coached_document(room, found))
    else:
        print_lines(coached_lines(room, part, feature, found))
    return OPEN if found.move else CLEAN
