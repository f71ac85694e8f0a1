"""Heights of a room as one sum, from the highest floor up to the lowest ceiling."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import INCH
from tests.jobs import FIVE_LINES, problem, read
from tests.unit.cli.test_commands import run

from casewright.job.heights import RoomHeights, room_heights
from casewright.room.build import build

ROOM = """\
format = 1
unit = "in"
[stock.crown]
kind = "board"
thickness = "11/16"
measured = "0.69"
width = "3 5/8"
lengths = [96, 144]
[wall.w]
width = 72
stations = [{{ along = 0, down = "40 1/4", up = "{up}" }}, {{ along = 60, down = 40, up = 100 }}]
[case.a]
kind = "base"
[run.below]
cases = ["a"]
on = "w"
[case.b]
kind = "wall"
[run.above]
cases = ["b"]
on = "w"
[run.above.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
"""


def _heights(up: str, more: str = "") -> RoomHeights:
    found = room_heights(build(read(ROOM.format(up=up) + more)))
    assert found is not None
    return found


def test_what_is_worked_at_stands_as_the_trade_has_it() -> None:
    """Bases 34 1/2, counter 1 1/2, 18 in between: wall cases from 54 (common practice)."""
    best = _heights("56", "sets_height = true\n").answers[0]
    assert best.bottom == 54 * INCH
    assert dict(best.parts)["backsplash"] == 18 * INCH
    # 40 + 56 - 54 - 2 7/8 - 7/8, by hand
    assert best.uppers == INCH * 153 / 4


@settings(max_examples=25, deadline=None)
@given(st.integers(24 * 64, 80 * 64))
def test_every_answer_closes_exactly_or_it_is_said_by_how_much_not(sixtyfourths: int) -> None:
    """By the sum alone, also where the ceiling is off the grid; and the relief is the shortage:
    below 34 1/2, 1 1/2, 15, 12 and 2 7/8 nothing closes (by hand).
    """
    found = _heights(f"{sixtyfourths}/64")
    clear = 40 * INCH + min(sixtyfourths, 100 * 64) * INCH / 64
    assert found.clear.value == clear
    for answer in found.answers:
        assert sum(height for _, height in answer.parts) == clear
        assert all(height >= 0 for _, height in answer.parts)
    least, most = INCH * 527 / 8, INCH * (36 + 24 + 60 + 6) + INCH * 23 / 8
    assert bool(found.answers) == (least <= clear < most + INCH / 16)
    if not found.answers:
        [conflict] = found.conflicts
        grid = clear // found.step * found.step
        short = least - grid if clear < least else most - grid
        assert conflict.short * found.step == short


def test_the_reading_that_binds_is_named() -> None:
    """The lowest ceiling is at the left end, the highest floor 60 along."""
    found = _heights("56")
    assert "the floor is highest 60 along w" in found.bound
    assert "the ceiling lowest 0 along w" in found.bound


def test_a_room_too_low_is_told_with_what_would_help(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """65 in clear, 65 7/8 needed (by hand); the document has the same."""
    file = tmp_path / "kitchen.toml"
    file.write_text(ROOM.format(up="25"))
    assert run("layout", file) == 1
    told = capsys.readouterr().out
    assert "STOP  at least 65 7/8 is needed: 7/8 short" in told
    assert "- a ceiling 7/8 higher" in told
    assert "- backsplash 7/8 less" in told
    run("layout", file, "--json")
    heights = json.loads(capsys.readouterr().out)["heights"]
    assert not heights["answers"]
    assert Fraction(heights["conflicts"][0]["short"]["mm"]) == INCH * 7 / 8


@pytest.mark.parametrize(("number", "crown"), [(1, "sets_height = true\n"), (2, "")])
def test_an_accepted_answer_is_kept_and_a_new_reading_moves_the_frieze(
    tmp_path: Path, number: int, crown: str
) -> None:
    """As laid out, whatever the ceiling is read at later; the sum closes all the same."""
    file = tmp_path / "kitchen.toml"
    text = ROOM.format(up="56 5/16") + crown
    file.write_text(text)
    found = _heights("56 5/16", crown).answers[number - 1]
    assert run("layout", file, "--heights", "--accept", number) == 0
    kept = file.read_text()
    assert kept.startswith(text)
    lower = kept.replace('up = "56 5/16"', 'up = "56 1/16"')
    for now, less in ((kept, Fraction(0)), (lower, INCH / 4)):
        room = build(read(now))
        hung = next(case for case in room.cases if case.key == "b")
        assert room.wall_bottom.value == found.bottom
        assert room.chain.nodes["b.wanted_height"].value == found.uppers
        origin = room.chain.nodes["b.wanted_height"].origin
        assert origin is not None
        assert origin.kind == "solved"
        frieze = room.chain.nodes["run.above.crown.frieze"].value
        assert frieze == dict(found.parts)["frieze"] - less
        assert hung.height.value + room.wall_bottom.value + frieze + INCH * 23 / 8 == (
            room.survey.clear.value if room.survey.clear else 0
        )


def test_heights_said_twice_are_told() -> None:
    """By the style and by an accepted answer."""
    more = '[style]\nwall_bottom = "55"\n[heights]\nwall_bottom = "54"\n'
    assert "said twice" in problem(ROOM.format(up="56") + more).what


def test_heights_that_are_not_there_are_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A number that no answer has; a room without heights."""
    file = tmp_path / "kitchen.toml"
    file.write_text(ROOM.format(up="56"))
    assert run("layout", file, "--heights", "--accept", "9") == 2
    file.write_text(FIVE_LINES)
    assert run("layout", file, "--heights", "--accept", "1") == 2
    assert "No heights to lay out" in capsys.readouterr().err
