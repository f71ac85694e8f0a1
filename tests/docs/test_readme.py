"""What the first page shows can be typed."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from casewright.cli.main import main

ROOT = Path(__file__).parents[2]
SHOWN = re.compile(r"^\./dev (\S+) *([^#\n]*)", re.M)


def test_every_command_of_the_readme_is_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The script knows each; those of the program run in their order, the slow ones show help."""
    monkeypatch.chdir(tmp_path)
    script = (ROOT / "dev").read_text("utf-8")
    shown = SHOWN.findall((ROOT / "README.md").read_text("utf-8"))
    assert [command for command, _ in shown[:2]] == ["demo", "test"]
    for command, words in shown:
        assert re.search(rf"^    {command}\)$", script, re.M), command
        if command != "run":
            continue
        arguments = words.split()
        slow = arguments[0] in ("packet", "cut")
        with pytest.raises(SystemExit) as left:
            main([arguments[0], "--help"] if slow else arguments)
        assert left.value.code in (None, 0, 1), capsys.readouterr()
    assert (tmp_path / "kitchen.toml").exists()
