"""Fillers: cut for the widest gap, tapered as it was read, clear of what stands round a corner."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as examples
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import Unit, case_spec, given, job, length, plain_style
from tests.jobs import problem, problems, read

from casewright.casework.parts import Part
from casewright.dims import Dim, Origin
from casewright.facts import Fact
from casewright.job.worked import work_out
from casewright.room.build import build
from casewright.room.model import Run
from casewright.room.proof import prove_run
from casewright.room.specs import JobSpec, RunSpec


def _one(unit: Unit, *gaps: str, width: str = "33") -> JobSpec:
    """A case beside a wall, with gaps of these sizes at the left as the wall was read."""
    sizes = tuple(
        replace(given(0, unit), value=length(width, unit) + length(gap, unit)) for gap in gaps
    )
    run = RunSpec("wall", "Wall", ("upper",), sizes, "wall", "open")
    case = case_spec(unit, key="upper", width=width, shelves=0)
    scribe = "1/4" if unit == "in" else "6"
    return job(case, unit=unit, runs=(run,), style=plain_style(unit, scribe=scribe))


@pytest.mark.parametrize(
    ("unit", "width", "gaps", "cut", "taper"),
    [
        ("in", "33", ("1 7/8", "2 1/16", "1 3/4"), "2 5/16", "5/16"),
        ("mm", "850.1", ("48", "52", "45"), "58", "7"),
    ],
)
def test_the_face_filler_of_the_trade(
    unit: Unit, width: str, gaps: tuple[str, ...], cut: str, taper: str
) -> None:
    """Widest of three gaps and the scribe allowance; the rest is taper.

    Source: trade construction FILLER, both units.
    """
    room = build(_one(unit, *gaps, width=width))
    [filler] = room.runs[0].fillers
    assert filler.part.blank.width.value == length(cut, unit)
    assert [gap.value for gap in filler.gaps] == [length(gap, unit) for gap in gaps]
    assert room.chain.nodes["run.wall.filler_left.taper"].value == length(taper, unit)
    assert filler.part.ends[2:] == ("case edge", "wall edge")


def test_gaps_read_beside_the_case_count_and_not_those_of_the_wall() -> None:
    """2 1/8, 2 and 1 7/8 as read: cut 2 3/8 (by hand); a cut strip that is narrower is told."""
    tape = Origin("measured", "tape")
    path = "run.wall.filler_left"
    facts = {
        f"{path}.gap_{name}": Fact(tape, built=length(gap))
        for name, gap in (("low", "2 1/8"), ("middle", "2"), ("high", "1 7/8"))
    }
    spec = _one("in", "1 7/8", "2 1/16", "1 3/4")
    [filler] = build(spec, facts).runs[0].fillers
    assert filler.is_read
    assert filler.part.blank.width.value == length("2 3/8")
    cut = {**facts, f"{path}.width": Fact(tape, cut=length("2"))}
    found = work_out(spec, cut).findings
    assert [f.path for f in found if f.rule == "fit band"] == [f"{path}.scribe_left"]


def test_a_wall_that_leans_widens_the_gap_by_its_lean() -> None:
    """1/4 in 48 away at the right: 30 high gives 5/32 at the head (by hand, similar triangles)."""
    text = (
        'format = 1\nunit = "in"\n[case.a]\nkind = "wall"\nwidth = 30\nheight = 30\n'
        '[wall.w]\nwidth = 32\nplumb = [{ of = "right", over = 48, off = "1/4", leans = "out" }]\n'
        '[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\n'
    )
    [filler] = build(read(text)).runs[0].fillers
    extra = [gap.value - filler.width.value for gap in filler.gaps]
    assert extra == [0, length("5/64"), length("5/32")]


@pytest.mark.parametrize(
    ("unit", "bumper", "door", "pull", "clear", "need", "mark"),
    [
        ("in", "1/16", "3/4", "1 3/8", "1/4", "25 11/16", "25 11/16"),
        ("mm", "2", "19", "35", "6", "642", "642"),
        ("in", "1/32", "3/4", "1 3/8", "1/4", "25 21/32", "25 11/16"),
        ("mm", "1.5", "19", "35", "6", "641.5", "642"),
    ],
)
def test_a_run_keeps_clear_of_doors_and_pulls_round_the_corner(
    unit: Unit, bumper: str, door: str, pull: str, clear: str, need: str, mark: str
) -> None:
    """X0 = D + bp + td + P + cl, up to the next mark of the tape, sixteenths or millimetres.

    Source: trade construction BLIND, both units.
    """
    depth = "23 1/4" if unit == "in" else "580"
    sizes = ("24", "100") if unit == "in" else ("600", "2500")
    text = (
        f'format = 1\nunit = "{unit}"\n[style]\nbumper = "{bumper}"\ncorner_clear = "{clear}"\n'
        f'[stock.fibreboard]\nthickness = "{door}"\n[hardware.pull]\nprojection = "{pull}"\n'
        + "".join(
            f'[case.{key}]\nkind = "base"\nwidth = {sizes[0]}\ndepth = "{depth}"\n'
            f"[wall.{key}]\nwidth = {sizes[1]}\n"
            for key in ("a", "b")
        )
        + '[corner.c]\nwalls = ["a", "b"]\n[run.a]\ncases = ["a"]\non = "a"\nleft = "open"\n'
        '[run.b]\ncases = ["b"]\non = "b"\nleft = "corner"\nright = "open"\n'
    )
    worked = work_out(read(text))
    run = next(run for run in worked.room.runs if run.spec.key == "b")
    least = sum((length(each, unit) for each in (depth, bumper, door, pull, clear)), Fraction(0))
    assert least == length(need, unit)
    nodes = worked.room.chain.nodes
    first = nodes["run.b.corner_left.beyond"].value + nodes["run.b.corner_left.need"].value
    assert first == length(mark, unit)
    assert run.starts[0].value >= least
    assert worked.failures == ()


def test_a_corner_that_nothing_goes_into_is_told() -> None:
    """By its line, with what to write."""
    text = (
        'format = 1\nunit = "in"\n[case.a]\nkind = "wall"\n[wall.w]\nwidth = 40\n'
        '[run.r]\ncases = ["a"]\non = "w"\nleft = "corner"\n'
    )
    told = problem(text)
    assert told.location.line == 10
    assert "no run goes into the corner" in told.what


def test_two_runs_that_both_keep_out_of_a_corner_are_told_of_each_other() -> None:
    """Each by its line, with what to take out of which."""
    text = 'format = 1\nunit = "in"\n[corner.c]\nwalls = ["n", "e"]\n' + "".join(
        f'[case.{key}]\nkind = "base"\n[wall.{key}]\nwidth = 90\n'
        f'[run.{key}]\ncases = ["{key}"]\non = "{key}"\n{side} = "corner"\n'
        for key, side in (("n", "right"), ("e", "left"))
    )
    told = problems(text)
    assert [each.location.line for each in told] == [12, 20]
    assert all("keeps out of it as well" in each.what for each in told)
    assert told[0].want.endswith("take right out here, or left in [run.e]")


_MOVES: tuple[Callable[[Part], Part], ...] = (
    lambda part: _moved(part, "x"), lambda part: _moved(part, "y"), lambda part: _moved(part, "z"),
    lambda part: _grown(part, "length"), lambda part: _grown(part, "width"),
    lambda part: _grown(part, "thickness"),
)  # fmt: skip


def _off(dim: Dim, by: str) -> Dim:
    return Dim("", (), dim.value + length(by))


def _moved(part: Part, axis: str) -> Part:
    by: dict[str, Any] = {axis: _off(getattr(part.placed, axis), "1/16")}
    return replace(part, placed=replace(part.placed, **by))


def _grown(part: Part, size: str) -> Part:
    by: dict[str, Any] = {size: _off(getattr(part.finished, size), "1/16")}
    return replace(part, finished=replace(part.finished, **by))


def _failures(run: Run) -> tuple[str, ...]:
    grid = length("1/32")
    return tuple(f.says for f in prove_run(run, spacing=length("24"), grid=grid).failures)


@pytest.mark.parametrize("name", ["part", "lip"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_every_sixteenth_that_matters_is_caught(unit: Unit, name: str) -> None:
    """Moved, or of another size, as cut: told. A wider face only leaves more to scribe."""
    gaps, width = (("2", "2", "2"), "33") if unit == "in" else (("50", "50", "50"), "850")
    [run] = build(_one(unit, *gaps, width=width)).runs
    assert _failures(run) == ()
    [filler] = run.fillers
    for number, change in enumerate(_MOVES):
        part = getattr(filler, name)
        assert isinstance(part, Part)
        changed: dict[str, Any] = {name: change(part)}
        wrong = replace(filler, **changed)
        told = _failures(replace(run, fillers=(wrong,)))
        assert bool(told) != ((name, number) == ("part", 4)), (name, number, told)


@settings(max_examples=12, deadline=None)
@examples(
    st.lists(st.integers(2 * 64, 4 * 64), min_size=1, max_size=5),
    st.sampled_from(["left", "right"]),
    st.sampled_from(["1/2", "23/32", "1"]),
)
def test_a_filler_covers_every_gap_that_was_read(gaps: list[int], side: str, thick: str) -> None:
    """Whatever was read, at either hand, of any board: the proof holds and it is wide enough."""
    texts = ", ".join(f'"{30 + Fraction(gap, 64)}"' for gap in gaps)
    other = "right" if side == "left" else "left"
    text = (
        f'format = 1\nunit = "in"\n[stock.plywood]\nthickness = "{thick}"\n'
        '[case.a]\nkind = "base"\nwidth = 30\n'
        f'[run.r]\ncases = ["a"]\nwall = [{texts}]\n{other} = "open"\n'
    )
    [run] = build(read(text)).runs
    assert _failures(run) == ()
    [filler] = run.fillers
    assert filler.side == side
    assert max(gap.value for gap in filler.gaps) == max(gaps) * length("1/64")
    assert filler.part.finished.width.value >= max(gap.value for gap in filler.gaps)
    assert run.length.value == 30 * length(1) + min(gaps) * length("1/64")
