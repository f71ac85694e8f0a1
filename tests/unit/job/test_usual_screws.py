"""Screws that follow what they hold, where the job names none.

Pocket screws by the charts of jig makers (common practice, from memory): 3/4 in for 3/8 to 7/16
stock, 1 for 1/2 to 5/8, 1 1/4 for 3/4, 1 1/2 for 7/8 to 1. Wall screws: a structural screw bites
7/8 to 1 1/4 in, or 22 to 32 mm, into the stud; deeper, it may meet a cable (common practice).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.jobs import read

from casewright.buying.fasteners import fasteners
from casewright.dims import Unit
from casewright.findings import Severity
from casewright.hardware import WALL_SCREWS
from casewright.job.worked import WorkedJob, work_out
from casewright.room.wall_fixing import wall_fixings
from casewright.sources import INCH


def _worked(case: str, *, unit: str = "in", goods: str = "") -> WorkedJob:
    return work_out(
        read(f'format = 1\nunit = "{unit}"\n{goods}\n[case.a]\nwidth = "30 in"\n{case}\n')
    )


def _pocket_screws(worked: WorkedJob) -> set[Fraction]:
    return {
        held.length.value
        for case in worked.room.cases
        for joint in case.joints
        for held in joint.fastenings
        if held.kind == "pocket screw" and held.length is not None
    }


@pytest.mark.parametrize(
    ("unit", "goods", "screw"),
    [
        ("in", "", "1 1/4"),
        ("in", 'measured = "0.703"', "1 1/4"),
        ("in", 'measured = "0.605"', "1"),
        ("in", 'thickness = "1/2"', "1"),
        ("in", 'thickness = "15/32"', "3/4"),
        ("mm", "", "32 mm"),
        ("mm", 'measured = "15.2"', "25 mm"),
        ("mm", 'thickness = "12"', "20 mm"),
    ],
)
@pytest.mark.parametrize("back", ["rabbeted", "inset"])
def test_pocket_screws_follow_the_sheet_as_chosen_and_as_read(
    unit: Unit, goods: str, screw: str, back: str
) -> None:
    """No finding about screws, whatever sheet there is; `why` tells the sheet."""
    worked = _worked(
        f'kind = "base"\ntoe = "plinth"\nback = "{back}"\nfront = "none"', unit=unit,
        goods=f"[stock.plywood]\n{goods}",
    )  # fmt: skip
    whole, _, part = screw.removesuffix(" mm").partition(" ")
    size = Fraction(whole) + Fraction(part or 0)
    assert _pocket_screws(worked) == {size if unit == "mm" else size * INCH}
    assert worked.failures == ()
    told = {f.rule for f in worked.findings if "pocket" in f.rule}
    assert told == set()
    origin = worked.room.chain.nodes["stock.plywood.pocket_screw"].origin
    assert origin is not None
    assert origin.source == "common practice"
    assert "boards of" in origin.note


def test_a_pocket_screw_that_the_job_names_is_taken() -> None:
    """Named in the file, it counts, and a wrong one is told of."""
    worked = _worked(
        'kind = "base"', goods='[hardware.pocket_screw]\nlength = "1 1/2"\n[stock.plywood]\n'
        'measured = "0.70"',
    )  # fmt: skip
    assert _pocket_screws(worked) == {INCH * 3 / 2}
    assert "pocket screw length" in {finding.rule for finding in worked.findings}


def test_cases_of_two_sheets_have_two_lengths_of_screw() -> None:
    """Each sheet takes its own, and the list buys both."""
    worked = _worked(
        'kind = "base"\n[case.b]\nkind = "base"\nwidth = "30"\nsheet = "thin"',
        goods='[stock.thin]\nkind = "sheet"\nmaterial = "plywood"\nthickness = "1/2"\n'
        'size = ["96", "48"]',
    )  # fmt: skip
    assert _pocket_screws(worked) == {INCH, INCH * 5 / 4}
    lines = [line for line in fasteners(worked.room) if line.key == "pocket_screw"]
    assert len(lines) == 2
    holes = sum(
        len(feature.places)
        for part in worked.room.parts
        for feature in part.features
        if feature.kind == "pocket"
    )
    assert sum(line.need for line in lines) == holes


@pytest.mark.parametrize("back", ["rabbeted", "grooved", "applied", "inset"])
@pytest.mark.parametrize("kind", ["wall", "base", "bookcase"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_the_usual_wall_screw_bites_as_it_should(unit: Unit, kind: str, back: str) -> None:
    """In every case and unit.

    65 mm through a thick inset back would go 33 mm into the stud, so 60 is taken.
    """
    worked = _worked(f'kind = "{kind}"\nback = "{back}"', unit=unit)
    fixing = wall_fixings(worked.room)[0]
    assert fixing.length in WALL_SCREWS[unit]
    low, high = (22, 32) if unit == "mm" else (INCH * 7 / 8, INCH * 5 / 4)
    assert low <= fixing.bite <= high
    assert "wall screw bite" not in {finding.rule for finding in worked.findings}
    node = worked.room.chain.nodes["a.wall_screw"]
    assert node.value == fixing.length
    if (unit, back) == ("mm", "inset"):
        assert fixing.length == 60
        assert node.origin is not None
        assert "the longest one sold" in node.origin.note


def test_a_wall_screw_that_the_job_names_is_taken() -> None:
    """Too long: told, not changed."""
    worked = _worked('kind = "wall"', goods='[hardware.wall_screw]\nlength = "3"')
    assert wall_fixings(worked.room)[0].length == 3 * INCH
    found = [f for f in worked.findings if f.rule == "wall screw bite"]
    assert [f.severity for f in found] == [Severity.CARE]
