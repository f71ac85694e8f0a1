"""The command `forecast`: what it tells, as text and as data, and how a hold point is passed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from tests.jobs import example
from tests.record_shop import run


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The gallery, in a folder of its own."""
    file = tmp_path / "gallery.toml"
    file.write_text(example("gallery"), "utf-8")
    return file


def document(job: Path, capsys: pytest.CaptureFixture[str], *words: str) -> Any:
    run("forecast", job, *words, "--json")
    return json.loads(capsys.readouterr().out)


def test_the_likeliest_to_miss_comes_first_and_hold_points_follow(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("forecast", job) == 1
    text = capsys.readouterr().out
    assert text.index("the air for the slides beside linen.roll_out_1") < text.index("HOLD POINTS")
    assert "measure trays.clear_width with a steel rule" in text
    assert "GO 22 19/32" in text
    assert "NO GO under" in text
    assert "min of mending for 8 min" in text


def test_one_thing_is_told_with_all_its_causes(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run("forecast", job, "trays.drawer_2")
    text = capsys.readouterr().out
    assert "the setting of trays horizontals length (table saw)" in text
    assert "linen" not in text
    assert run("forecast", job, "trays.drawr_2") == 2
    assert "trays.drawer_2" in capsys.readouterr().err


def test_a_recorded_reading_passes_the_hold_point(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (before,) = document(job, capsys, "trays.drawer_2")["hold_points"]
    assert before["read"] is None
    rule = ("--tool", "steel rule")
    assert run("record", job, "reading", "trays.clear_width", "22 5/8", *rule) == 0
    capsys.readouterr()
    (after,) = document(job, capsys, "trays.drawer_2")["hold_points"]
    assert after["read"]["text"] == "22 5/8"
    run("forecast", job, "trays.drawer_2")
    assert 'passed, read 22 5/8", planned 22 19/32"' in capsys.readouterr().out


@pytest.mark.parametrize(
    ("size", "says"),
    [("22 19/32", "GO: 1"), ("22 5/8", "to the new sizes"), ("22 11/16", "NO GO: put trays")],
)
def test_a_reading_is_answered_with_go_or_no_go(
    size: str, says: str, job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """As planned; 1/32 off; 3/32 off, where the box may stray by 1/16."""
    run("record", job, "reading", "trays.clear_width", size, "--tool", "steel rule", "--sure")
    assert says in capsys.readouterr().out


def test_the_document_has_band_worst_spread_chance_and_causes(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    told = document(job, capsys)
    assert told["schema"] == "casewright/forecast/1"
    fit = next(fit for fit in told["fits"] if fit["path"] == "trays.drawer_2.slide_fit")
    assert {"nominal", "band", "worst", "rss_mm", "systematic_mm", "chance", "normal_chance",
            "chance_read", "read", "causes", "simulated"} <= fit.keys()  # fmt: skip
    limits = sum(abs(float(cause["slope"])) * _mm(cause["limit"]) for cause in fit["causes"])
    assert _mm(fit["worst"][1]) - _mm(fit["nominal"]) == pytest.approx(limits)
    assert {tool["tool"] for tool in told["tools"]} >= {"table saw", "tape"}


def _mm(length: Any) -> float:
    over, _, under = length["mm"].partition("/")
    return float(over) / float(under or 1)
