"""The walk-through of the first cabinet, run as a reader would type it."""

from __future__ import annotations

import doctest
import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import pytest

from casewright.cli import progress
from casewright.cli.main import main

PAGE = Path(__file__).parents[2] / "docs" / "first-cabinet.md"
BLOCK = re.compile(r"^```(?P<kind>\w+) ?(?P<name>[\w.-]*)\n(?P<body>.*?)^```$", re.M | re.S)


def _steps() -> Iterator[tuple[str, str, str]]:
    for match in BLOCK.finditer(PAGE.read_text("utf-8")):
        yield match["kind"], match["name"], match["body"]


def test_the_page_does_what_it_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Files are typed, commands run, and every line printed is the line on the page."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(progress, "_PATIENCE_S", 3600.0)  # what is slow here may be fast there
    checker = doctest.OutputChecker()
    commands = 0
    for kind, name, body in _steps():
        if kind == "toml":
            (tmp_path / name).write_text(body, "utf-8")
            continue
        first, _, wanted = body.partition("\n")
        program, *arguments = shlex.split(first.removeprefix("$ "))
        assert (kind, program) == ("console", "casewright")
        with pytest.raises(SystemExit) as left:
            main(arguments)
        assert left.value.code in (None, 0, 1, 2)
        shown = "".join(capsys.readouterr())
        assert checker.check_output(wanted, shown, doctest.ELLIPSIS), f"{first}\n{shown}"
        commands += 1
    assert commands >= 8
    assert (tmp_path / "out" / "linen" / "packet.pdf").read_bytes().startswith(b"%PDF")
