"""What the shop's saws do not reach."""

from __future__ import annotations

import pytest
from tests.unit.checks.examples import sawn
from tests.unit.checks.rooms import found_in

from casewright.findings import Severity


@pytest.mark.parametrize(
    ("opens", "guide", "told"),
    [("25", "98", False), ("25", "82", False), ("25", "80", True), ("42", "41", False)],
)
def test_a_back_goes_to_the_fence_or_along_the_guide(opens: str, guide: str, told: bool) -> None:
    """80 1/2 high, about 40 wide, out of sheets of 48: it is ripped to its width."""
    found = found_in("larger than tools", sawn(opens=opens, guide=guide, width="41"))
    assert bool(found) == told
    if told:
        assert [each.path for each in found] == ["upper.back"]
        assert found[0].severity is Severity.CARE
        assert "guide" in found[0].remedies[0]


def test_without_a_circular_saw_nothing_is_cut_along_a_guide() -> None:
    """The back is too wide for the fence, and no guide helps."""
    found = found_in("larger than tools", sawn("circular saw", width="41"))
    assert [each.path for each in found] == ["upper.back", "stock.ply18"]
    assert "no circular saw" in found[0].says


def test_a_whole_sheet_that_one_person_does_not_lift_wants_a_circular_saw() -> None:
    """Plywood of 23/32, 4 x 8 ft at 680 kg/m3 weighs 36.9 kg; one person lifts 25 here."""
    found = found_in("larger than tools", sawn("circular saw", width="24"))
    assert [each.path for each in found] == ["stock.ply18"]
    assert found[0].measured == "81 lb (36.9 kg)"
    assert not found_in("larger than tools", sawn())
