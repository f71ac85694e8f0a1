"""Rows open at both ends that stand on the middle of something: middles agree to half a mark."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import INCH, length
from tests.jobs import problems, read

from casewright.job.worked import work_out
from casewright.room.model import Room

_WALL = 'format = 1\nunit = "in"\n[wall.w]\nwidth = "{width}"\n'
_WINDOW = (
    '[wall.w.fixed.light]\nkind = "window"\nleft = "{left}"\nwidth = 30\nbottom = 44\ntop = 80\n'
)
_LOW = (
    '[appliance.top]\nwidth = 30\n[case.pots]\nkind = "base"\nwidth = "25 1/32"\n'
    '[case.pans]\nkind = "base"\nwidth = 24\n'
    '[run.low]\ncases = ["pots", "top", "pans"]\non = "w"\nright = "open"\n'
)
_HIGH = (
    '[case.mid]\nkind = "wall"\nwidth = 36\n[run.high]\ncases = ["mid"]\non = "w"\nleft = "open"\n'
    'right = "open"\ncentre = { mid = "top" }\n'
)
_BESIDE = (
    '[case.cups]\nkind = "wall"\n[run.beside]\ncases = ["cups"]\non = "w"\nbefore = "mid"\n'
    'right = "flush"\n'
)


def _middle(room: Room, run: str, key: str) -> Fraction:
    """Of a case or an appliance, from the wall's left end [mm]."""
    found = next(each for each in room.runs if each.spec.key == run)
    for case, start in zip(found.cases, found.starts, strict=True):
        if case.key == key:
            return found.begins.value + start.value + case.overall_width.value / 2
    each = next(each for each in found.appliances if each.spec.key == key)
    return found.begins.value + each.start.value + each.width.value / 2


def test_it_stands_on_the_middle_of_an_appliance_of_another_run() -> None:
    """1 1/2 of filler, 25 1/32 and 15 lie left of that middle; seams lie on sixteenths."""
    worked = work_out(read(_WALL.format(width=140) + _LOW + _HIGH))
    assert worked.failures == ()
    below, above = _middle(worked.room, "low", "top"), _middle(worked.room, "high", "mid")
    assert abs(below - above) <= INCH / 32
    high = next(run for run in worked.room.runs if run.spec.key == "high")
    assert high.starts[0].value % (INCH / 16) == 0


def test_another_run_ends_at_it_and_follows() -> None:
    """What stands beside fills what is left: wider by as much as the middle moved."""

    def beside(pots: str) -> Fraction:
        text = (_WALL.format(width=140) + _LOW + _HIGH + _BESIDE).replace("25 1/32", pots)
        room = work_out(read(text)).room
        return next(case for case in room.cases if case.key == "cups").width.value

    assert beside("27") - beside("25") == 2 * INCH


@pytest.mark.parametrize(("left", "middle"), [("50", "65"), ("0", "18"), ("70", "82")])
def test_on_a_window_as_far_as_the_wall_goes(left: str, middle: str) -> None:
    """36 wide on 100: its middle is never nearer than 18 to an end of the wall."""
    high = _HIGH.replace('mid = "top"', 'mid = "light"').replace("high", "low")
    text = _WALL.format(width=100) + _WINDOW.format(left=left)
    room = work_out(read(text + high.replace('"wall"', '"base"'))).room
    assert _middle(room, "low", "mid") == length(middle)


def test_two_runs_that_wait_for_each_other_are_told() -> None:
    """One stands on the middle of what begins after it."""
    low = _LOW.replace('right = "open"', 'left = "flush"\nright = "open"\nafter = "mid"')
    told = problems(_WALL.format(width=140) + low + _HIGH)
    assert any("stands on the middle of what stands in low" in each.what for each in told)
