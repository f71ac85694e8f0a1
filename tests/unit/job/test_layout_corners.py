"""What a layout of a run knows of the run round an inside corner, and says where nothing opens."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import INCH
from tests.jobs import read

from casewright.checks import check
from casewright.dims import Unit
from casewright.job.hindrances import run_hindrances
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.job.relayout import told_anew
from casewright.room.build import build

_SIZES: dict[Unit, dict[str, str]] = {
    "in": {"n": "108", "e": "110", "at": "70", "wide": "10", "high": "24", "out": '"2 1/2"'},
    "mm": {"n": "2740", "e": "2800", "at": "1780", "wide": "250", "high": "600", "out": "64"},
}
_ROOM = """\
format = 1
unit = "{unit}"
[wall.north]
width = {n}
{thing}
[wall.east]
width = {e}
[corner.ne]
walls = ["north", "east"]
[case.a]
kind = "base"
[case.shelf]
kind = "base"
front = "none"
[case.b]
kind = "base"
[case.c]
kind = "base"
[case.bare]
kind = "base"
front = "none"
[case.d]
kind = "base"
"""
_UNITS: tuple[Unit, ...] = ("in", "mm")


def _text(unit: Unit, north: str, east: str, thing: str = "") -> str:
    sizes = {**_SIZES[unit], "unit": unit}
    head = _ROOM.format(**sizes, thing=thing.format(**sizes))
    runs = (f"[run.{key}]\n{lines}\n" for key, lines in (("n", north), ("e", east)) if lines)
    return head + "".join(runs)


def _north(*cases: str, more: str = "") -> str:
    names = ", ".join(f'"{case}"' for case in cases)
    return f'cases = [{names}]\non = "north"\n{more}'


_EAST = 'cases = ["c", "bare", "d"]\non = "east"\n'
_KEEPS_OUT = f'{_EAST}left = "corner"\n'


def _runs(text: str) -> dict[str, RunLayout]:
    return {run.key: run for run in layouts(build(read(text)))}


@pytest.mark.parametrize("unit", _UNITS)
def test_two_runs_that_go_into_one_corner_are_told_which_keeps_out(unit: Unit) -> None:
    """That which opens there; with its line written, both are laid out."""
    found = _runs(_text(unit, _north("a", "b", "shelf"), _EAST))
    for run in found.values():
        assert not run.answers
        [told] = run_hindrances(run)
        assert "stand in one another in the corner" in told.what
        assert [relief.splitlines()[-1] for relief in told.reliefs] == ['[run.e] left = "corner"']
    again = _runs(_text(unit, _north("a", "b", "shelf"), _KEEPS_OUT))
    assert all(run.answers for run in again.values())


@pytest.mark.parametrize("unit", _UNITS)
def test_what_opens_is_not_shut_in_behind_the_run_round_the_corner(unit: Unit) -> None:
    """In a given order what stands before it is told; in a free one shelves go there."""
    [told] = run_hindrances(_runs(_text(unit, _north("a", "shelf", "b"), _KEEPS_OUT))["n"])
    between = "1 7/16" if unit == "in" else "36.5"
    assert f"the run round the corner stands {between} before its fronts" in told.what
    assert told.reliefs[0].startswith("shelf at that end instead")
    assert 'blind = "right"' in told.reliefs[1]
    free = _north("a", "shelf", "b", more='order = "free"\n')
    answers = _runs(_text(unit, free, _KEEPS_OUT))["n"].answers
    assert answers
    assert {each.layout.task.places[-1].key for each in answers} == {"shelf"}


@pytest.mark.parametrize("unit", _UNITS)
def test_a_run_that_keeps_out_is_filled_to_the_step_in_any_order(unit: Unit) -> None:
    """Whichever case is put beside the corner, its pull is allowed for: the answer stands so."""
    east = f'{_KEEPS_OUT}order = "free"\nbeside = {{ bare = "d" }}\n'
    text = _text(unit, _north("a", "b", "shelf"), east)
    run = _runs(text)["e"]
    assert run.answers
    for number, answer in enumerate(run.answers, start=1):
        east_run = build(read(accepted(text, run, number))).runs[1]
        assert east_run.starts[0].value == answer.layout.left * run.step
        [right] = [each for each in east_run.fillers if each.side == "right"]
        # What is under a step of the wall is left over at the wall.
        assert 0 <= right.width.value - answer.layout.right * run.step < run.step


@pytest.mark.parametrize(("unit", "out"), [("in", INCH * 5 / 2), ("mm", 64)])
def test_a_drawer_passes_what_stands_out_round_the_corner(unit: Unit, out: Fraction) -> None:
    """The filler is wider than others then, and is not found too wide."""
    thing = (
        '[wall.north.fixed.heater]\nkind = "radiator"\nleft = {at}\nwidth = {wide}\n'
        "bottom = 0\nheight = {high}\nout = {out}"
    )
    six = "6" if unit == "in" else "150"
    text = _text(unit, "", _EAST, thing)
    for key in ("a", "shelf", "b"):
        text = text.replace(f"[case.{key}]\n", f"[case.{key}]\nwidth = {_SIZES[unit]['at']}\n")
    text = text.replace("[case.c]", f'[case.c]\nrows = ["drawer {six}", "drawer"]')
    run = _runs(text)["e"]
    assert run.answers
    for number, answer in enumerate(run.answers, start=1):
        room = build(read(accepted(text, run, number)))
        assert answer.layout.left * run.step >= out
        rules = {finding.rule for finding in told_anew(room, check(room))}
        assert not rules & {"opens beside", "wide filler"}


@pytest.mark.parametrize(("at", "width"), [(22, 80), (22, 95), (28, 80), (40, 95)])
def test_doors_in_a_corner_are_no_wider_than_the_space_before_them(at: int, width: int) -> None:
    """The other run begins past a door of the room: so far off, some doors open before it."""
    thing = (
        '[wall.east.fixed.door]\nkind = "door"\n'
        f"left = {at}\nwidth = 10\nbottom = 0\nheight = 80\n"
    )
    north = _north("a", "shelf", "b")
    text = _text("in", north, _EAST + 'after = "door"\n').replace(
        "width = 108", f"width = {width}"
    )
    text = text.replace("[corner.ne]", f"{thing}[corner.ne]")
    run = _runs(text)["n"]
    if (at, width) == (22, 95):
        stop, told = run_hindrances(run)
        assert "only a case of 9 to 9 7/16 opens" in stop.what
        assert "9 7/16 left over" in told.what
        assert not [relief for relief in told.reliefs if relief.startswith("b ")]
        return
    assert run.answers
    for number in range(1, len(run.answers) + 1):
        room = build(read(accepted(text, run, number)))
        found = [each for each in check(room) if each.rule in ("inside corner", "opens beside")]
        assert not [each.says for each in found if each.path.startswith("b")]
