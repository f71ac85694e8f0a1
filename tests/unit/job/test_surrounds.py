"""Surrounds as they are written: what is refused, what is asked."""

from __future__ import annotations

import pytest
from tests.builders import INCH, length
from tests.jobs import HEAD, loaded, problems

from casewright.findings import Severity
from casewright.job.worked import work_out

_COLD = '[appliance.cold]\nwidth = "35 3/4"\nheight = 70\ndepth = 24\n'
_ROUND = '[case.round]\nkind = "surround"\nappliance = "cold"\nwidth = "36 1/4"\n'


@pytest.mark.parametrize(
    ("text", "wrong", "right"),
    [
        (_ROUND, "there is no appliance cold", ""),
        (_COLD + _ROUND.replace('appliance = "cold"\n', ""), "none is named", "appliance ="),
        (_COLD + _ROUND.replace("surround", "tall"), "only a surround", "surround"),
        (_COLD + _ROUND + 'face = "strips"', "no strips on its face", "face frame"),
        (_COLD + _ROUND + 'face = "face frame"\nend = "flush"', "none is flush", "skin"),
        (_COLD + _ROUND + 'face = "face frame"\nscribe = "left"', "none is scribed", "filler"),
        (_COLD + _ROUND + 'end = "plain"', 'no "plain"', "flush"),
        (_COLD + _ROUND + "height = 72", "leave no room", "or more"),
        (_COLD + _ROUND + 'front = "none"', "nothing hides the screws", "doors"),
        (_COLD + _ROUND + 'toe = "notch"', "has no toe", "take it out"),
        (_COLD + _ROUND + "roll_outs = 2", "has roll_outs", "take it out"),
    ],
)
def test_what_cannot_be_is_told_with_what_would_be_right(
    text: str, wrong: str, right: str
) -> None:
    """The reason, and what would be right."""
    assert any(wrong in each.what and right in each.want for each in problems(HEAD + text))


@pytest.mark.parametrize("more", [
    "", 'end = "flush"\n', 'back = "grooved"\n', "divider = 12\n",
    'face = "face frame"\n', 'face = "face frame"\nmullion = true\ndivider = 12\n',
    'face = "face frame"\nface_joint = "tenons"\nback = "applied"\n',
])  # fmt: skip
def test_a_surround_goes_together(more: str) -> None:
    """With panels behind its doors or flush with them, and other choices of the box."""
    goods = '[stock.plywood]\nmeasured = "0.709"\n'
    worked = work_out(loaded(HEAD + goods + _COLD + _ROUND + more).spec)
    assert worked.failures == ()
    assert [f for f in worked.findings if f.severity is Severity.STOP] == []


def test_its_appliance_is_asked_for() -> None:
    """The box's height rests on the refrigerator's; its width decides the whole case."""
    for name in ("width", "height"):
        lines = [line for line in _COLD.splitlines() if not line.startswith(name)]
        room = work_out(loaded("\n".join((HEAD, *lines, _ROUND))).spec).room
        (asked,) = [q for q in room.questions if q.path == f"appliance.cold.{name}"]
        assert "round.side_left" in asked.waiting


def test_its_frame_counts_in_the_run_that_it_stands_in() -> None:
    """What a case beside it shares out is what stiles, panels and fillers of 1 1/2 in leave."""
    text = (
        f'{HEAD}[stock.plywood]\nmeasured = "0.709"\n[boxes]\nface = "face frame"\n{_COLD}{_ROUND}'
        '[case.beside]\nkind = "base"\n[run.all]\ncases = ["round", "beside"]\n'
        "wall = [68, 68, 68]\n"
    )
    worked = work_out(loaded(text).spec)
    assert worked.failures == ()
    assert [f for f in worked.findings if f.severity is Severity.STOP] == []
    left = 68 * INCH - sum(case.overall_width.value for case in worked.room.cases)
    assert 3 * INCH <= left <= length("3 1/8")
