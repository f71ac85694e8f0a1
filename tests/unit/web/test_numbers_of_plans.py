"""Numbers of the pages that wait for the cuts are looked up in the plan that they show."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tests.jobs import FIVE_LINES

from casewright.dims import Measure, parts_of
from casewright.job.packets import plan_purchases
from casewright.job.recorded import as_recorded
from casewright.web.numbers import chain_of_plans, why_view
from casewright.web.snapshot import Snapshot


def test_what_is_planned_is_not_planned_again_to_say_why(tmp_path: Path) -> None:
    """Sums of the buy list and settings of the saw; none of them from cuts of an older file."""
    path = tmp_path / "job.toml"
    path.write_text(FIVE_LINES, "utf-8")
    loaded, recorded, worked = as_recorded(path)
    purchases = plan_purchases(worked)
    snapshot = Snapshot(1, loaded, recorded, worked)
    planned = replace(snapshot, purchases=purchases)
    told = {
        part.path
        for line in purchases.buying
        for words in (line.what, line.unit, line.why, line.note)
        for part in parts_of(words)
        if isinstance(part, Measure)
    }
    told |= {
        dim.path for plan in purchases.breakdown.plans for dim in plan.numbers.settings.values()
    }
    assert len(told) > 10
    for number in told - worked.room.chain.nodes.keys():
        chain = chain_of_plans(snapshot, planned, number)
        assert chain is not None, number
        view = why_view(snapshot, number, chain)
        assert view.nodes[0].path == number
        assert view.nodes[0].value
        assert chain_of_plans(replace(snapshot, version=2), planned, number) is None
