"""How a command ends when something is in the way: a sentence, an exit code, no traceback."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest
from tests.jobs import FIVE_LINES

from casewright.casework.proof import Failure
from casewright.cli.main import main
from casewright.facts import NO_FACTS, Facts
from casewright.job import trial
from casewright.job.worked import WorkedJob, work_out
from casewright.room.specs import JobSpec

COMMANDS = ("demo", "new", "check", "parts", "cut", "verify", "packet", "why", "record",
            "changed")  # fmt: skip


def run(*arguments: object) -> int:
    """Exit code of a command."""
    with pytest.raises(SystemExit) as left:
        main([str(argument) for argument in arguments])
    code = left.value.code
    return code if isinstance(code, int) else 0


@pytest.fixture
def upper(tmp_path: Path) -> Path:
    """A plain upper."""
    file = tmp_path / "upper.toml"
    file.write_text(FIVE_LINES)
    return file


def _broken(spec: JobSpec, _: Facts = NO_FACTS) -> WorkedJob:
    worked = work_out(spec)
    failure = Failure("overlap", ("upper.back", "upper.top"), "two boards in one place")
    return WorkedJob(worked.room, (("upper", failure),), (), (), NO_FACTS)


def test_a_failed_proof_makes_nothing(
    upper: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit code 3 from every command that makes or plans, and no packet."""
    monkeypatch.setattr(trial, "work_out", _broken)
    out = upper.parent / "out"
    assert run("check", upper) == 3
    assert run("cut", upper) == 3
    assert run("parts", upper) == 3
    assert run("packet", upper, "--out", out) == 3
    assert not out.exists()
    shown = capsys.readouterr().out
    assert shown.count("two boards in one place") == 4
    assert "31 9/16" not in shown
    for command in ("parts", "cut"):
        assert run(command, upper, "--json") == 3
        document = json.loads(capsys.readouterr().out)
        assert document["schema"] == "casewright/check/1"
        assert document["proof"]["failures"][0]["says"] == "two boards in one place"


def test_ctrl_c_stops_with_a_word(
    upper: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """As programs do: 130."""

    def interrupted(*_: object) -> WorkedJob:
        raise KeyboardInterrupt

    monkeypatch.setattr(trial, "work_out", interrupted)
    assert run("check", upper) == 130
    assert capsys.readouterr().err == "stopped\n"


def test_a_defect_is_owned_up_to(
    upper: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The person is told that the file is not to blame; no traceback unless asked for."""

    def defective(*_: object) -> WorkedJob:
        raise ZeroDivisionError

    monkeypatch.setattr(trial, "work_out", defective)
    assert run("check", upper) == 3
    told = capsys.readouterr().err
    assert "Casewright itself failed" in told
    assert "Traceback" not in told
    monkeypatch.setenv("CASEWRIGHT_TRACE", "1")
    run("check", upper)
    assert "Traceback" in capsys.readouterr().err


def test_a_place_that_cannot_be_written_is_told(
    upper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file stands where the folder should be."""
    assert run("packet", upper, "--out", upper) == 2
    assert "upper.toml" in capsys.readouterr().err
    assert upper.read_text() == FIVE_LINES


def test_a_packet_without_a_place_is_told_before_the_work(
    upper: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file on the way to the folder: nobody waits for the cuts to be planned first."""
    monkeypatch.setattr(trial, "work_out", lambda *_: pytest.fail("the work was begun"))
    assert run("packet", upper, "--out", upper / "deeper" / "still") == 2
    assert f"{upper} is a file" in capsys.readouterr().err


@pytest.mark.parametrize(
    "address", ["192.168.1.20", "https://a", "http://a/b", "http://ä", "http://"]
)
def test_labels_lead_to_an_address_or_are_not_made(
    address: str, upper: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(trial, "work_out", lambda *_: pytest.fail("the work was begun"))
    assert run("packet", upper, "--pages", address) == 2
    told = capsys.readouterr().err
    assert f'--pages "{address}"' in told
    assert "http://192.168.1.20:8417/" in told


@pytest.mark.parametrize(
    ("text", "line", "want"),
    [
        ('{"unit": "mm",\n"kerf" 3}', 2, 'write "key": value'),
        ('{"unit": "mm",\n"kerf": 3,\n}', 3, "no comma behind the last"),
        ('{"unit": "mm"\n"kerf": 3}', 2, "put a comma between two entries"),
        ('{"unit": "mm', 1, 'close the text with "'),
        ('{"unit": "mm",', 1, "close every list"),
        ("unit = 3", 1, "write one JSON object"),
    ],
)
def test_a_broken_cutting_problem_says_where(
    text: str, line: int, want: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Line, column and word, and what would be right."""
    file = tmp_path / "problem.json"
    file.write_text(text)
    assert run("cut", "--problem", file) == 2
    told = capsys.readouterr().err
    assert told.startswith(f"problem.json, line {line}, column ")
    assert want in told


@pytest.mark.parametrize("content", ["{", "[1]", "[" * 10_000, '{"unit": "mm"}', "\xff"])
def test_a_file_that_is_no_cutting_problem_is_told(
    content: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whatever stands in it."""
    file = tmp_path / "problem.json"
    file.write_bytes(content.encode("latin-1"))
    assert run("cut", "--problem", file) == 2
    assert "problem.json" in capsys.readouterr().err


def test_cut_takes_a_job_or_a_problem(upper: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Neither or both is a slip."""
    assert run("cut") == 2
    assert run("cut", upper, "--problem", upper, "--json") == 2
    document = json.loads(capsys.readouterr().out)
    assert document["errors"][0]["want"] == "name a job file, or --problem and its file"


@pytest.mark.parametrize("command", COMMANDS)
def test_help_teaches_with_an_example(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Each command says what it does and shows itself in use."""
    assert run(command, "--help") == 0
    assert "casewright " in capsys.readouterr().out


def test_help_comes_without_the_workshop() -> None:
    """Nothing that takes long to import is needed to show help."""
    code = (
        "import sys\nfrom casewright.cli.main import main\n"
        "try: main(['--help'])\nexcept SystemExit: pass\n"
        "print([m for m in ('pydantic', 'tomlkit', 'typst', 'numpy', 'casewright.casework.build')"
        " if m in sys.modules])"
    )
    done = subprocess.run(  # noqa: S603 - our own interpreter, our own words
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_closed_pipe_is_no_failure(upper: Path) -> None:
    """`casewright why JOB | head` ends quietly."""
    code = (
        "import os, sys\nreader, writer = os.pipe()\nos.close(reader)\nos.dup2(writer, 1)\n"
        "from casewright.cli.main import main\n"
        f"main(['why', {str(upper)!r}])"
    )
    done = subprocess.run(  # noqa: S603 - our own interpreter, our own words
        [sys.executable, "-c", code], capture_output=True, text=True, check=False
    )
    assert "Traceback" not in done.stderr
    assert "Exception" not in done.stderr
