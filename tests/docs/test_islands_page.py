"""What the page about islands says holds."""

from __future__ import annotations

import re

import pytest
from tests.fences.source_tree import ROOT
from tests.jobs import example

from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import WorkedJob, work_out
from casewright.style import STYLE_KEYS

TEXT = (ROOT / "docs" / "islands.md").read_text("utf-8")
STYLE = {key.name for key in STYLE_KEYS}
JOBS = dict(re.findall(r"```toml (\w+)\.toml\n(.*?)```", TEXT, re.DOTALL))


def _sound(text: str) -> WorkedJob:
    worked = work_out(read_job(text, "job.toml"))
    assert worked.failures == ()
    assert [f for f in worked.findings if f.severity is Severity.STOP] == []
    return worked


@pytest.mark.parametrize("name", sorted(JOBS))
def test_its_jobs_are_read_and_go_together(name: str) -> None:
    """Nothing stops them."""
    _sound(JOBS[name])


def test_what_it_asks_why_of_is_on_the_chain() -> None:
    """Every number that it shows the way to."""
    for job, path in re.findall(r"`casewright why (\w+)\.toml ([\w.]+)`", TEXT):
        assert path in _sound(JOBS[job]).room.chain.nodes


def test_its_style_values_are_there() -> None:
    """Every word of the style that it names."""
    chain = _sound(JOBS["island"]).room.chain
    for name in re.findall(r"`(island_\w+)`", TEXT):
        assert name in STYLE or f"style.{name}" in chain.nodes


def test_the_gallery_goes_together() -> None:
    """Both kinds of it, without a finding that stops."""
    room = _sound(example("gallery_islands")).room
    assert [bool(island.spec.back) for island in room.islands] == [True, False]
