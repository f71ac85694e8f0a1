"""Fasteners that do not suit the wood in hand are told of; they are no defect of the program."""

from __future__ import annotations

from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import WorkedJob, work_out

_JOB = """
format = 1
unit = "in"
[stock.plywood]
measured = "{thick}"
[case.upper]
kind = "wall"
width = 30
"""


def _worked(thick: str, more: str = "") -> WorkedJob:
    return work_out(read_job(_JOB.format(thick=thick) + more, "goods.toml"))


def test_screws_too_long_for_a_sheet_as_measured_are_one_stop() -> None:
    """Sheets that came as 0.605: the 1 1/4 screws in hand come through, told once a case."""
    worked = _worked("0.605", '[hardware.pocket_screw]\nlength = "1 1/4"')
    assert worked.failures == ()
    [found] = [f for f in worked.findings if f.rule == "proof: pockets"]
    assert found.severity is Severity.STOP
    assert "in upper, a pocket's screw does not stay inside" in found.says
    [longer] = [f for f in worked.findings if f.rule == "pocket screw length"][:1]
    assert longer.remedies == ('pocket screws of 1"',)


def test_screws_not_bought_yet_follow_a_sheet_as_measured() -> None:
    """Sheets that came as 0.605 take 1 in screws (charts of jig makers, from memory)."""
    worked = _worked("0.605")
    assert worked.failures == ()
    assert not [f for f in worked.findings if f.rule.startswith(("proof", "pocket screw"))]


def test_the_usual_sheet_gives_no_such_finding() -> None:
    """A plain upper of 0.703."""
    worked = _worked("0.703")
    assert worked.failures == ()
    assert not [f for f in worked.findings if f.rule.startswith("proof")]
