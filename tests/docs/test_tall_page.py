"""What the page about tall cases says holds."""

from __future__ import annotations

import re

import pytest
from tests.fences.source_tree import ROOT
from tests.jobs import example

from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import WorkedJob, work_out

TEXT = (ROOT / "docs" / "tall.md").read_text("utf-8")
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
    """The number that the oven takes of the face."""
    assert "tower.appliance_height" in _sound(JOBS["tower"]).room.chain.nodes


def test_its_style_values_are_there() -> None:
    """Every word of the style that it names, and the fits that it promises."""
    framed = _sound(JOBS["framed"]).room.chain
    assert {"tower.appliance.width_fit", "tower.appliance.height_fit"} <= set(framed.fits)
    chain = _sound(JOBS["tower"]).room.chain
    for name in ("appliance_air", "appliance_play", "deck_cleat"):
        assert f"`{name}`" in TEXT
        assert f"style.{name}" in chain.nodes
    assert {"tower.appliance.width_fit", "tower.appliance.height_fit"} <= set(chain.fits)


def test_the_gallery_goes_together_and_asks_nothing_of_the_appliances() -> None:
    """Every family of it, without a finding that stops."""
    room = _sound(example("gallery_tall")).room
    assert {case.spec.kind for case in room.cases} == {"tall", "surround", "panel"}
    assert not [q for q in room.questions if q.path.startswith("appliance.")]
