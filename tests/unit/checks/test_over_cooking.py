"""What hangs over a cooktop, against the code's two figures and the cooktop's own sheet."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import INCH
from tests.jobs import read
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import cooking, hooded

from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.room.build import build


@pytest.mark.parametrize(
    ("sheet", "limit"),
    [
        ("", '30"'),  # IRC M1901.1, unprotected, read in a secondary copy
        ("clear_above = 26\n", '26"'),
        ("clear_above = 20\n", '24"'),  # the same, protected or noncombustible: the floor
        ("clear_above = 36\n", '36"'),
    ],
)
def test_the_sheet_counts_and_the_code_is_its_floor(sheet: str, limit: str) -> None:
    """Wall cases at 54 over a counter at 36 leave 18 in."""
    [found] = found_in("over cooking", cooking(sheet))
    assert (found.measured, found.limit) == ('18"', limit)
    assert found.severity is Severity.STOP
    assert "safe" not in found.says


def test_hung_as_high_as_is_asked_nothing_is_found() -> None:
    """36 and 30: hung at 66."""
    assert not found_in("over cooking", cooking(bottom=66))
    assert found_in("over cooking", cooking(bottom=65))


def test_a_case_beside_it_is_not_over_it() -> None:
    """The cooktop stands from 36 to 66 in along the wall; a case of 30 ends before it."""
    assert not found_in("over cooking", cooking(above=30))


def test_what_nobody_gave_is_asked_for() -> None:
    """The free height over what is cooked on; of a dishwasher nothing."""
    asked = {question.path for question in cooking().questions}
    assert "appliance.top.clear_above" in asked
    given = cooking("clear_above = 30\n")
    assert "appliance.top.clear_above" not in {question.path for question in given.questions}
    assert not found_in("over cooking", cooking(cooks="false"))


_RANGE = (
    'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 36\n[case.c]\nkind = "wall"\n'
    "width = 30\n[appliance.range]\nwidth = 30\ncooks = true\n[wall.w]\nwidth = 120\n"
    '[wall.e]\nwidth = 120\n[run.below]\ncases = ["a", "range"]\nright = "open"\n'
)


@pytest.mark.parametrize(
    ("runs", "told"),
    [
        ("", Severity.CARE),
        ('on = "w"\n', Severity.CARE),
        ('[run.r]\ncases = ["c"]\n', Severity.CARE),
        ('[run.r]\ncases = ["c"]\non = "w"\n', Severity.CARE),
        ('on = "w"\n[run.r]\ncases = ["c"]\non = "e"\n', None),
    ],
)
def test_a_case_of_which_nobody_says_where_it_hangs_is_told_of(
    runs: str, told: Severity | None
) -> None:
    """In no run, or on no wall; what hangs on another wall, or beside it, is not."""
    found = found_in("over cooking", build(read(_RANGE + runs)))
    assert [each.severity for each in found] == ([] if told is None else [told])
    assert all(each.path == "c" for each in found)


def test_a_hood_hangs_as_high_as_the_greater_of_the_sheets_and_the_code_ask() -> None:
    """36 and 30 from the cooktop's sheet, an eighth more: 66 1/8, and nothing is found."""
    room = hooded()
    hood = next(case for case in room.cases if case.key == "hood")
    assert room.wall_bottom.value + hood.standing.value == INCH * Fraction(529, 8)
    assert not [f for f in found_in("over cooking", room) if f.path == "hood"]


def test_a_hood_as_built_too_low_is_told_with_what_is_missing() -> None:
    """Its sides came out a quarter longer, downwards."""
    room = hooded()
    sides = {
        f"hood.side_{hand}.length": Fact(Origin("measured", "tape"), built=INCH * Fraction(145, 8))
        for hand in ("left", "right")
    }
    [told] = [f for f in found_in("over cooking", build(room.spec, sides)) if f.path == "hood"]
    assert told.severity is Severity.STOP
    assert "higher" in told.remedies[0]


def test_a_hood_beside_what_it_hangs_over_is_told_how_far() -> None:
    """The case on its left 4 in wider."""
    [told] = found_in("hood beside", hooded(beside=37))
    assert '4" to the right' in told.says
    assert '4" to the left' in told.remedies[0]
