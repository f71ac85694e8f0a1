"""The commands as a person or a script meets them: exit codes, documents, messages."""

from __future__ import annotations

import json
import re
from fractions import Fraction
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

from casewright.cli.main import main

UPPER = 'format = 1\nunit = "in"\n[case.upper]\nkind = "wall"\nwidth = {width}\n'
PROBLEM = {
    "unit": "mm", "kerf": 3, "stages": 3,
    "stock": [{"id": "s", "l": 2440, "w": 1220, "count": None, "price": 1, "trim": 0,
               "defects": []}],
    "parts": [{"id": "p", "l": 600, "w": 300, "count": 5, "rotate": True, "group": ""}],
}  # fmt: skip


def run(*arguments: object) -> int:
    """Exit code of a command."""
    with pytest.raises(SystemExit) as left:
        main([str(argument) for argument in arguments])
    code = left.value.code
    return code if isinstance(code, int) else 0


@pytest.fixture
def upper(tmp_path: Path) -> Path:
    """A plain upper, 33 in wide."""
    file = tmp_path / "upper.toml"
    file.write_text(UPPER.format(width='"33"'))
    return file


@pytest.fixture
def garden_room(tmp_path: Path) -> Path:
    """The garden room."""
    file = tmp_path / "garden_room.toml"
    file.write_text((files("casewright.job") / "examples" / "garden_room.toml").read_text())
    return file


def lengths(data: Any) -> list[dict[str, str]]:
    """Everything in a document that has the shape of a length."""
    if isinstance(data, dict):
        inner = [found for value in data.values() for found in lengths(value)]
        return [data, *inner] if "mm" in data else inner
    if isinstance(data, list):
        return [found for value in data for found in lengths(value)]
    return []


@pytest.mark.parametrize("command", ["check", "parts"])
def test_document_names_its_schema(
    command: str, garden_room: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A room has open questions: exit code 1, and a document that says what it is."""
    assert run(command, garden_room, "--json") == 1
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == f"casewright/{command}/1"
    assert document["job"] == "Garden room"
    assert document["fingerprint"]


def test_lengths_of_parts_are_exact_and_as_the_job_writes_them(
    upper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A length is an exact rational of mm and a text; 33 in less two sides of 23/32 in."""
    run("parts", upper, "--json")
    document = json.loads(capsys.readouterr().out)
    found = lengths(document)
    assert found
    for length in found:
        assert re.fullmatch(r"-?\d+(/\d+)?", length["mm"])
        assert isinstance(length["text"], str)
    bottom = next(part for part in document["parts"] if part["path"] == "upper.bottom")
    clear = Fraction(127, 5) * (33 - 2 * Fraction(23, 32))
    assert Fraction(bottom["blank"]["length"]["mm"]) == clear
    assert bottom["blank"]["length"]["text"] == "31 9/16"


def test_why_starts_with_the_number_asked_for(
    upper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The first node is the path itself."""
    assert run("why", upper, "upper.width", "--json") == 0
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == "casewright/why/1"
    assert document["nodes"][0]["path"] == "upper.width"


def test_why_offers_the_nearest_path(upper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A mistyped path is an error that names the right one."""
    assert run("why", upper, "upper.widht") == 2
    assert "upper.width" in capsys.readouterr().err


def test_check_tells_errors_as_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An unquoted fraction: file, line and word stand in the document, exit code 2."""
    file = tmp_path / "bad.toml"
    file.write_text(UPPER.format(width="33 1/2"))
    assert run("check", file, "--json") == 2
    document = json.loads(capsys.readouterr().out)
    error = document["errors"][0]
    assert (error["line"], error["word"]) == (5, "33 1/2")
    assert document["proof"] is None


@pytest.mark.parametrize("command", ["parts", "cut", "why"])
def test_every_document_can_hold_errors(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The same errors as in the document of check; the sentence stands on the error stream."""
    file = tmp_path / "bad.toml"
    file.write_text(UPPER.format(width='"33 1/0"'))
    assert run(command, file, "--json") == 2
    printed = capsys.readouterr()
    document = json.loads(printed.out)
    assert document["schema"] == f"casewright/{command}/1"
    assert (document["job"], document["fingerprint"]) == (None, None)
    assert document["errors"][0]["line"] == 5
    assert "bad.toml, line 5" in printed.err


def test_a_wrong_path_is_told_as_data(upper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The word is the path, the nearest paths are what would be right."""
    assert run("why", upper, "upper.botom.length", "--json") == 2
    error = json.loads(capsys.readouterr().out)["errors"][0]
    assert error["word"] == "upper.botom.length"
    assert "upper.bottom.length" in error["want"]


@pytest.mark.parametrize("command", ["check", "parts", "cut", "packet", "why"])
def test_missing_file_is_an_error_of_the_input(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Every command names the file that is not there, without a traceback."""
    assert run(command, tmp_path / "missing.toml") == 2
    told = capsys.readouterr().err
    assert "missing.toml" in told
    assert "Traceback" not in told


def test_bare_cutting_problem(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A problem in whole numbers gets every piece placed."""
    file = tmp_path / "problem.json"
    file.write_text(json.dumps(PROBLEM))
    assert run("cut", "--problem", file, "--json") == 0
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == "casewright/cut/1"
    assert len(document["placements"]) == 5
    assert not document["unplaced"]


def test_new_never_overwrites(upper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A job file that is there stays as it is."""
    before = upper.read_text()
    assert run("new", upper) == 2
    assert upper.read_text() == before
    assert "not written" in capsys.readouterr().err


def test_packet_of_a_bad_file_writes_nothing(tmp_path: Path) -> None:
    """No folder is left behind when the file has no meaning."""
    file = tmp_path / "bad.toml"
    file.write_text(UPPER.format(width="-3"))
    out = tmp_path / "out"
    assert run("packet", file, "--out", out) == 2
    assert not out.exists()
