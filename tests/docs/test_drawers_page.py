"""The page about drawers: what it shows can be written, and goes together."""

from __future__ import annotations

import re
from pathlib import Path

from tests.jobs import HEAD, read

from casewright.findings import Severity
from casewright.job.tables import SlideTable, UndermountTable
from casewright.job.worked import work_out

_PAGE = (Path(__file__).parents[2] / "docs" / "drawers.md").read_text("utf-8")


def test_the_jobs_on_the_page_go_together() -> None:
    """All its blocks in one file: built, proved, nothing that stops."""
    blocks = re.findall(r"^```toml\n(.*?)^```$", _PAGE, re.M | re.S)
    worked = work_out(read(HEAD + "".join(blocks)))
    assert worked.failures == ()
    assert not [each for each in worked.findings if each.severity is Severity.STOP]
    assert {case.key for case in worked.room.cases} == {"pans", "prep", "bowl", "trays"}


def test_every_number_of_the_sheets_is_told() -> None:
    """Where to find it on paper; titles, diameters and depths of screws speak for themselves."""
    told = set(re.findall(r"`(\w+)`", _PAGE))
    known = {*SlideTable.model_fields, *UndermountTable.model_fields}
    assert known - told == {"title", "box_holes", "hole", "depth"}
