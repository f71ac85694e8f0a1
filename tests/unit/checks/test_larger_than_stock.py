"""Parts that no sheet takes."""

from __future__ import annotations

import pytest
from tests.jobs import HEAD, read
from tests.unit.checks.rooms import BOOKCASE, found_in, room_of

from casewright.job.packets import plan_purchases
from casewright.job.worked import work_out


@pytest.mark.parametrize(("height", "over"), [("96", False), ("96 1/4", True)])
def test_a_side_is_told_of_as_soon_as_no_sheet_takes_it(height: str, *, over: bool) -> None:
    """Its grain runs along the 96 in of the sheet: it cannot lie across."""
    told = found_in("larger than stock", room_of(**BOOKCASE | {"height": height}))
    assert any(finding.path == "upper.side_left" for finding in told) == over
    assert all("too long" in finding.says for finding in told)


def test_what_the_checks_told_the_cutting_does_not_tell_again() -> None:
    """One word for each part that is too large, on the cover too."""
    worked = work_out(read(HEAD + '[case.a]\nkind = "bookcase"\nwidth = 30\nheight = 100\n'))
    told = [f.path for f in plan_purchases(worked).findings if f.rule == "larger than stock"]
    assert "a.side_left" in told
    assert len(set(told)) == len(told)
