"""Examples of what is found while building, by common practice or the job's own sheets."""

from __future__ import annotations

import pytest

from casewright.checks.while_building import FOUND_WHILE_BUILDING
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import work_out
from casewright.room.build import build

_HEAD = """format = 1
unit = "in"
[stock.plywood]
measured = "0.709"
[stock.fibreboard]
measured = "0.748"
[stock.half]
kind = "sheet"
material = "fibreboard"
thickness = "1/2"
measured = "0.5"
size = [97, 49]
[stock.one]
kind = "sheet"
material = "fibreboard"
thickness = "1"
measured = "1"
size = [97, 49]
"""
_WALL = '[case.a]\nkind = "wall"\nwidth = 18\nheight = 30\n'
_BASE = '[case.a]\nkind = "base"\nwidth = 24\n'
_TALL = '[case.a]\nkind = "tall"\nwidth = 18\n'
_GLASS = 'front = { construction = "glass frame" }\n'
_PANEL = 'front = {{ construction = "frame and panel", {} }}\n'
_STRIPS = 'finished = "left"\nfront = "applied frame"\n'
_FRAME = 'face = "face frame"\n'
_STACK = 'rows = ["doors", "drawer 12", "drawer 12"]\n'
_SHARE = ('[case.a]\nkind = "base"\nregister_opening = [{}, 2]\n'
          '[run.r]\ncases = ["a"]\nwall = 30\n')  # fmt: skip
_UNDER = 'drawers = 3\ndrawer = {{ slides = "undermount", bottom = "{}" }}\n'
_PULL = "[hardware.pull]\ncentres = 20\n"
_PLATE = '[hardware.hinge]\nplate_heights = ["9 mm"]\n'

EXAMPLES: dict[str, tuple[str, str]] = {
    "door size": (_WALL + _GLASS,
                  _WALL.replace("18", "12") + _GLASS.replace(" }", ", leaves = 2 }")),
    "driver room": (_WALL.replace("18", "12"), _WALL.replace("18", "9")
                    + "front = { leaves = 2 }\n"),
    "door that warps": (_TALL + "height = 88\n", _TALL + "height = 101\n"),
    "hinge load": (_TALL + "height = 88\n", _TALL.replace("18", "26")
                   + 'height = 107\nfront = { slab = "one", leaves = 1 }\n'),
    "hinge overlay": (_WALL, _PLATE + _WALL),
    "wood under the cup": (_WALL, _WALL + 'front = { slab = "half" }\n'),
    "cup and rebate": (_WALL + _GLASS, '[style]\nstile = "1 1/2"\n' + _WALL + _GLASS),
    "pull and rebate": (_WALL + _GLASS, '[style]\npull_edge = "2 3/8"\n' + _WALL + _GLASS),
    "pull length": (_WALL, _PULL + _WALL.replace("30", "18")),
    "rebate depth": (_WALL + _GLASS, '[style]\nretainer = "1/2"\n' + _WALL + _GLASS),
    "pane corner": (_WALL + _GLASS, '[style]\nrebate_bit = 3\n' + _WALL + _GLASS),
    "mid rail": (_WALL + _PANEL.format("mid_rail = 15"), _WALL + _PANEL.format("mid_rail = 27")),
    "panel and frame": (_WALL + _PANEL.format('panel = "thin_plywood"'),
                        _WALL + _PANEL.format('panel = "plywood"')),
    "finished end": (_WALL + _STRIPS, _WALL + "depth = 5\n" + _STRIPS),
    "narrow face frame": (_BASE + _FRAME, '[style]\nface_stile = "3/4"\n' + _BASE + _FRAME),
    "pads behind the frame": (_BASE + _FRAME, "[style]\nface_stile = 3\n" + _BASE + _FRAME),
    "slide length": (_BASE + "depth = 20\ndrawers = 3\n", "[hardware.slide]\nlengths = [24]\n"
                     + _BASE + "depth = 20\ndrawers = 3\n"),
    "drawer height": (_BASE + 'rows = ["drawer 5", "drawer", "drawer"]\n',
                      _BASE + 'rows = ["drawer 2", "drawer", "drawer"]\n'),
    "drawer width": (_BASE + "drawers = 3\n", "[hardware.slide]\nair = 3\n"
                     + _BASE.replace("24", "12") + "drawers = 3\n"),
    "shelf in a row": (_TALL + _STACK + "fixed_shelves = [60]\n",
                       _TALL + _STACK + "fixed_shelves = [20]\n"),
    "register opening": (_SHARE.format(12), _SHARE.format(30)),
    "hole in the groove": (_BASE + _UNDER.format("thin_plywood"),
                           _BASE + _UNDER.format("drawer_plywood")),
    "roll-out room": (_BASE + "roll_outs = 2\n", _BASE + "roll_outs = 6\n"),
    "shelf room": (_WALL + "shelves = 2\n", _WALL + "shelves = 20\n"),
}  # fmt: skip


@pytest.mark.parametrize("rule", EXAMPLES)
def test_what_cannot_be_made_is_found_and_what_can_is_not(rule: str) -> None:
    """With a place, a source and what would help."""
    passes, fails = (build(read_job(_HEAD + text, "a.toml")) for text in EXAMPLES[rule])
    found, none = (
        [each for case in room.cases for each in case.findings if each.rule.startswith(rule)]
        for room in (fails, passes)
    )
    assert found
    assert not none
    assert all(each.path and each.source and each.remedies for each in found)
    assert any(each.rule.startswith(rule) for each in FOUND_WHILE_BUILDING)


@pytest.mark.parametrize(
    ("impossible", "says", "relief"),
    [
        (_WALL.replace("18", "9") + "front = { leaves = 2 }\n",
         'between the sides of a are 7 19/32"', 'a case 1 3/4" wider'),
        (EXAMPLES["slide length"][1], 'slides of 24"', 'slides of ~18 1/2" or less'),
        (_BASE + _FRAME + 'front = { overlay = "inset", slab = "one" }\n',
         'an inset front of 1" is thicker', 'fronts at least 1/4" thinner'),
    ],
)  # fmt: skip
def test_impossible_combinations_are_found_and_the_rest_is_worked_out(
    impossible: str, says: str, relief: str
) -> None:
    """Slides of 24 in in a case of 20, a pair on one of 9, an inset front thicker than its frame.

    Two sides of 0.709 leave 7.58 in of 9; a driver in line with a pocket takes 235 mm, 9 1/4 in
    (common practice, with a pocket's run of 28/15 of its board).
    """
    job = f'{_HEAD}{impossible}[case.b]\nkind = "base"\nwidth = 24\n'
    found = work_out(read_job(job, "job.toml"))
    told = [each for each in found.findings if says in each.says]
    assert [each.severity for each in told] == [Severity.STOP]
    assert any(each.startswith(relief) for each in told[0].remedies)
    assert found.failures == ()
    [other] = [case for case in found.room.cases if case.key == "b"]
    assert other.doors
    assert not any(each.severity is Severity.STOP and each.path.startswith("b")
                   for each in found.findings)  # fmt: skip


def test_a_narrow_case_without_pocket_screws_goes_together() -> None:
    """What is proposed beside a wider one: dadoes, and a back that needs no nailer."""
    job = _HEAD + _WALL.replace("18", "9") + 'joint = "dado"\nback = "inset"\n'
    found = work_out(read_job(job, "job.toml"))
    assert found.failures == ()
    assert not any(each.severity is Severity.STOP for each in found.findings)
