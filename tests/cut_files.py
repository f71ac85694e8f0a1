"""Problem files for tests of `cut --problem` and `verify`."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from casewright.cli.main import main

__all__ = ["SOON", "json_of", "part", "problem", "run", "write"]

SOON = ("--work", "3000")
"""Options of a search that is soon over."""


def run(*arguments: object) -> int:
    """Exit code of a command."""
    with pytest.raises(SystemExit) as left:
        main([str(argument) for argument in arguments])
    code = left.value.code
    return code if isinstance(code, int) else 0


def part(name: str, length: int, width: int, count: int = 1, **more: Any) -> dict[str, Any]:
    """A part of a problem file."""
    return {"id": name, "l": length, "w": width, "count": count, **more}


def problem(*parts: dict[str, Any], **more: Any) -> dict[str, Any]:
    """Parts from sheets of 2440 x 1220 mm, a blade of 3 mm."""
    stock = [{"id": "ply", "l": 2440, "w": 1220}]
    keep = [{"long": 600, "short": 100}]
    return {"unit": "mm", "kerf": 3, "stock": stock, "parts": list(parts), "keep": keep} | more


def write(folder: Path, data: object, name: str = "problem.json") -> Path:
    """A file that holds it."""
    file = folder / name
    file.write_text(json.dumps(data), "utf-8")
    return file


def json_of(
    capsys: pytest.CaptureFixture[str], *arguments: object, codes: Sequence[int] = (0,)
) -> Any:
    """What a command prints with `--json`."""
    assert run(*arguments, "--json") in codes
    return json.loads(capsys.readouterr().out)
