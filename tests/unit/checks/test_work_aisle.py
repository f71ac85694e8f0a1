"""Two runs that face each other; the aisle by hand."""

from __future__ import annotations

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import galley

from casewright.findings import Severity


@pytest.mark.parametrize(
    # Planning guideline, read in a secondary copy: 42 in for one cook; bases 23 1/4 deep, open.
    ("wide", "free"),
    [("88 1/2", None), ("88 1/4", '41 3/4"'), ("80", '33 1/2"')],
)
def test_forty_two_between_fronts(wide: str, free: str | None) -> None:
    """88 1/2 less twice 23 1/4 is 42."""
    told = found_in("work aisle", galley(wide))
    assert [finding.measured for finding in told] == ([] if free is None else [free])


def test_runs_that_run_into_each_other_stop_the_work() -> None:
    """Two bases of 23 1/4 in a room of 40."""
    [found] = found_in("work aisle", galley("40"))
    assert found.severity is Severity.STOP


def test_cases_that_do_not_face_each_other_are_let_pass() -> None:
    """One ends 37 1/2 from the joining wall, the other begins behind what stands there: 40."""
    assert not found_in("work aisle", galley("80", second='after = "old"\n'))
