"""What the page about doors says holds."""

from __future__ import annotations

import re
from typing import get_args

from tests.fences.source_tree import ROOT

from casewright.casework.specs import DoorKind, OverlayKind
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import work_out

TEXT = (ROOT / "docs" / "doors.md").read_text("utf-8")


def test_every_construction_and_every_overlay_is_told() -> None:
    """One row each, by the word that is written in the job file."""
    rows = re.findall(r'^\| `"([a-z ]+)"` \|', TEXT, re.MULTILINE)
    assert set(rows) == {*get_args(DoorKind), *get_args(OverlayKind)}


def test_its_job_is_read_and_goes_together() -> None:
    """The sample of solid wood: nothing stops it, and its air is on the chain."""
    (sample,) = re.findall(r"```toml\n(.*?)```", TEXT, re.DOTALL)
    worked = work_out(read_job(sample, "china.toml"))
    assert worked.failures == ()
    assert [f for f in worked.findings if f.severity is Severity.STOP] == []
    assert "china.door_left.panel_room.air_wanted" in worked.room.chain.nodes
