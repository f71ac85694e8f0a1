"""Doors that would not stay flat are refused, and a split is proposed with its sizes.

Limits: 128 times the thickness in height (8 ft of 3/4 in), 30 in or 760 mm in width; common
practice as this house judges it, no publication.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.builders import PANEL, SLAB, one_case

from casewright.casework.cases import Case
from casewright.findings import Finding, Severity


def _refused(case: Case) -> list[Finding]:
    return [f for f in case.findings if f.rule == "door that warps"]


@pytest.mark.parametrize(("height", "refused"), [("80", False), ("81", True)])
def test_height_by_thickness(height: str, refused: bool) -> None:
    """5/8 in x 128 is 80 in: a little more is refused, and no door is made."""
    case = one_case("in", width="18", height=height, front=SLAB, shelves=0)
    assert bool(_refused(case)) == refused
    assert bool(case.doors) != refused
    thicker = one_case("in", width="18", height=height, front=PANEL, shelves=0)
    assert _refused(thicker) == []


def test_a_divider_is_proposed_with_its_height_and_its_doors() -> None:
    """Followed, the proposal gives two doors that are made."""
    case = one_case("in", width="18", height="90", front=SLAB, shelves=0)
    (finding,) = _refused(case)
    assert finding.severity is Severity.STOP
    proposal = finding.remedies[0]
    assert "two doors of" in proposal
    height = proposal.partition("divider = ")[2].partition('"')[0]
    parted = one_case("in", width="18", height="90", divider=height.lstrip("~"), front=SLAB,
                      upper_front=SLAB, shelves=0, joint="dado")  # fmt: skip
    assert _refused(parted) == []
    lower, upper = parted.doors
    assert abs(lower.height.value - upper.height.value) < 2


def test_a_wide_leaf_is_parted_into_two() -> None:
    """One leaf of 34 in: two of half of it; a pair that is still too wide: two cases."""
    wide = one_case("in", width="34", front=replace(SLAB, leaves=1), shelves=0)
    (finding,) = _refused(wide)
    assert finding.remedies[0].startswith("leaves = 2: two doors of")
    pair = one_case("in", width="34", front=replace(SLAB, leaves=2), shelves=0)
    assert _refused(pair) == []
    wider = one_case("in", width="64", front=SLAB, shelves=0)
    (finding,) = _refused(wider)
    assert finding.remedies[0].startswith("two cases")
