"""A job whose record is written from the command line, and whose answers are read."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from casewright.cli.main import main

KITCHEN = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[stock.thin_plywood]
measured = "0.200"
[stock.fibreboard]
measured = "0.750"
[hardware.pull]
centres = "96 mm"
[case.upper]
kind = "wall"
width = "33"
"""


def run(*arguments: object) -> int:
    with pytest.raises(SystemExit) as left:
        main([str(argument) for argument in arguments])
    code = left.value.code
    return code if isinstance(code, int) else 0


class Shop:
    """A job whose record is written and whose answers are read."""

    def __init__(self, job: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.job, self.capsys = job, capsys

    def says(self, *words: object) -> tuple[int, str]:
        code = run("record", self.job, *words)
        out, error = self.capsys.readouterr()
        return code, out + error

    def data(self, command: str, *words: object) -> Any:
        run(command, self.job, *words, "--json")
        return json.loads(self.capsys.readouterr().out)

    def part(self, path: str, *words: object) -> Any:
        return next(p for p in self.data("parts", *words)["parts"] if p["path"] == path)

    def node(self, path: str) -> Any:
        return self.data("why", path)["nodes"][0]

    def entries(self) -> Any:
        return self.data("record")["entries"]
