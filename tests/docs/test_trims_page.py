"""What the page about trims says holds."""

from __future__ import annotations

import re
from dataclasses import fields
from typing import get_args

from tests.fences.source_tree import ROOT
from tests.jobs import example, read

from casewright.findings import Severity
from casewright.job.tables.run import RunTable
from casewright.job.worked import work_out
from casewright.room.trims.model import TrimKind
from casewright.room.trims.specs import RunTrims

TEXT = (ROOT / "docs" / "trims.md").read_text("utf-8")


def test_every_trim_is_told_with_what_is_read_of_it() -> None:
    """One row each, with its key under the run."""
    rows = re.findall(r"^\| ([a-z ,]+?) +\| `", TEXT, re.MULTILINE)
    names = [field.name for field in fields(RunTrims)]
    assert [row.partition(",")[0].replace(" ", "_") for row in rows] == names
    assert all(name in RunTable.model_fields for name in names)


def test_the_gallery_shows_all_of_them_and_nothing_stops_it() -> None:
    """Each kind of trim, a filler at a wall and one in a corner; some read, some still asked."""
    worked = work_out(read(example("gallery_trims")))
    assert worked.failures == ()
    assert [f.path for f in worked.findings if f.severity is Severity.STOP] == []
    runs = worked.room.runs
    shown = {trim.kind for run in runs for trim in run.trims}
    elsewhere = {"seam strip", "seat lid"}  # of faces and seats, which have galleries of their own
    assert set(get_args(TrimKind)) - shown <= elsewhere
    assert {bool(f.beyond.value) for run in runs for f in run.fillers} == {True, False}
    assert {trim.is_read for run in runs for trim in run.trims} == {True, False}
