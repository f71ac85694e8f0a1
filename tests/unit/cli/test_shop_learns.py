"""A shop that reads what it cuts learns how true its saw is; the forecast then goes by it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from tests.jobs import example
from tests.record_shop import run

SIDES = [f"{case}.side_{hand}" for case in ("pans", "cutlery", "prep", "trays") for hand in
         ("left", "right")]  # fmt: skip


@pytest.fixture
def shop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """The gallery with eight sides cut by the numbers, with the saw."""
    job = tmp_path / "gallery.toml"
    job.write_text(example("gallery"), "utf-8")
    assert run("record", job, "cut", *SIDES) == 0
    capsys.readouterr()
    return job


def readings(job: Path, sides: list[str], *, off: str = "0.5") -> None:
    """Each side is read: by turns 0.2 mm more and less over its number than `off`."""
    lines = []
    for number, side in enumerate(sides):
        size = 876.3 + float(off) + 0.2 * (-1) ** number  # 34 1/2 in
        lines.append({
            "id": f"r-{number}", "device": "phone", "seq": number + 1, "kind": "reading",
            "path": f"{side}.length", "sizes": f"{size:.1f} mm", "tool": "steel rule",
            "u": "0.1 mm", "at": "2030-05-12T09:30:00+02:00",
        })  # fmt: skip
    file = job.with_name("phone.jsonl")
    file.write_text("\n".join(map(json.dumps, lines)), "utf-8")
    assert run("record", job, "--import", file) == 0


def saw(job: Path, capsys: pytest.CaptureFixture[str], kind: str = "table saw") -> Any:
    """What the forecast knows of the table saw."""
    capsys.readouterr()
    run("forecast", job, "--json")
    tools = json.loads(capsys.readouterr().out)["tools"]
    return next(tool for tool in tools if tool["tool"] == kind)


def mm(length: Any) -> float:
    over, _, under = length["mm"].partition("/")
    return float(over) / float(under or 1)


def test_seven_pieces_are_too_few(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    readings(shop, SIDES[:7])
    known = saw(shop, capsys)
    assert known["learned"] is None
    assert mm(known["sigma"]) == pytest.approx(0.2)


def test_eight_pieces_say_what_the_saw_does(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Off by 0.5 on average; 0.214 seen (n - 1), less 0.1 of the rule: 0.189, told upwards."""
    readings(shop, SIDES)
    known = saw(shop, capsys)
    assert known["learned"]["pairs"] == 8
    assert mm(known["learned"]["offset"]) == pytest.approx(0.5)
    assert mm(known["sigma"]) == pytest.approx(0.189, abs=0.0011)
    run("why", shop, "linen.bottom.length")
    text = capsys.readouterr().out
    assert "table saw: 8 of your pieces that were read stray by 0.007" in text
    assert "over their numbers" in text
    run("forecast", shop)
    assert "8 of your pieces that were read" in capsys.readouterr().out


def test_what_the_job_states_stands_and_the_readings_are_told_beside_it(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write_text(f'{example("gallery")}\n[shop.tool."table saw"]\nstrays = "0.4 mm"\n', "utf-8")
    readings(shop, SIDES)
    known = saw(shop, capsys)
    assert known["stated"]
    assert mm(known["sigma"]) == pytest.approx(0.4)
    assert known["learned"]["pairs"] == 8


def test_what_is_learned_makes_no_page_stale(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The fingerprint goes by the job and by what was read, not by what follows from it."""
    run("check", shop, "--json")
    before = json.loads(capsys.readouterr().out)["fingerprint"]
    readings(shop, SIDES)
    capsys.readouterr()
    run("check", shop, "--json")
    assert json.loads(capsys.readouterr().out)["fingerprint"] == before


def test_what_a_size_is_held_against_is_kept(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Of a piece told as it came out what it was to be, of a second reading the first one."""
    side = SIDES[0]
    assert run("record", shop, "cut", side, "--size", "34 17/32 x 23 7/32") == 0
    for read in ("34 17/32", "34 1/2"):
        assert run("record", shop, "reading", f"{side}.length", read) == 0
    capsys.readouterr()
    run("record", shop, "--json")
    *_, cut, first, second = json.loads(capsys.readouterr().out)["entries"]
    assert cut["against"]["length"]["text"] == "34 1/2"
    assert cut["tool"] == "table saw"
    assert not first["against"]
    assert second["against"]["text"] == "34 17/32"
