"""`cut --problem NEW --last PLAN --cut 1,2`: what is cut stays; the answer tells what moved."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from tests.cut_files import SOON, json_of, part, problem, run, write

BEFORE = problem(part("side", 876, 590, 8), part("shelf", 835, 295, 6))


@pytest.fixture
def last(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> tuple[Path, Any]:
    """A plan as a file and as data."""
    document = json_of(capsys, "cut", "--problem", write(tmp_path, BEFORE), *SOON)
    return write(tmp_path, document, "plan.json"), document


def test_an_unchanged_problem_moves_nothing(
    last: tuple[Path, Any], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Every piece is kept where it lay."""
    again = json_of(capsys, "cut", "--problem", write(tmp_path, BEFORE), "--last", last[0])
    moved = {word: again["last"][word] for word in ("kept", "moved", "added", "dropped")}
    assert moved == {"kept": 14, "moved": 0, "added": 0, "dropped": 0}
    assert again["last"]["origins"] == list(range(len(last[1]["tree"])))


def test_a_cut_sheet_stays_and_the_rest_gives_way(
    last: tuple[Path, Any], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Sheet 1 as it was; three new parts, a side less; the plan is sound."""
    changed = write(tmp_path, problem(
        part("side", 876, 590, 7), part("shelf", 835, 295, 6), part("new", 700, 400, 3)
    ), "changed.json")  # fmt: skip
    again = json_of(capsys, "cut", "--problem", changed, "--last", last[0], "--cut", "1")
    assert again["last"]["origins"][0] == 0
    first = [[p for p in plan["placements"] if p["sheet"] == 0] for plan in (last[1], again)]
    spots = [{(p["part"], p["x"], p["y"]) for p in placed} for placed in first]
    assert spots[1] <= spots[0]
    assert again["last"]["cut"] == [0]
    assert not [step for step in again["steps"] if step["sheet"] == 0]
    assert (again["last"]["added"], again["last"]["dropped"]) == (3, 1)
    assert run("verify", changed, write(tmp_path, again, "again.json")) == 0


def test_the_movement_is_told_in_words(
    last: tuple[Path, Any], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """At the top, before the cuts."""
    assert run("cut", "--problem", write(tmp_path, BEFORE), "--last", last[0]) == 0
    told = capsys.readouterr().out
    assert "Against the last plan: 14 kept, 0 moved, 0 added, 0 dropped" in told


@pytest.mark.parametrize(
    ("cut", "change", "word"),
    [
        ("9", {}, "sheet 9 is not in the last plan"),
        ("0", {}, "sheet 0 is not in the last plan"),
        ("one", {}, '--cut is "one"'),
        ("1,", {}, '--cut is "1,"'),
        ("1", {"kerf": 4}, "sheet 1, cut already"),
        ("1", {"stock": [{"id": "other", "l": 2440, "w": 1220}]}, 'stock is "ply"'),
    ],
)
def test_a_cut_sheet_that_cannot_be_is_told(
    last: tuple[Path, Any], cut: str, change: dict[str, Any], word: str, tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    """By its number, as a person counts."""
    file = write(tmp_path, BEFORE | change)
    assert run("cut", "--problem", file, "--last", last[0], "--cut", cut) == 2
    assert word in capsys.readouterr().err
