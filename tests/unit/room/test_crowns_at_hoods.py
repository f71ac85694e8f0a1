"""A crown beside a hood: in pieces that die into its sides."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.builders import length
from tests.jobs import problems, read
from tests.perturbation import moved

from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.packet.trim_steps import trim_steps
from casewright.room.trims.proof import trim_failures

_HOODED = """format = 1
unit = "in"
[appliance.top]
width = 30
cooks = true
clear_above = 30
[appliance.liner]
width = "28 3/8"
height = 10
depth = "11 1/4"
above_cooking = 27
duct = 6
duct_back = 7
[case.a]
kind = "wall"
width = 30
height = 37
[case.b]
kind = "wall"
width = 24
height = 37
[case.h]
kind = "hood"
appliance = "liner"
over = "top"
width = 36
height = {high}
depth = {deep}
[case.c]
kind = "base"
width = 30
[run.low]
cases = ["c", "top"]
[run.up]
cases = ["a", "h", "b"]
[run.up.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
{more}
[stock.crown]
kind = "board"
title = "crown moulding"
thickness = "5/8"
width = "3 5/8"
lengths = [96, 144]
"""


def _hooded(high: int = 42, deep: int = 18, more: str = "") -> WorkedJob:
    return work_out(read(_HOODED.format(high=high, deep=deep, more=more)))


def test_a_crown_dies_into_the_sides_of_a_hood() -> None:
    """Each piece is as long as the cases beside the hood, and p longer where it returns.

    Long point = run + p at each end that returns; an end against something adds none (`CROWN`).
    """
    found = _hooded()
    assert found.failures == ()
    run = next(each for each in found.room.runs if each.spec.key == "up")
    crowns = [each for each in run.trims if each.kind == "crown"]
    assert [each.path for each in crowns] == ["run.up.crown", "run.up.crown_2"]
    for crown, case, end in zip(crowns, ("a", "b"), ("right", "left"), strict=True):
        [piece] = crown.along
        wide = next(each.overall_width.value for each in run.cases if each.key == case)
        assert piece.part.finished.length.value == wide + length("2 1/4")
        assert getattr(piece, end).kind == "square"
    low, high = (each.along[0].part for each in crowns)
    hood = run.starts[1].value
    assert low.placed.x.value + low.finished.length.value == hood
    assert high.placed.x.value == hood + run.cases[1].overall_width.value
    told = [step for crown in crowns for step in trim_steps(found.room, run, crown)]
    assert any("end square" in str(step.text) for step in told)


def test_a_piece_that_stands_off_the_hood_is_caught() -> None:
    """Every trim of the run moved a sixteenth toward the hood, or away from it."""
    run = next(each for each in _hooded().room.runs if each.spec.key == "up")
    for number, each in enumerate(run.trims):
        for by in (length("1/16"), -length("1/16")):
            pieces = tuple(
                replace(p, part=replace(p.part, placed=replace(p.part.placed,
                                                               x=moved(p.part.placed.x, by))))
                for p in each.pieces
            )  # fmt: skip
            trims = (*run.trims[:number], replace(each, pieces=pieces), *run.trims[number + 1 :])
            assert list(trim_failures(replace(run, trims=trims))), (each.path, by)


@pytest.mark.parametrize(
    ("high", "deep", "way"), [(37, 18, 'h 5" higher'), (42, 13, 'h ~2 1/2" deeper')]
)
def test_a_hood_too_low_or_too_shallow_for_a_crown_stops_with_what_is_lacking(
    high: int, deep: int, way: str
) -> None:
    """The ceiling is at 96 in, wall cases hang at 54: 42 in. 12 1/4 and doors and 2 1/4 out."""
    told = [f for f in _hooded(high, deep).findings if f.rule == "crown at a hood"]
    assert [f.severity for f in told] == [Severity.STOP]
    assert told[0].remedies[0].startswith(way.partition("~")[0])


def test_what_was_read_beside_a_hood_is_cut_to() -> None:
    """A length for each stretch from the left; another number of them is refused."""
    found = _hooded(more='as_built = ["29 7/8", "24 1/8"]')
    run = next(each for each in found.room.runs if each.spec.key == "up")
    pieces = [each.along[0].part for each in run.trims if each.kind == "crown"]
    more = length("2 1/4")
    read = [length("29 7/8") + more, length("24 1/8") + more]
    assert [part.finished.length.value for part in pieces] == read
    [told] = problems(_HOODED.format(high=42, deep=18, more='as_built = ["29 7/8"]'))
    assert "2 stretches" in str(told)
