"""`survey` as a person or a script meets it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from tests.surveyed_room import SURVEYED_ROOM
from tests.unit.cli.test_commands import run


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A surveyed room."""
    file = tmp_path / "kitchen.toml"
    file.write_text(SURVEYED_ROOM)
    return file


def test_it_says_what_counts_and_writes_the_form(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Open as long as something is missing; the form lies where it was asked for."""
    assert run("survey", job, "--out", tmp_path / "out") == 1
    told = capsys.readouterr().out
    assert 'window wall: narrowest width 100 1/8"' in told
    assert "MISSING" in told
    assert "NEXT" in told
    assert (tmp_path / "out" / "survey.pdf").read_bytes().startswith(b"%PDF")


def test_the_document_has_every_reading_with_its_tool(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """No file is written; lengths are exact, each with its path."""
    assert run("survey", job, "--out", tmp_path / "out", "--json") == 1
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == "casewright/survey/1"
    window, other = document["walls"]
    assert window["width"]["text"] == "100 1/8"
    laser = [each for each in window["readings"] if each["tool"] == "laser"]
    assert laser[0]["sure"]
    assert laser[0]["where"] == "kitchen.toml line 10"
    assert other["floor"] is None
    assert document["corners"][0]["degrees"] == pytest.approx(90.5, abs=0.1)
    assert not (tmp_path / "out").exists()


def test_a_recorded_reading_replaces_the_one_in_the_file(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And can be left out again."""
    path = "survey.wall.window.width_1"
    assert run("record", job, "reading", path, "100", "--sure") in (0, 1)
    capsys.readouterr()
    run("survey", job, "--json")
    assert json.loads(capsys.readouterr().out)["walls"][0]["width"]["text"] == "100"
    run("survey", job, "--json", "--without-record")
    assert json.loads(capsys.readouterr().out)["walls"][0]["width"]["text"] == "100 1/8"


def test_what_is_wrong_comes_as_a_document_too(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is drawn of a wall that has no meaning."""
    job.write_text(SURVEYED_ROOM.replace('across = "60 1/4"', "across = 90"))
    assert run("survey", job, "--json") == 2
    [error] = json.loads(capsys.readouterr().out)["errors"]
    assert error["word"] == "90"


@pytest.mark.parametrize(("again", "asked"), [("3607", False), ("3670", False), ("3760", True)])
def test_what_was_to_be_read_again_is_no_measure_for_the_new_reading(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], again: str, asked: bool
) -> None:
    """3670 among 3607 to 3612 was doubted: one that lies among the others is believed."""
    file = tmp_path / "alcove.toml"
    file.write_text(
        'format = 1\nunit = "mm"\n[wall.back]\nwidth = [3612, 3607, 3670, 3609]\n'
        '[case.a]\nkind = "base"\nwidth = 600\n'
    )
    run("record", file, "reading", "survey.wall.back.width_3", again)
    assert ("ASK" in capsys.readouterr().out) is asked
