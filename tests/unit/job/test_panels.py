"""Panels of appliances as they are written: what is refused, what is asked, what lines up."""

from __future__ import annotations

import pytest
from tests.builders import INCH
from tests.jobs import HEAD, loaded, problems

from casewright.drawing import measure_of
from casewright.drawing.run_elevation import run_scene
from casewright.job.worked import WorkedJob, work_out

_GOODS = '[stock.plywood]\nmeasured = "0.709"\n[stock.fibreboard]\nmeasured = "0.748"\n'
_BASES = '[case.pots]\nkind = "base"\nwidth = 24\n[case.pans]\nkind = "base"\nwidth = 30\n'
_WASHER = "[appliance.washer]\nwidth = 24\n"
_RUN = '[run.below]\ncases = ["pots", "washer", "pans"]\n'
_SHEET = """\
[appliance.washer.panel]
no_limit = ["height", "width", "thickness", "weight"]
screw_rows = [4, 18]
screws_apart = 16
screw_depth = "1/2"
"""
KEY = "appliance.washer.panel"


def _worked(panel: str = _SHEET, bases: str = _BASES, run: str = _RUN) -> WorkedJob:
    worked = work_out(loaded(HEAD + _GOODS + bases + _WASHER + panel + run).spec)
    assert worked.failures == ()
    return worked


@pytest.mark.parametrize(
    ("panel", "wrong", "right"),
    [
        ('construction = "glass frame"', "glass frame", "applied frame"),
        ('most_height = 20\nno_limit = ["height"]', "a limit", "take one of the two out"),
        ("least_height = 30\nmost_height = 20", "greater than the greatest", "again"),
        ("screw_rows = [4, 4]", "at one height", "once"),
        ('slab = "board"', "no sheet", "fibreboard"),
        ('strip = "strip"', "a slab has no strip", "applied frame"),
        ('slab = "nothing"', "there is no stock", ""),
        ('most_weight = "7 stone"', "no weight", "kg"),
        ('screws_apart = "wide"', "", ""),
    ],
)
def test_what_cannot_be_is_told_with_what_would_be_right(
    panel: str, wrong: str, right: str
) -> None:
    """The reason, and what would be right."""
    text = HEAD + _BASES + _WASHER + f"[appliance.washer.panel]\n{panel}\n" + _RUN
    assert any(wrong in each.what and right in each.want for each in problems(text))


def test_a_panel_belongs_between_base_cases() -> None:
    """Not between wall cases, not on what stands in a case."""
    hung = _BASES.replace('"base"', '"wall"')
    [told] = problems(HEAD + hung + _WASHER + _SHEET + _RUN)
    assert "between wall cases" in told.what
    tower = ('[case.tower]\nkind = "tall"\nwidth = 30\n'
             'rows = ["doors", "appliance washer", "drawer 13"]\n')  # fmt: skip
    washer = _WASHER + "height = 20\ndepth = 20\n"
    [told] = problems(HEAD + tower + washer + _SHEET)
    assert "stands in a case" in told.what


def test_each_number_that_is_missing_is_asked_for_and_the_panel_waits() -> None:
    """Four limits and three numbers of its screws."""
    worked = _worked('panel = "slab"\n')
    asked = {q.path.rpartition(".")[2]: q for q in worked.questions if q.path.startswith(KEY)}
    assert set(asked) == {
        "most_height", "most_width", "most_thickness", "most_weight", "screw_rows",
        "screws_apart", "screw_depth",
    }  # fmt: skip
    assert all(q.waiting == (f"{KEY}.front.slab",) for q in asked.values())
    assert 'no_limit = ["weight"]' in asked["most_weight"].how


def test_it_lines_up_with_the_fronts_beside_it() -> None:
    """Drawers on a toe of 4 at its left; it begins where they do, and ends where they end."""
    worked = _worked(bases=_BASES.replace("width = 24", "width = 24\ndrawers = 3"))
    case = next(c for c in worked.room.cases if c.key == KEY)
    pots = worked.room.cases[0]
    [panel] = case.fronts
    tops = max(f.y.value + f.height.value for f in pots.fronts)
    assert panel.y.value + panel.height.value == tops
    assert abs(panel.y.value - min(f.y.value for f in pots.fronts)) <= INCH / 32
    assert panel.z.value == pots.fronts[0].z.value
    [run] = worked.room.runs
    unit = worked.room.spec.unit
    scene = run_scene(run, unit, measure_of(worked.room.wall_bottom, unit))
    paths = {tag.path for e in scene.elements if (tag := getattr(e, "tag", None)) is not None}
    assert f"{KEY}.front.slab" in paths


def test_fronts_of_other_heights_beyond_it_are_not_taken_for_its_line() -> None:
    """The case on its left decides; the other one stands on a higher toe."""
    bases = _BASES + "[case.pans.style]\ntoe_height = 6\n"
    case = next(c for c in _worked(bases=bases).room.cases if c.key == KEY)
    assert case.fronts[0].y.value - 4 * INCH < INCH / 16
