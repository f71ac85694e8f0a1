"""Hoods as they are written: what is refused, what is asked, how they hang among wall cases."""

from __future__ import annotations

import pytest
from tests.builders import INCH
from tests.jobs import HEAD, loaded, problems

from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.room.on_walls import cases_on_walls

_GOODS = '[stock.plywood]\nmeasured = "0.709"\n[stock.fibreboard]\nmeasured = "0.748"\n'
_TOP = "[appliance.top]\nwidth = 30\ncooks = true\nclear_above = 30\n"
_LINER = """\
[appliance.liner]
width = 24
height = 10
depth = 11
above_cooking = 27
duct = 6
duct_back = 7
"""
_HOOD = '[case.hood]\nkind = "hood"\nappliance = "liner"\nover = "top"\nwidth = 36\n'
_BELOW = '[case.low]\nkind = "base"\nwidth = 30\n[run.below]\ncases = ["low", "top"]\n'
_UP = '[case.up]\nkind = "wall"\nwidth = 24\n'


def _worked(text: str) -> WorkedJob:
    worked = work_out(loaded(HEAD + _GOODS + text).spec)
    assert worked.failures == ()
    return worked


@pytest.mark.parametrize(
    ("hood", "wrong", "right"),
    [
        ("shelves = 2", "has no shelves", "take it out"),
        ('front = "slab"', "has no front", "take it out"),
        ('face = "face frame"', "one panel", "take it out"),
        ('finished = "left"', "has no finished", "take it out"),
        ('toe = "notch"', "has no toe", "take it out"),
        ('over = "liner"', "not cooked on", "cooks = true"),
        ('over = "stove"', "no appliance stove", ""),
        ('face_sheet = "board"', "no sheet", "fibreboard"),
        ("height = 12", "leave no room", "or more"),
    ],
)
def test_what_cannot_be_is_told_with_what_would_be_right(
    hood: str, wrong: str, right: str
) -> None:
    """The reason, and what would be right."""
    key = hood.partition(" ")[0]
    own = (
        "\n".join(line for line in _HOOD.splitlines() if not line.startswith(key)) + f"\n{hood}\n"
    )
    found = problems(HEAD + _TOP + _LINER + own + _BELOW)
    assert any(wrong in each.what and right in each.want for each in found)


@pytest.mark.parametrize(
    ("gone", "wrong"),
    [('appliance = "liner"\n', "round a liner"), ('over = "top"\n', "over what")],
)
def test_a_hood_names_its_liner_and_what_it_hangs_over(gone: str, wrong: str) -> None:
    """Neither has a default."""
    text = HEAD + _TOP + _LINER.replace("above", "above") + _HOOD.replace(gone, "") + _BELOW
    assert any(wrong in each.what for each in problems(text))


def test_words_of_hoods_belong_to_hoods() -> None:
    """Only a hood hangs over anything."""
    found = problems(HEAD + _TOP + _UP + 'over = "top"\n' + _BELOW)
    assert any("only a hood" in each.what for each in found)


def test_a_hood_at_a_wall_wants_a_case_between() -> None:
    """Its filler would begin below it."""
    run = '[run.above]\ncases = ["up", "hood"]\nwall = 62\n'
    [told] = problems(HEAD + _TOP + _LINER + _HOOD + _UP + _BELOW + run)
    assert "filler" in told.what


def test_it_ends_with_the_cases_beside_it_and_begins_where_the_sheets_let_it() -> None:
    """Tops in line; 36 and 30, and the style's eighth, above the floor."""
    wall = "[wall.w]\nwidth = 120\n"
    run = '[run.above]\ncases = ["up", "hood"]\non = "w"\nleft = "open"\nright = "open"\n'
    worked = _worked(_TOP + _LINER + _HOOD + _UP + _BELOW + run + wall)
    places = {place.case.key: place for place in cases_on_walls(worked.room)}
    assert places["hood"].top == places["up"].top
    assert places["hood"].bottom == INCH * 529 / 8
    assert not [f for f in worked.findings if f.severity is Severity.STOP and f.path == "hood"]


def test_a_counter_higher_than_the_style_says_takes_the_hood_along() -> None:
    """Base cases of 36, the counter on them, and the sheets on top: 67 5/8."""
    below = _BELOW.replace("width = 30", "width = 30\nheight = 36")
    hood = next(c for c in _worked(_TOP + _LINER + _HOOD + below).room.cases if c.key == "hood")
    assert hood.standing.value == INCH * (529 - 8 * 54 + 12) / 8


@pytest.mark.parametrize(
    "name", ["width", "height", "depth", "above_cooking", "duct", "duct_back"]
)
def test_each_number_that_its_liner_lacks_is_asked_for(name: str) -> None:
    """And the case waits."""
    liner = "\n".join(line for line in _LINER.splitlines() if line.partition(" ")[0] != name)
    room = _worked(_TOP + liner + "\n" + _HOOD + _BELOW).room
    asked = {q.path: q for q in room.questions if q.path.startswith("appliance.liner")}
    assert set(asked) == {f"appliance.liner.{name}"}
    if name != "height":
        assert "hood.bottom" in asked[f"appliance.liner.{name}"].waiting


def test_a_hood_waits_for_what_is_cooked_on_below_it() -> None:
    """Its foot hangs as high as that one's sheet asks, which nobody has given."""
    text = _TOP.replace("clear_above = 30\n", "") + _LINER + _HOOD + _BELOW
    [asked] = [q for q in _worked(text).questions if q.path == "appliance.top.clear_above"]
    assert {"hood.side_left", "hood.bottom"} <= set(asked.waiting)


@pytest.mark.parametrize("more", ["", 'back = "grooved"\n', 'joint = "dado"\n', 'edge = "lip"\n'])
def test_a_hood_goes_together(more: str) -> None:
    """Alone, in other constructions of its box."""
    worked = _worked(_TOP + _LINER + _HOOD + more + _BELOW)
    assert [f for f in worked.findings if f.severity is Severity.STOP] == []
