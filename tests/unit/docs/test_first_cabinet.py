"""The walk-through of a first cabinet is true, line by line."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest

from casewright.cli.main import main

_PAGE = Path(__file__).parents[3] / "docs" / "first-cabinet.md"
_BLOCK = re.compile(
    r"```(toml|console)\n(.*?)```|`(width = \"[^`]+\")` to `(width = \"[^`]+\")`", re.S
)


def _run(command: str, capsys: pytest.CaptureFixture[str]) -> str:
    with pytest.raises(SystemExit):
        main(command.split()[1:])
    return capsys.readouterr().out


def test_the_walk_through_shows_what_a_person_gets(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Its files are typed, its edits made, its commands run; `...` stands for lines left out."""
    monkeypatch.chdir(tmp_path)
    file = Path("upper.toml")
    file.write_text("")
    same = doctest.OutputChecker().check_output
    shown = 0
    for kind, text, old, new in _BLOCK.findall(_PAGE.read_text()):
        if kind == "toml":
            file.write_text(f"{file.read_text()}{text}\n")
        elif kind == "console":
            command, _, expected = text.removeprefix("$ ").partition("\n")
            printed = _run(command, capsys)
            assert same(expected, printed, doctest.ELLIPSIS), f"{command} prints\n{printed}"
            shown += 1
        else:
            assert old in file.read_text()
            file.write_text(file.read_text().replace(old, new))
    assert shown >= 6
    assert Path("out/upper/packet.pdf").read_bytes().startswith(b"%PDF")
