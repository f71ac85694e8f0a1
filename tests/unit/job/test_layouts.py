"""Runs of a job laid out, and an answer written into its file."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
from tests.builders import INCH, length
from tests.jobs import problem, problems, read
from tests.unit.cli.test_commands import run

from casewright.checks import check
from casewright.job.hindrances import run_hindrances
from casewright.job.layouts import RunLayout, accepted, layouts
from casewright.room.build import build

ROOM = """\
format = 1
unit = "in"
[wall.w]
width = ["100 1/8", "100 1/4"]
[wall.w.fixed.window]
kind = "window"
left = "30 1/8"
width = 40
[case.pots]
kind = "base"
[case.sink]
kind = "base"
width = {sink}
[case.bins]
kind = "base"
[run.below]
cases = ["pots", "sink", "bins"]
on = "w"
centre = {{ sink = "window" }}
"""


def _layout(text: str) -> RunLayout:
    [found] = layouts(build(read(text)))
    return found


def test_an_accepted_answer_is_what_the_room_then_is() -> None:
    """Written into the file, its widths and fillers close the wall exactly."""
    text = ROOM.format(sink="36")
    found = _layout(text)
    assert found.free == ("pots", "bins")
    for number, answer in enumerate(found.answers, start=1):
        room = build(read(accepted(text, found, number)))
        widths = [case.width.value / INCH for case in room.cases]
        assert widths == [Fraction(each, 16) for each in answer.layout.widths]
        [below] = room.runs
        assert below.length.value == 100 * INCH + INCH / 8
        assert below.fillers[0].width.value == answer.layout.left * INCH / 16
        origin = room.chain.nodes["pots.wanted_width"].origin
        assert origin is not None
        assert (origin.kind, origin.where) == ("solved", "kitchen.toml line 22")
        assert origin.note.startswith("; ".join(answer.trade))
        assert "bound by 100 1/8 from end to end of the wall, given sink 36" in origin.note
        again = list(layouts(room))
        assert [each.free for each in again] == [("pots", "bins")]


def test_the_sink_stands_under_the_middle_of_its_window() -> None:
    """The middle of the casing is 50 1/8 from the left end: 32 1/8 to the sink's left side."""
    room = build(read(accepted(ROOM.format(sink="36"), _layout(ROOM.format(sink="36")), 1)))
    start = room.chain.nodes["run.below.start_sink"].value
    assert start / INCH == Fraction(257, 8)


def test_a_metric_job_is_laid_out_in_whole_millimetres() -> None:
    """On its own grid (common practice)."""
    text = (
        'format = 1\nunit = "mm"\n[case.a]\nkind = "wall"\n[case.b]\nkind = "wall"\n'
        '[run.r]\ncases = ["a", "b"]\nwall = [1601, 1603]\n'
    )
    found = _layout(text)
    assert found.step == 1
    layout = found.answers[0].layout
    assert layout.left + sum(layout.widths) + layout.right == 1601
    assert layout.widths[0] == layout.widths[1]


def test_what_does_not_fit_is_told_with_what_would_help(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Two cases of 36 at most, a sink of 12 and fillers of 2: 88 of 100 1/8 (by hand)."""
    file = tmp_path / "kitchen.toml"
    file.write_text(ROOM.format(sink="12"))
    assert run("layout", file) == 1
    told = capsys.readouterr().out
    assert "at most 88 can be filled, 100 1/8 is there: 12 1/8 left over" in told
    assert "- one more case in the run" in told
    assert "shorter" not in told  # no wall and no filler makes up for 12 in
    assert "wider" not in told


def test_accepting_writes_the_file_and_needs_an_answer_that_is_there(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A number too high leaves the file as it was."""
    file = tmp_path / "kitchen.toml"
    file.write_text(ROOM.format(sink="36"))
    assert run("layout", file) == 0
    assert "sink on its centre" in capsys.readouterr().out
    assert run("layout", file, "--accept", "9") == 2
    capsys.readouterr()
    assert run("layout", file, "--run", "belwo") == 2
    assert "no run belwo" in capsys.readouterr().err
    assert file.read_text() == ROOM.format(sink="36")
    assert run("layout", file, "--accept", "1") == 0
    assert "left_filler" in file.read_text()
    written = file.read_text()
    assert written.startswith(ROOM.format(sink="36"))
    assert run("layout", file, "--accept", "1") == 0
    assert file.read_text() == written


def test_the_document_has_exact_widths_and_what_is_proved(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Widths and fillers sum to the wall in millimetres."""
    file = tmp_path / "kitchen.toml"
    file.write_text(ROOM.format(sink="36"))
    assert run("layout", file, "--json") == 0
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == "casewright/layout/1"
    [below] = document["runs"]
    best = below["answers"][0]
    assert best["cost"] == best["bound"]
    parts = [*(each["width"] for each in best["widths"]), *best["fillers"].values()]
    assert sum(Fraction(each["mm"]) for each in parts) == 100 * INCH + INCH / 8


FREE = """\
format = 1
unit = "in"
[wall.w]
width = ["140 1/4", "140 3/8"]
[case.pots]
kind = "base"
[case.sink]
kind = "base"
width = 36
[case.bins]
kind = "base"
[case.pans]
kind = "base"
[appliance.dishwasher]
width = 24
# low ones
[run.below]
cases = ["pots", "bins", "pans", "dishwasher", "sink"] # as they came to mind
on = "w"
order = "free"
beside = { dishwasher = "sink" }
[case.one]
kind = "wall"
[case.two]
kind = "wall"
[case.three]
kind = "wall"
[case.four]
kind = "wall"
[case.five]
kind = "wall"
[run.above]
cases = ["one", "two", "three", "four", "five"]
on = "w"
over = "below"
"""


def test_a_wish_list_is_put_in_order_and_written_so() -> None:
    """The dishwasher stands beside the sink, and notes stay where they were."""
    below = next(each for each in layouts(build(read(FREE))) if each.key == "below")
    for number, answer in enumerate(below.answers, start=1):
        keys = [place.key for place in answer.layout.task.places]
        assert abs(keys.index("dishwasher") - keys.index("sink")) == 1
        text = accepted(FREE, below, number)
        assert "# low ones\n" in text
        assert "] # as they came to mind\n" in text
        room = build(read(text))
        [run_below, _] = room.runs
        assert list(run_below.spec.places) == keys
        assert run_below.length.value == INCH * 561 / 4


def test_seams_above_go_by_those_below() -> None:
    """An answer has its seam on one of the run below."""
    found = {each.key: each for each in layouts(build(read(FREE)))}
    told = [trade for answer in found["above"].answers for trade in answer.trade]
    assert "every seam on one below" in told


def test_a_new_reading_moves_the_filler_first_and_then_asks_for_another_layout() -> None:
    """A quarter inch less at the right; then a wall that leaves no filler at all (by hand)."""
    text = ROOM.format(sink="36")
    text = accepted(text, _layout(text), 1)
    room = build(read(text.replace('"100 1/8"', '"99 7/8"')))
    [before], [after] = build(read(text)).runs, room.runs
    assert [each.value for each in after.starts] == [each.value for each in before.starts]
    right = [filler.width.value for run_ in (before, after) for filler in run_.fillers[1:]]
    assert right[0] - right[1] == INCH / 4
    narrow = build(read(text.replace('"100 1/8"', '"98"')))
    [told] = [each for each in narrow.findings if each.rule in ("run too long", "narrow filler")]
    assert "lay the run out anew: casewright layout JOB --run below" in told.remedies


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('beside = { dishwasher = "sink" }', 'beside = { dishwasher = "oven" }', "oven"),
        ('order = "free"\n', "", "not free"),
        ('beside = {', 'beside = { sink = "dishwasher",', "ring"),
        ('beside = { dishwasher = "sink" }',
         'beside = { dishwasher = "sink", pots = "sink", bins = "sink" }', "3 things"),
        ('over = "below"', 'over = "beyond"', "beyond"),
        ('over = "below"', 'over = "above"', "no other run"),
        ('over = "below"', 'over = "below"\n[run.above.solved]\nwidths = { pots = 3 }', "pots"),
        ('[case.one]', '[run.below.solved]\nwidths = { sink = 36 }\n[case.one]', "its own"),
        ('order = "free"', 'order = "any"', "any"),
    ],
)  # fmt: skip
def test_what_a_run_asks_of_its_layout_is_told_where_it_cannot_be(
    old: str, new: str, says: str
) -> None:
    told = problems(FREE.replace(old, new))
    assert any(says in f"{each.location.word} {each.what}" for each in told), told


PIPES = """\
format = 1
unit = "in"
[wall.w]
width = "92"
[wall.w.fixed.water]
kind = "pipe"
title = "water"
left = 43
width = 6
bottom = 10
height = 8
[case.a]
kind = "base"
[case.b]
kind = "base"
[case.c]
kind = "base"
[run.below]
cases = ["a", "b", "c"]
on = "w"
"""


def test_no_side_of_a_case_stands_before_pipes() -> None:
    """Water from 30 to 36: two cases would meet there in the middle, so one is wider."""
    two = PIPES.replace(', "c"]', "]").replace('[case.c]\nkind = "base"\n', "")
    two = two.replace('width = "92"', 'width = "66"').replace("left = 43", "left = 30")
    found = _layout(two)
    best = found.answers[0].layout
    seam = best.starts[1] * INCH / 16
    assert not 30 * INCH - 18 < seam < 36 * INCH + 18
    assert best.widths[0] != best.widths[1]
    assert "before" not in " ".join(found.answers[0].trade)


def test_what_cannot_be_kept_clear_is_said() -> None:
    """Both widths are given, and where they meet are the pipes (by hand)."""
    text = PIPES.replace("[case.a]\n", "[case.a]\nwidth = 36\n")
    text = text.replace("[case.c]\n", "[case.c]\nwidth = 36\n").replace("left = 43", "left = 35")
    told = " ".join(_layout(text).answers[0].trade)
    assert "a side of a case before water" in told


def test_a_chimney_in_the_run_parts_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """No case stands before it: one run ends there and another begins."""
    file = tmp_path / "kitchen.toml"
    file.write_text(PIPES.replace('"pipe"', '"chimney"').replace("bottom = 10\nheight = 8\n", ""))
    assert run("layout", file) == 1
    told = capsys.readouterr().out
    assert "STOP  water stands in it, from 43 to 49 along the wall" in told
    assert 'before = "water"' in told
    parted = file.read_text().replace(
        '["a", "b", "c"]\non = "w"',
        '["a"]\non = "w"\nbefore = "water"\n[run.rest]\ncases = ["b", "c"]\non = "w"\n'
        'after = "water"',
    )
    file.write_text(parted)
    run("layout", file)
    told = capsys.readouterr().out
    assert "STOP  at most 40 can be filled, 43 is there" in told
    assert "b 20" in told


def test_a_blind_corner_base_goes_to_its_corner_and_stands_off_it() -> None:
    """Listed anywhere: 3 in from the corner wall without a filler, which what is free makes up."""
    text = """\
format = 1
unit = "in"
[wall.w]
width = "110"
[case.corner]
kind = "base"
width = 42
blind = "right"
[case.a]
kind = "base"
[case.b]
kind = "base"
[run.below]
cases = ["a", "b", "corner"]
on = "w"
order = "free"
"""
    found = _layout(text)
    assert found.answers
    for number, answer in enumerate(found.answers, start=1):
        assert answer.layout.task.places[-1].key == "corner"
        room = build(read(accepted(text, found, number)))
        assert room.runs[0].length.value == 110 * INCH
        assert [each.side for each in room.runs[0].fillers] == ["left"]
        assert not [each for each in room.findings if each.rule == "narrow filler"]


_PINNED = (
    'format = 1\nunit = "in"\n[wall.n]\nwidth = "140 5/16"\n[case.a]\nkind = "base"\n'
    '[case.s]\nkind = "base"\nwidth = 36\n[case.b]\nkind = "base"\n[run.r]\n'
    'cases = ["a", "s", "b"]\non = "n"\n'
)


@pytest.mark.parametrize("at", ["34", "40 1/8", "51 3/4"])
def test_a_pinned_seam_stands_where_it_is_pinned(at: str) -> None:
    """Once the answer is accepted: from the wall's left end, to the step; before, it is told."""
    text = f'{_PINNED}seams = {{ s = "{at}" }}\n'
    room = build(read(text))
    assert any(each.rule == "pinned seam" for each in check(room))
    [run] = layouts(room)
    for number in range(1, len(run.answers) + 1):
        then = build(read(accepted(text, run, number)))
        assert then.chain.nodes["run.r.start_s"].value == length(at, "in")
        assert not [each for each in check(then) if each.rule == "pinned seam"]


@pytest.mark.parametrize(
    ("seams", "says"),
    [
        ('{ s = "141" }', "only 140"), ('{ s = "40", b = "30" }', "pinned no farther"),
        ('{ z = "40" }', "z is not in this run"),
    ],
)  # fmt: skip
def test_a_pin_without_meaning_is_told(seams: str, says: str) -> None:
    """Past the wall's end, against the order, of nothing."""
    assert says in problem(f"{_PINNED}seams = {seams}\n").what


def test_a_width_that_was_laid_out_is_told_at_its_own_line() -> None:
    """Two sides and no room between them: the number stands in the answer, not in the case."""
    text = ROOM.format(sink="36") + "[run.below.solved]\nwidths = { pots = 30, bins = 5 }\n"
    told = problem(text)
    assert (told.location.line, told.location.word) == (21, "5")
    assert "leave no room" in told.what


def test_a_row_with_an_open_end_may_stand_short_of_the_wall() -> None:
    """Three of 36 in at the most and a filler leave room on 140 in; the first relief says how."""
    cases = "".join(f'[case.{key}]\nkind = "wall"\n' for key in ("a", "b", "c"))
    run = '[run.r]\ncases = ["a", "b", "c"]\n'
    text = f'format = 1\nunit = "in"\n[wall.w]\nwidth = 140\n{cases}{run}'
    [open_end, closed] = (
        next(run_hindrances(_layout(f'{text}on = "w"\n{end}'))) for end in ('right = "open"\n', "")
    )
    assert open_end.reliefs[0].startswith("widths written for its cases")
    assert "widths written" not in " ".join(closed.reliefs)
