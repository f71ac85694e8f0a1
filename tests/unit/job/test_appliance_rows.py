"""Appliances in the rows of tall cases, as they are written: what is refused, what is asked."""

from __future__ import annotations

import pytest
from tests.jobs import HEAD, loaded, problems

from casewright.job.worked import work_out

_OVEN = '[appliance.oven]\nwidth = "28 1/2"\nheight = "28 1/2"\ndepth = "22 1/2"\n'
_TOWER = '[case.tower]\nkind = "tall"\nwidth = 30\nrows = ["doors", "appliance oven", "drawer"]\n'


@pytest.mark.parametrize(
    ("text", "wrong", "right"),
    [
        (_TOWER, "there is no appliance oven", ""),
        (_OVEN + _TOWER.replace("appliance oven", "appliance"), "no appliance is named", "oven"),
        (_OVEN + _TOWER.replace('"tall"', '"base"\nheight = 90'), "only a tall case", "tall"),
        (_OVEN + _TOWER.replace('"doors", ', ""), "nailer", 'begin the rows with "doors"'),
        (_OVEN + _TOWER.replace('"doors", ', "").replace(', "drawer"', "").replace(
            "width", "divider = 60\nwidth"), "nothing makes up the height", '"drawer"'),
        (_OVEN + _TOWER.replace(', "drawer"', ""), "nothing carries a bottom", "plinth"),
        (_OVEN + _TOWER + 'face = "strips"', "edge of a deck", "face frame"),
        (_OVEN + _TOWER.replace(', "drawer"', "") + 'face = "face frame"\ntoe = "plinth"',
         "nothing carries a bottom", '"drawer"'),
        (_OVEN + _TOWER.replace('"drawer"', '"drawer 60"') + 'face = "face frame"',
         "is left for each row", "higher"),
        (_OVEN + _TOWER + 'front = { overlay = "inset" }', "full overlay, not inset", "full"),
        (_OVEN + _TOWER.replace("oven", "oven\", \"appliance oven", 1), "elsewhere", "own"),
        (_OVEN + _TOWER.replace('"drawer"', '"drawer 60"'), "is left for each row", "higher"),
        ('[appliance.oven]\nwidth = 30\n[case.a]\nkind = "tall"\nwidth = 30',
         "stands in no run and in no case", "put"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told_with_what_would_be_right(
    text: str, wrong: str, right: str
) -> None:
    """The reason, and what would be right."""
    assert any(wrong in each.what and right in each.want for each in problems(HEAD + text))


def test_a_size_that_its_sheet_has_not_given_is_asked_for_and_the_case_waits() -> None:
    """Width and depth hold up the whole case, the height what is sized by it."""
    for name, waits in (("width", {"tower.side_left", "tower.door_left.slab"}),
                        ("depth", {"tower.side_left"}),
                        ("height", {"tower.door_left.slab"})):  # fmt: skip
        lines = [line for line in _OVEN.splitlines() if not line.startswith(name)]
        room = work_out(loaded("\n".join((HEAD, *lines, _TOWER))).spec).room
        path = f"appliance.oven.{name}"
        (asked,) = [question for question in room.questions if question.path == path]
        assert waits <= set(asked.waiting)
        held = {part.path for case in room.cases for part in case.parts if path in part.waits_for}
        assert held == set(asked.waiting)
