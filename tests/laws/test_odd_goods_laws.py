"""Odd sizes of what is bought: told of as findings, never blamed on the program.

A sheet four inches thick, a door thinner than its hinge's cup, a screw as long as a hand: nobody
builds of them, but they are what a slip of the pen gives. Common practice: what cannot be built of
such goods is a finding about the goods.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs import loaded

from casewright.errors import JobFileError
from casewright.findings import Severity
from casewright.job.trial import work_out_job

_ODD = {
    "plywood thickness": (1, 110), "thin_plywood thickness": (2, 30),
    "fibreboard thickness": (3, 80), "thin_fibreboard thickness": (3, 80),
    "board thickness": (3, 80), "glass thickness": (2, 20), "strip thickness": (1, 40),
    "hinge constant": (0, 30), "hinge cup_depth": (6, 19), "hinge plate_pitch": (12, 100),
    "pin depth": (3, 19), "pin pitch": (12, 300), "pocket_screw length": (10, 150),
    "brad length": (6, 150), "back_brad length": (6, 150), "wall_screw length": (6, 150),
}  # fmt: skip
_HARDWARE = ("hinge", "pin", "pocket_screw", "brad", "back_brad", "wall_screw")


def _job(odd: str, case: str) -> str:
    return f'format = 1\nunit = "mm"\n{odd}\n[case.a]\nwidth = "700"\n{case}\n'


@st.composite
def _odd_jobs(draw: st.DrawFn) -> str:
    name = draw(st.sampled_from(sorted(_ODD)))
    thing, key = name.split()
    low, high = _ODD[name]
    section = f"{'hardware' if thing in _HARDWARE else 'stock'}.{thing}"
    odd = f'[{section}]\n{key} = "{draw(st.integers(low, high))}"'
    kind = draw(st.sampled_from(("wall", "base", "bookcase")))
    case = [f'kind = "{kind}"']
    for word, values in (
        ("back", ("rabbeted", "grooved", "applied", "inset")),
        ("joint", ("pocket screws", "dado", "rabbet")),
        ("edge", ("band", "lip", "painted")),
    ):
        case.append(f'{word} = "{draw(st.sampled_from(values))}"')
    if kind != "bookcase":
        case.append(f'front = "{draw(st.sampled_from(("slab", "applied frame", "glass frame")))}"')
    if kind == "base":
        case.append(f'toe = "{draw(st.sampled_from(("notch", "plinth", "none")))}"')
    return _job(odd, "\n".join(case))


@settings(max_examples=60, deadline=None)
@given(_odd_jobs())
def test_an_odd_size_is_refused_or_told_of(text: str) -> None:
    """Whatever one size of stock or hardware is, the program is not to blame."""
    try:
        worked = work_out_job(loaded(text))
    except JobFileError:
        return
    assert worked.failures == ()


@pytest.mark.parametrize(
    ("odd", "case", "rule"),
    [
        ('[stock.plywood]\nthickness = "100"', 'kind = "base"\nfront = "slab"', "hinge overlay"),
        ('[stock.plywood]\nthickness = "1 in"', 'kind = "base"\nfront = "slab"', "hinge overlay"),
        (
            '[stock.thin_fibreboard]\nthickness = "5"',
            'kind = "wall"\nfront = "applied frame"',
            "wood under the cup",
        ),
        (
            '[stock.glass]\nthickness = "18"',
            'kind = "wall"\nfront = "glass frame"',
            "rebate depth",
        ),
    ],
)
def test_what_follows_from_odd_goods_names_them(odd: str, case: str, rule: str) -> None:
    """The cause stops the work; what fails with it points to it, and nothing is said to hold."""
    worked = work_out_job(loaded(_job(odd, case)))
    stops = [finding for finding in worked.findings if finding.severity is Severity.STOP]
    follow = [f for f in stops if any(rule in remedy for remedy in f.remedies)]
    assert rule in {finding.rule for finding in stops}
    assert follow
    assert worked.failures == ()
    assert not worked.holds


def test_a_failed_proof_without_odd_goods_is_still_one() -> None:
    """A pull with its screws outside the door is no fault of the goods: refused at its line."""
    text = _job('[style]\npull_edge = "95"', 'kind = "base"\nfront = "applied frame"')
    with pytest.raises(JobFileError, match="pull_edge"):
        work_out_job(loaded(text))
