"""What the page about appliances says holds."""

from __future__ import annotations

import re

import pytest
from tests.fences.source_tree import ROOT
from tests.jobs import example

from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import WorkedJob, work_out

TEXT = (ROOT / "docs" / "appliances.md").read_text("utf-8")
JOBS = dict(re.findall(r"```toml (\w+)\.toml\n(.*?)```", TEXT, re.DOTALL))


def _sound(text: str) -> WorkedJob:
    worked = work_out(read_job(text, "job.toml"))
    assert worked.failures == ()
    assert [f for f in worked.findings if f.severity is Severity.STOP] == []
    return worked


@pytest.mark.parametrize("name", sorted(JOBS))
def test_its_jobs_are_read_and_go_together(name: str) -> None:
    """Nothing stops them, and they ask nothing of the appliances."""
    worked = _sound(JOBS[name])
    assert not [q for q in worked.questions if q.path.startswith("appliance.")]


def test_what_it_asks_why_of_is_on_the_chain() -> None:
    """Every number that it shows the way to."""
    for job, path in re.findall(r"`casewright why (\w+)\.toml ([\w.]+)`", TEXT):
        assert path in _sound(JOBS[job]).room.chain.nodes


def test_the_gallery_goes_together_and_asks_nothing_of_the_appliances() -> None:
    """Every family of it, without a finding that stops."""
    room = _sound(example("gallery_appliances")).room
    assert "panel" in {case.spec.kind for case in room.cases}
    assert not [q for q in room.questions if q.path.startswith("appliance.")]
