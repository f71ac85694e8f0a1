"""The command `setup`: a test piece is typed in, and the move comes back and is kept."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from tests.jobs import example
from tests.record_shop import run

LAP = "pantry_pair.upper_door_left.stile_left.lap_bottom"
GROOVE = "pantry_single.door.stile_left.groove"


@pytest.fixture
def doors(tmp_path: Path) -> Path:
    """The gallery of doors, in a folder of its own."""
    file = tmp_path / "doors.toml"
    file.write_text(example("gallery_doors"), "utf-8")
    return file


def says(capsys: pytest.CaptureFixture[str], job: Path, *words: object) -> tuple[int, str]:
    code = run("setup", job, *words)
    out, error = capsys.readouterr()
    return code, out + error


def test_a_proud_lap_is_cut_deeper_by_half(
    doors: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Both halves are cut with the setting: each takes half of it."""
    code, text = says(capsys, doors, LAP, "lap", "1/32", "proud")
    assert code == 1
    assert "lap stands 1/32 proud: set the bit 1/64 deeper (router)" in text
    assert "the same setting makes" in text
    assert says(capsys, doors, LAP, "lap", "flush")[0] == 0
    run("record", doors, "--json")
    kept = json.loads(capsys.readouterr().out)["entries"]
    assert [(entry["kind"], entry["path"], entry["tool"]) for entry in kept] == [
        ("tested", LAP, "router")
    ] * 2
    assert "1/64 deeper" in kept[0]["note"]


def test_a_deep_groove_lowers_the_blade_and_a_hair_is_left_alone(
    doors: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """13/32 is wanted; 1/32 over is a move, three thousandths are the calliper's own."""
    assert "lower the blade 1/32 (table saw)" in says(capsys, doors, GROOVE, "depth", "7/16")[1]
    code, text = says(capsys, doors, GROOVE, "depth", "0.409")
    assert code == 0
    assert "leave it" in text


def test_what_can_be_measured_is_listed(doors: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, text = says(capsys, doors, GROOVE)
    assert code == 0
    for word in ("depth:", "width:", "place:"):
        assert word in text
    assert not doors.with_suffix(".record").exists()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((GROOVE, "lap", "1/32"), "depth, width, place"),
        ((GROOVE, "depth", "7/16 cubit"), "cubit"),
        ((LAP, "lap", "1/32"), "proud, or sunk"),
        ((LAP, "lap"), "write"),
        (("pantry_single.door.stile_left", "depth", "1/4"), GROOVE),
        (("nothing", "depth", "1/4"), "there is no cut"),
    ],
)
def test_what_has_no_meaning_is_refused_and_nothing_is_kept(
    words: tuple[str, ...], told: str, doors: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, text = says(capsys, doors, *words)
    assert code == 2
    assert told in text
    assert "Traceback" not in text
    assert not doors.with_suffix(".record").exists()


def test_three_settings_that_lean_are_one_cause(
    doors: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Grooves, tongues and rebates of one saw, all deep by about as much."""
    tongue = "pantry_single.door.rail_bottom.tongue_front_0"
    slot = "mitred_single.door.stile_left.slot_0"
    says(capsys, doors, GROOVE, "depth", "7/16")
    says(capsys, doors, tongue, "depth", "9/32")
    text = says(capsys, doors, slot, "depth", "1/32", "over")[1]
    assert "3 settings came out over, about 1/32 each" in text
    assert "scale of the table saw" in text
