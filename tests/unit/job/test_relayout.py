"""A run whose fillers left their band says at once what it would be now, and how to accept it.

The law: what is proposed is what `layout` tells first, and accepting it takes the finding away;
what is made keeps its width.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.record_shop import run

_ROOM = """format = 1
unit = "in"
[wall.north]
width = {width}
[case.pots]
kind = "base"
[case.pans]
kind = "base"
[case.bins]
kind = "base"
[appliance.dishwasher]
width = 24
[run.below]
cases = ["pots", "dishwasher", "pans", "bins"]
on = "north"
"""
_TAKE = "casewright layout JOB --run below --accept 1"


def _says(capsys: pytest.CaptureFixture[str], *words: object) -> str:
    run(*words)
    return capsys.readouterr().out


@pytest.fixture
def job(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """Laid out on a wall of 120 in: three cases of 31 in, with fillers of 1 1/2 in."""
    path = tmp_path / "room.toml"
    path.write_text(_ROOM.format(width=120))
    assert "pots 31," in _says(capsys, "layout", path)
    run("layout", path, "--accept", 1)
    assert "laid out anew" not in _says(capsys, "check", path)
    return path


def _read(job: Path, width: str) -> None:
    job.write_text(job.read_text().replace("width = 120", f"width = {width}"))


@pytest.mark.parametrize("width", ['"118 3/4"', '"121 7/8"', "100"])
def test_what_is_proposed_is_what_layout_tells_first(
    job: Path, capsys: pytest.CaptureFixture[str], width: str
) -> None:
    """A wall read shorter, longer, and far too short for what was accepted."""
    _read(job, width)
    told = _says(capsys, "check", job)
    proposed = re.search(r"laid out anew: (.*?) \(", told)
    assert proposed is not None
    assert _TAKE in told
    laid = _says(capsys, "layout", job)
    assert "as accepted: " in laid
    assert f"  1  {proposed[1]}\n" in laid
    resolved = _says(capsys, "resolve", job)
    assert f"laid out anew: {proposed[1]} (" in resolved
    run("layout", job, "--run", "below", "--accept", 1)
    assert "laid out anew" not in _says(capsys, "check", job)
    assert "as accepted" not in _says(capsys, "layout", job)


def test_a_case_that_is_cut_keeps_its_width(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """118 3/4 - 24 - 31 leaves 63 3/4 for two cases and two fillers."""
    run("record", job, "cut", "pots.bottom")
    _read(job, '"118 3/4"')
    told = _says(capsys, "check", job)
    assert "laid out anew: pots 31, dishwasher 24, pans " in told
    assert "made already, and as wide as before: pots" in _says(capsys, "layout", job)
    run("layout", job, "--run", "below", "--accept", 1)
    assert 'pots = "31"' in job.read_text()
    assert "laid out anew" not in _says(capsys, "check", job)


def test_sides_alone_bind_no_width(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run("record", job, "cut", "pots.side_left", "pots.side_right")
    _read(job, '"118 3/4"')
    assert " (every case 30 " in _says(capsys, "check", job)


def test_where_no_layout_fits_it_says_why(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Three cases of 36 in at the most, 24, and two fillers of 2 in fill 136 in."""
    _read(job, "150")
    told = _says(capsys, "check", job)
    assert "no layout fits any more: at most 136 can be filled, 150 is there" in told
    assert "one more case in the run" in told


def test_a_reading_tells_at_once_what_it_does_to_the_layout(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """By the reading that breaks it, and not again by the next one."""
    reading = ("record", job, "reading", "wall.north.width")
    assert _TAKE in _says(capsys, *reading, "118 3/4", "--sure")
    assert _TAKE not in _says(capsys, *reading, "118 5/8", "--sure")
    assert _TAKE in _says(capsys, "resolve", job)
