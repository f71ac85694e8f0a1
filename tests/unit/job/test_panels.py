"""Panels of appliances as they are written: what is refused, what is asked, what lines up."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.builders import INCH
from tests.jobs import HEAD, loaded, problems

from casewright.dims import measure_of
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


_COLD = "[appliance.cold]\nwidth = 36\nheight = 84\ncools = true\n"
_TALL = (
    '[case.l]\nkind = "tall"\nwidth = 24\n[case.r]\nkind = "tall"\nwidth = 24\n'
    '[run.tall]\ncases = ["l", "cold", "r"]\n'
)  # fmt: skip
_LIMITS = (
    'no_limit = ["height", "width", "thickness", "weight"]\nscrew_rows = [4, 18]\n'
    'screws_apart = 10\nscrew_depth = "1/2"\n'
)


def _two(second: str) -> WorkedJob:
    text = f"{_COLD}[appliance.cold.panel]\n{_LIMITS}[appliance.cold.second_panel]\n{_LIMITS}"
    worked = work_out(loaded(HEAD + _GOODS + text + second + _TALL).spec)
    assert worked.failures == ()
    return worked


def _panels_of(worked: WorkedJob) -> list[tuple[Fraction, Fraction, Fraction, Fraction]]:
    """Left and right end in the opening, lower and upper end above the floor [mm]."""
    [each] = worked.room.runs[0].appliances
    found = []
    for case, start in each.panels:
        [front] = case.fronts
        left = start.value - each.start.value + front.x.value
        found.append((left, left + front.width.value, front.y.value,
                      front.y.value + front.height.value))  # fmt: skip
    return found


@pytest.mark.parametrize(("line", "apart"), [("14", "1/8"), ("18", "1/4"), ("20", "1/2")])
def test_two_panels_side_by_side_share_the_opening(line: str, apart: str) -> None:
    """Wo = gap + left + gap between + right + gap, parted where the sheet says (common practice).

    Pieces come off the grid by no more than its step.
    """
    worked = _two(f'place = "right"\nline = {line}\napart = "{apart}"\n')
    [each] = worked.room.runs[0].appliances
    (left, right), step = _panels_of(worked), INCH / 32
    fronts = [f for c in worked.room.runs[0].cases for f in c.wall_fronts]
    low, high = (min(f.y.value for f in fronts), max(f.y.value + f.height.value for f in fronts))
    gap, half = INCH / 8, Fraction(apart) * INCH / 2
    for found, wanted in (
        (left[0], gap), (left[1], Fraction(line) * INCH - half),
        (right[0], Fraction(line) * INCH + half), (right[1], each.width.value - gap),
        (left[2], low), (right[2], low), (left[3], high), (right[3], high),
    ):  # fmt: skip
        assert abs(found - wanted) <= step
    fit = worked.room.chain.fits["appliance.cold.second_panel.stack_gap_fit"]
    assert fit.gap.value == right[0] - left[1]


@pytest.mark.parametrize("line", ["30", "50"])
def test_two_panels_one_over_the_other_end_at_the_line(line: str) -> None:
    """A freezer below: both as wide as one alone, parted by the sheet (common practice)."""
    worked = _two(f'place = "below"\nline = {line}\napart = "1/4"\n')
    (upper, lower), step = _panels_of(worked), INCH / 32
    fronts = [f for c in worked.room.runs[0].cases for f in c.wall_fronts]
    assert (upper[0], upper[1]) == (lower[0], lower[1])
    assert abs(upper[2] - Fraction(line) * INCH - INCH / 8) <= step
    assert abs(lower[3] - Fraction(line) * INCH + INCH / 8) <= step
    assert abs(lower[2] - min(f.y.value for f in fronts)) <= step
    assert upper[3] == max(f.y.value + f.height.value for f in fronts)
    unit, [run] = worked.room.spec.unit, worked.room.runs
    scene = run_scene(run, unit, measure_of(worked.room.wall_bottom, unit))
    paths = {tag.path for e in scene.elements if (tag := getattr(e, "tag", None)) is not None}
    key = "appliance.cold"
    assert {f"{key}.panel.front.slab", f"{key}.second_panel.front.slab"} <= paths


def test_the_limits_of_an_upper_panel_are_told_by_the_line_it_begins_at() -> None:
    """From the line to the fronts' upper edge there is 55 13/16 in; its sheet lets it be 50."""
    limits = _LIMITS.replace('"height", ', "") + "most_height = 50\nfree_below = 4\n"
    text = f"{_COLD}[appliance.cold.panel]\n{limits}[appliance.cold.second_panel]\n{_LIMITS}"
    job = loaded(HEAD + _GOODS + text + 'place = "below"\nline = 34\napart = "1/8"\n' + _TALL)
    [told] = [f for f in work_out(job.spec).findings if f.rule == "appliance panel"]
    assert (told.measured, told.limit) == ('55 13/16"', '50"')
    assert told.remedies[0].startswith('line 5 13/16" higher')


def test_where_two_doors_part_is_asked_for_and_both_panels_wait() -> None:
    """Once each, not once for either panel."""
    worked = _two('place = "right"\n')
    key = "appliance.cold.second_panel"
    asked = {q.path: q for q in worked.questions if q.path.startswith("appliance.cold")}
    assert set(asked) == {f"{key}.line", f"{key}.apart"}
    waits = {"appliance.cold.panel.front.slab", f"{key}.front.slab"}
    assert all(set(q.waiting) == waits for q in asked.values())


def test_a_second_panel_wants_a_first_and_room_for_both() -> None:
    """Told at its line; a line beyond the opening stops with what is missing."""
    text = f'{_COLD}[appliance.cold.second_panel]\nplace = "below"\n{_TALL}'
    [told] = problems(HEAD + text)
    assert "no panel" in told.what
    sheet = f'[appliance.cold.panel]\n{_LIMITS}[appliance.cold.second_panel]\nplace = "right"\n'
    job = loaded(HEAD + _GOODS + _COLD + sheet + f"line = 35\n{_LIMITS}" + _TALL)
    assert any("no room for right panel" in f.says for f in work_out(job.spec).findings)


_ROUND = """format = 1
unit = "{unit}"
[appliance.cold]
width = {inner}
height = {high}
depth = {deep}
[appliance.cold.panel]
no_limit = ["height", "width", "thickness", "weight"]
screw_rows = [{row}]
screws_apart = {apart}
screw_depth = {into}
hinge = "left"
[case.pots]
kind = "base"
width = {wide}
[case.round]
kind = "surround"
appliance = "cold"
width = {opening}
{frame}
[run.low]
cases = ["pots", "round"]
"""
_SIZES: dict[str, dict[str, object]] = {
    "in": {"inner": 35, "high": 70, "deep": 26, "row": 6, "apart": 20, "into": '"3/8"',
           "wide": 24, "opening": 37},
    "mm": {"inner": 900, "high": 1780, "deep": 650, "row": 150, "apart": 500, "into": 9,
           "wide": 600, "opening": 950},
}  # fmt: skip


@pytest.mark.parametrize("frame", ["", 'end = "flush"', 'face = "face frame"'])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_panel_in_a_surround_fills_what_is_between_its_uprights(unit: str, frame: str) -> None:
    """hu - gt - kp high and Wo - 2g wide (`APPL_PANEL`), the doors over it the underside hu.

    Wo is clear between the panels, or between the stiles of a frame; kp is the line that the
    fronts beside the surround begin at.
    """
    worked = work_out(loaded(_ROUND.format(unit=unit, frame=frame, **_SIZES[unit])).spec)
    assert worked.failures == ()
    room, gap, step = worked.room, Fraction("3.175"), INCH / 32
    if unit == "mm":
        gap, step = Fraction(3), Fraction(1)
    pots, case, panel = (next(c for c in room.cases if c.key == key)
                         for key in ("pots", "round", "appliance.cold.panel"))  # fmt: skip
    [front], [each] = panel.fronts, room.runs[0].housed
    wide = case.frame.openings[0][1] if case.frame is not None else case.width
    assert 0 <= wide.value - 2 * gap - front.width.value < step
    low, over = (min(f.y.value for f in c.fronts) for c in (pots, case))
    assert front.y.value + front.height.value == over - gap
    assert 0 <= front.y.value - low < step
    middle = each.start.value + front.x.value + front.width.value / 2
    assert middle == room.runs[0].starts[1].value + case.overall_width.value / 2


def test_a_panel_needs_its_surround_in_a_run() -> None:
    """Where it stands decides what it lines up with; told at its line, with the way out."""
    text = _ROUND.format(unit="in", frame="", **_SIZES["in"])
    [told] = problems(text.replace('["pots", "round"]', '["pots"]'))
    assert "stands in a case" in told.what
    assert "a surround round it, into a run" in told.want
    alone = work_out(loaded(text.replace('["pots", "round"]', '["round"]')).spec)
    assert alone.failures == ()
