"""`cut --problem`: what a person at the saw, a script and an impatient one get."""

from __future__ import annotations

import io
import json
import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from tests.cut_files import SOON, json_of, part, problem, run, write

from casewright.cli import cutting

SHELVES = problem(part("side", 876, 590, 4), part("shelf", 835, 295, 6, rotate=True))
# Found by trial to stay one sheet above its bound for long.
OPEN_ENDED = problem(
    *(
        part(f"p{n}", 200 + 397 * n % 1799, 80 + 211 * n % 619, rotate=n % 3 == 0)
        for n in range(60)
    )
)


def test_what_is_at_the_saw(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Settings over their cuts, the sheets with what lies on them, and what is left."""
    assert run("cut", "--problem", write(tmp_path, SHELVES), *SOON) == 0
    told = capsys.readouterr().out
    assert told.startswith("2 sheets (2 of ply): proved minimum for any layout; lengths in mm\n")
    for name, count in (("side", 4), ("shelf", 6)):
        for copy in range(1, count + 1):
            assert told.count(f"= {name}.{copy} ") == 1
            assert told.count(f"  {name}.{copy}  ") == 1
    assert "SETTING 1: " in told
    assert "SHEET 2: ply 2440 x 1220" in told
    assert "left, to keep: " in told
    assert 'say it under "shop"' in told


def test_the_answer_carries_all_that_was_promised(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Placements, cut tree, cards with their steps, the bound and what it holds for."""
    document = json_of(capsys, "cut", "--problem", write(tmp_path, SHELVES), *SOON)
    assert len(document["placements"]) == 10
    assert [tree["stock"] for tree in document["tree"]] == ["ply", "ply"]
    steps = [number for card in document["cards"] for number in card["steps"]]
    assert sorted(steps) == [step["number"] for step in document["steps"]]
    assert document["bound"] == {"value": 2, "scope": "any layout", "measure": "sheets"}
    assert (document["status"], document["ending"]) == ("proved", "content")
    assert document["unplaced"] == []
    assert document["work"]["cuts"] == len(steps)


@pytest.mark.parametrize(("depth", "sheets"), [("11 7/8", 1), ("11 29/32", 1), ("12", 2)])
def test_four_strips_of_a_sheet(
    depth: str, sheets: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Four of 11 7/8 from 48 in with a kerf of 1/8, three of 12; 11 29/32 is the largest of four.

    Common practice.
    """
    width = {"11 7/8": 380, "11 29/32": 381, "12": 384}[depth]
    data = {
        "unit": "1/32 in", "kerf": 4, "stock": [{"id": "ply", "l": 3072, "w": 1536}],
        "parts": [part("strip", 3072, width, 4)],
    }  # fmt: skip
    assert run("cut", "--problem", write(tmp_path, data), *SOON) == 0
    told = capsys.readouterr().out
    assert told.startswith(f"{sheets} sheet")
    assert f"= strip.1 96 x {depth}" in told


def test_what_fits_nowhere_is_named_with_the_nearest_fix(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Too large, by how much and for which stock; against the grain; over a defect; no stock."""
    data = problem(
        part("long", 2500, 300), part("grain", 400, 1300), part("flawed", 1500, 1000),
        part("many", 1200, 600, 9),
        stock=[{"id": "ply", "l": 2440, "w": 1220, "count": 1,
                "defects": [{"x": 1000, "y": 500, "l": 200, "w": 200}]}],
    )  # fmt: skip
    file = write(tmp_path, data)
    assert run("cut", "--problem", file, *SOON) == 1
    told = capsys.readouterr().out
    assert "1 of long: larger than any stock; 60 too long for ply, which holds 2440 x 1220" in told
    assert (
        "1 of grain: fits only when turned against the grain; it fits if it may be turned" in told
    )
    assert "1 of flawed: fits only over a defect" in told
    assert "6 of many: no stock left" in told or "7 of many: no stock left" in told
    unplaced = {entry["part"]: entry for entry in json_of(
        capsys, "cut", "--problem", file, codes=(1,)
    )["unplaced"]}  # fmt: skip
    assert unplaced["long"]["nearest"] == {
        "stock": "ply", "l": 2440, "w": 1220, "over_l": 60, "over_w": 0,
    }  # fmt: skip
    assert unplaced["grain"]["nearest"] is None


def test_where_nothing_fits_no_minimum_is_claimed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = write(tmp_path, problem(part("long", 2500, 300)))
    assert run("cut", "--problem", file, *SOON) == 1
    told = capsys.readouterr().out.splitlines()
    assert told[0].startswith("no sheet is cut: none of the parts fits")
    assert told[1].startswith("LEFT OVER  1 of long: larger than any stock; 60 too long")


def test_lengths_alone_are_boards(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """All of one width and none turned: 2 x 1200 and a kerf in 2440, five of them in three."""
    data = problem(part("rail", 1200, 90, 5), stock=[{"id": "pine", "l": 2440, "w": 90}])
    assert run("cut", "--problem", write(tmp_path, data), *SOON) == 0
    told = capsys.readouterr().out
    assert told.startswith("3 boards (3 of pine): proved minimum for any layout")


def test_stages_of_the_command_go_before_those_of_the_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And the plan says how many it was made with."""
    file = write(tmp_path, SHELVES | {"stages": 3})
    for word, stages in (("2", 2), ("free", "free")):
        document = json_of(capsys, "cut", "--problem", file, "--stages", word, *SOON)
        assert document["stages"] == stages


def test_the_same_work_gives_the_same_answer(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """To the last character."""
    file = write(tmp_path, OPEN_ENDED)
    told = []
    for _ in range(2):
        assert run("cut", "--problem", file, "--work", 3000, "--json") == 0
        told.append(capsys.readouterr().out)
    assert told[0] == told[1]


def test_a_problem_can_be_piped_in(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """`-` stands for it; what is wrong in it is told under that name."""
    for text, code in ((json.dumps(SHELVES), 0), ('{"unit": 3}', 2)):
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(text.encode())))
        assert run("cut", "--problem", "-", "--work", 100) == code
    assert "standard input, problem: unit is 3" in capsys.readouterr().err


@pytest.fixture
def at_a_terminal() -> Iterator[None]:
    """Ctrl-C works, though whoever started the tests may have them in the background."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


def _pressing(times: int) -> Callable[[str], object]:
    """In place of the sign of life: whoever reads the first news presses Ctrl-C."""
    left = [times]

    @contextmanager
    def working(_: str) -> Iterator[Callable[[str], None]]:
        def tell(_: str) -> None:
            while left[0]:
                left[0] -= 1
                signal.raise_signal(signal.SIGINT)

        yield tell

    return working


@pytest.mark.usefixtures("at_a_terminal")
def test_ctrl_c_gives_the_best_so_far(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A search that would take hours ends at once, with a whole plan that the verifier accepts."""
    monkeypatch.setattr(cutting, "working", _pressing(1))
    file, before = write(tmp_path, OPEN_ENDED), signal.getsignal(signal.SIGINT)
    assert run("cut", "--problem", file, "--work", 10**9, "--json") == 0
    told = capsys.readouterr()
    assert "Ctrl-C again quits" in told.err
    document = json.loads(told.out)
    assert document["ending"] == "asked"
    assert len(document["placements"]) == 60
    assert signal.getsignal(signal.SIGINT) is before
    monkeypatch.undo()
    assert run("verify", file, write(tmp_path, document, "plan.json")) == 0


@pytest.mark.usefixtures("at_a_terminal")
def test_ctrl_c_is_told_in_the_text(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """So that nobody takes it for the end of the search."""
    monkeypatch.setattr(cutting, "working", _pressing(1))
    assert run("cut", "--problem", write(tmp_path, OPEN_ENDED), "--work", 10**9) == 0
    assert "Stopped on request" in capsys.readouterr().out


@pytest.mark.usefixtures("at_a_terminal")
def test_a_second_ctrl_c_quits(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """As programs do, with nothing printed."""
    monkeypatch.setattr(cutting, "working", _pressing(2))
    assert run("cut", "--problem", write(tmp_path, OPEN_ENDED), "--work", 10**9) == 130
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.endswith("stopped\n")


@pytest.mark.parametrize(
    ("options", "word"),
    [
        (("--seconds", "0"), "--seconds is 0"),
        (("--seconds", "nan"), "--seconds is nan"),
        (("--seconds", "1", "--work", "9"), "not both"),
        (("--work", "0"), "--work"),
        (("--stages", "4"), "--stages"),
        (("--cut", "1"), "--last"),
        (("--last", "missing.json"), "missing.json"),
        (("--last", "-", "--problem", "-"), "standard input"),
    ],
)
def test_options_that_make_no_sense_are_told(
    options: tuple[str, ...], word: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit code 2, and which one it is."""
    file = write(tmp_path, SHELVES)
    assert run("cut", "--problem", file, *options) == 2
    assert word in capsys.readouterr().err


def test_a_job_is_planned_in_its_own_way(capsys: pytest.CaptureFixture[str]) -> None:
    """What holds for a bare problem alone is not quietly passed over."""
    assert run("cut", "kitchen.toml", "--work", 5) == 2
    assert "--problem" in capsys.readouterr().err
