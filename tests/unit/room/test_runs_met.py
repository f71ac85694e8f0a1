"""Runs that end at a case or an appliance of another run on their wall."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import INCH
from tests.jobs import problems, read

from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.job.layouts import accepted, layouts
from casewright.job.worked import work_out
from casewright.room.build import build
from casewright.room.model import Room, Run
from casewright.room.on_walls import cases_on_walls

ROOM = """\
format = 1
unit = "in"
[wall.n]
width = ["120 1/4", "120 1/2"]
[case.pots]
kind = "base"
width = 30
[case.pans]
kind = "base"
width = 30
[case.pantry]
kind = "tall"
width = 24
divider = 54
[case.trays]
kind = "base"
width = 30
[run.below]
cases = ["pots", "pans", "pantry", "trays"]
on = "n"
left_filler = 2
[case.cups]
kind = "wall"
[case.teas]
kind = "wall"
[run.above]
cases = ["cups", "teas"]
on = "n"
before = "pantry"
[case.jars]
kind = "wall"
[run.right]
cases = ["jars"]
on = "n"
after = "pantry"
"""


def _run(room: Room, key: str) -> Run:
    return next(run for run in room.runs if run.spec.key == key)


def _ends(room: Room, key: str) -> tuple[Fraction, Fraction]:
    """From the wall's left end, fillers included [mm]."""
    run = _run(room, key)
    return run.begins.value, run.begins.value + run.length.value


def test_it_ends_where_the_case_stands() -> None:
    """2 + 30 + 30 = 62 to the pantry, 86 to its other side, 120 1/4 to the wall: by hand."""
    room = build(read(ROOM))
    assert [each / INCH for each in _ends(room, "above")] == [0, 62]
    assert [each / INCH for each in _ends(room, "right")] == [86, Fraction(481, 4)]
    [cups] = [each for each in cases_on_walls(room) if each.case.key == "cups"]
    [jars] = [each for each in cases_on_walls(room) if each.case.key == "jars"]
    assert cups.left / INCH == Fraction(3, 2)  # the filler of the style at either end
    assert cups.right / INCH == Fraction(3, 2) + Fraction(59, 2)
    assert jars.left / INCH == 86 + Fraction(3, 2)
    assert {f.side for f in _run(room, "above").fillers} == {"left", "right"}
    assert "in the way" not in {f.rule for f in work_out(read(ROOM)).findings}


def test_it_follows_the_case_that_was_built() -> None:
    """Pots came out 1/8 wide: all that stands right of them moves, and what ends there too."""
    spec = read(ROOM)
    wide = Fact(Origin("measured", "tape"), built=INCH * 30 + INCH / 8)
    before, after = build(spec), build(spec, {"pots.width": wide})
    for run, end in (("above", 1), ("right", 0)):
        assert _ends(after, run)[end] - _ends(before, run)[end] == INCH / 8
    assert _ends(after, "right")[1] == _ends(before, "right")[1]


def test_flush_it_stands_against_the_case_without_a_filler() -> None:
    """Open at the other end its cases stand at the pantry; what is left over lies there."""
    text = ROOM.replace('before = "pantry"', 'before = "pantry"\nleft = "open"\nright = "flush"')
    text = text.replace('[case.cups]\nkind = "wall"', '[case.cups]\nkind = "wall"\nwidth = 20')
    text = text.replace('[case.teas]\nkind = "wall"', '[case.teas]\nkind = "wall"\nwidth = 20')
    worked = work_out(read(text))
    above = _run(worked.room, "above")
    assert not above.fillers
    assert [each.value / INCH for each in above.starts] == [22, 42]
    assert above.cases_end.value == above.length.value == 62 * INCH
    assert not worked.failures


def test_its_layout_fills_the_wall_up_to_the_case() -> None:
    """Every answer closes 62 in to the step, and holds once it is accepted."""
    [above] = [each for each in layouts(build(read(ROOM))) if each.key == "above"]
    assert above.answers
    for number, answer in enumerate(above.answers, start=1):
        layout = answer.layout
        assert layout.left + sum(layout.widths) + layout.right == 62 * 16
        assert _ends(build(read(accepted(ROOM, above, number))), "above")[1] == 62 * INCH


@settings(max_examples=12, deadline=None)
@given(
    pots=st.integers(16 * 20, 16 * 36), filler=st.integers(8, 32),
    key=st.sampled_from(("pots", "pans", "pantry")),
)  # fmt: skip
def test_wherever_the_case_stands_the_run_reaches_it(pots: int, filler: int, key: str) -> None:
    """The right end of the one is the left side of the other, whatever is left of that."""
    text = ROOM.replace("width = 30\n", f'width = "{pots}/16"\n', 1)
    text = text.replace("left_filler = 2", f'left_filler = "{filler}/16"')
    text = text.replace('after = "pantry"', f'after = "{key}"')
    room = build(read(text))
    at = {each.case.key: each for each in cases_on_walls(room)}
    assert _ends(room, "above")[1] == at["pantry"].left
    assert _ends(room, "right")[0] == at[key].right


@pytest.mark.parametrize(
    ("old", "new", "where", "says"),
    [
        ('before = "pantry"', 'before = "pantri"', "pantri", "did you mean pantry?"),
        ('before = "pantry"', 'before = "teas"', "teas", "stands in this run itself"),
        ('after = "pantry"', 'after = "pots"\nleft = "corner"', "corner", "said twice"),
        ('before = "pantry"', 'right = "flush"', "flush", "nothing is named"),
        ('before = "pantry"', 'before = "jars"\n[wall.s]\nwidth = 90', "jars", ""),
        (
            '"trays"]\non = "n"',
            '"trays"]\non = "n"\nbefore = "cups"',
            "cups",
            "waits for this one",
        ),
        ('on = "n"\nafter', 'on = "s"\nafter', "pantry", "in run below, and this run on wall s"),
    ],
)
def test_what_it_cannot_end_at_is_told_where_it_stands(
    old: str, new: str, where: str, says: str
) -> None:
    """Names that are none, its own cases, another wall, and runs that wait for each other."""
    assert ROOM.count(old) == 1
    text = ROOM.replace(old, new) + ("" if "wall.s" in new else "[wall.s]\nwidth = 90\n")
    if not says:
        assert _ends(build(read(text)), "above")[1] > 86 * INCH
        return
    told = [each for each in problems(text) if where in each.location.word]
    assert any(says in f"{each.what}; {each.want}" for each in told), problems(text)


def test_a_ring_of_three_is_told_and_what_only_hangs_on_it_is_not() -> None:
    """Only runs that wait for themselves are at fault."""
    text = ROOM.replace('"trays"]\non = "n"', '"trays"]\non = "n"\nbefore = "jars"')
    told = problems(text)
    assert {each.location.word for each in told} == {'"jars"', '"pantry"'}
    assert all("[run.above]" not in each.what for each in told)
    assert len(told) == 2


def test_cases_that_find_no_room_there_are_stopped_with_the_number() -> None:
    """Before pots, 2 in from the wall, no case goes; nothing breaks."""
    worked = work_out(read(ROOM.replace('before = "pantry"', 'before = "pots"')))
    [found] = [f for f in worked.findings if f.path == "run.above.rest"]
    assert found.severity is Severity.STOP
    assert "wider than the wall" in found.says


@pytest.mark.parametrize(("side", "stands"), [("left", (88.75, 118.75)), ("right", (1.5, 31.5))])
def test_a_short_row_with_an_open_end_stands_at_its_wall(
    side: str, stands: tuple[float, float]
) -> None:
    """A pantry alone on a wall of 120 1/4 in: a filler of 1 1/2, and nothing fills the rest."""
    text = (
        'format = 1\nunit = "in"\n[wall.n]\nwidth = ["120 1/4", "120 1/2"]\n'
        '[case.pantry]\nkind = "tall"\nwidth = 30\n'
        f'[run.tall]\ncases = ["pantry"]\non = "n"\n{side} = "open"\n'
    )
    room = build(read(text))
    [pantry] = cases_on_walls(room)
    assert tuple(float(edge / INCH) for edge in (pantry.left, pantry.right)) == stands
    [filler] = _run(room, "tall").fillers
    assert filler.side != side
