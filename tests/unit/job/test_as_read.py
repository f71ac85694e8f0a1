"""A box that was read as it stands: its pieces meet, and no piece is to blame within its band."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs import example, read

from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.room.build import build
from casewright.room.specs import JobSpec
from casewright.sources import INCH

RULE = Origin("measured", "steel rule")


@cache
def spec() -> JobSpec:
    """Boxes of drawers and doors."""
    return read(example("gallery"))


@cache
def planned(path: str) -> Fraction:
    """A number by design, the sheets measured."""
    return build(spec()).chain.nodes[path].value


@cache
def plain_job() -> WorkedJob:
    """The job with nothing read."""
    return work_out(spec())


def read_off(path: str, sixty_fourths: int) -> WorkedJob:
    """The job with one size of a box read so far off."""
    built = planned(path) + sixty_fourths * INCH / 64
    return work_out(spec(), {path: Fact(RULE, built=built)})


@pytest.mark.parametrize("name", ["trays.clear_width", "pans.width", "cutlery.height"])
@pytest.mark.parametrize("off", [-2, -1, 1, 2])
def test_within_its_band_a_reading_stops_nothing(name: str, off: int) -> None:
    """1/32 off either way, where 1/16 is allowed: at most a note of the box itself."""
    worked = read_off(name, off)
    assert worked.holds
    before = {(finding.rule, finding.path) for finding in plain_job().findings}
    grave = [f for f in worked.findings if f.severity is not Severity.NOTE]
    new = [f.says for f in grave if (f.rule, f.path) not in before]
    assert not new
    told = [f for f in worked.findings if f.rule == "box as read"]
    assert bool(told) == (abs(off) * INCH / 64 > Fraction(1, 2))


@pytest.mark.parametrize("off", [-6, 6])
def test_outside_its_band_it_stops(off: int) -> None:
    """3/32 off: the joints do not close, and that is said."""
    worked = read_off("trays.clear_width", off)
    assert [f for f in worked.findings if f.severity is Severity.STOP]


def test_a_piece_that_is_cut_short_is_told_all_the_same() -> None:
    """The bottom of one box 1/8 short, the opening of it read 1/64 off."""
    path = "trays.bottom.length"
    facts = {
        path: Fact(Origin("made", "cut"), cut=planned(path) - INCH / 8),
        "pans.clear_width": Fact(RULE, built=planned("pans.clear_width") + INCH / 64),
    }
    findings = work_out(spec(), facts).findings
    grave = [f for f in findings if f.severity is not Severity.NOTE]
    assert any(finding.path.startswith("trays") for finding in grave)
    assert not any(finding.path.startswith("pans") for finding in grave)


_BASE = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[case.base]
kind = "base"
width = 24
front = "slab"
"""


@settings(max_examples=10, deadline=None)
@given(st.integers(0, 99), st.sampled_from([-1, 1]))
def test_a_piece_a_hair_off_stops_nothing(number: int, sign: int) -> None:
    """Any size of any piece 1/64 in off: glue lines and clamps take that up (common practice)."""
    job = read(_BASE)
    sizes = [d for part in build(job).parts for d in (part.blank.length, part.blank.width)]
    size = sizes[number % len(sizes)]
    facts = {size.path: Fact(Origin("made", "cut"), cut=size.value + sign * INCH / 64)}
    proofs = [f for f in work_out(job, facts).findings if f.rule.startswith("proof")]
    assert [f.says for f in proofs if f.severity is not Severity.NOTE] == []


@pytest.mark.parametrize(
    ("path", "off"), [("pans.width", 32), ("pans.back.width", 28), ("trays.clear_width", -40)]
)
def test_one_wrong_size_is_not_told_over_and_over(path: str, off: int) -> None:
    """The gap that is out of its band, and at the most one word on what goes with it."""
    worked = read_off(path, off)
    case = path.partition(".")[0]
    stops = [each for each in worked.findings if each.severity is Severity.STOP]
    assert any(each.rule == "fit band" for each in stops)
    with_it = [each for each in worked.findings if each.rule.startswith("proof: ")]
    assert len(with_it) <= 1
    assert all(each.path == case and "goes with it" in each.remedies[0] for each in with_it)
    assert worked.holds is not any(each in stops for each in with_it)


def test_a_length_that_was_mistyped_is_told_as_read_not_as_a_fault() -> None:
    """A crown 30 long that meets another one, read as 40: two do not meet, and it is to blame."""
    text = example("gallery_trims").replace(
        "[run.spices.crown]", "[run.spices.crown]\nas_built = 40", 1
    )
    worked = work_out(read(text))
    assert worked.failures == ()
    told = {found.rule: found.severity for found in worked.findings}
    assert told["read as built"] is Severity.CARE
    assert told["proof: joints"] is Severity.STOP
