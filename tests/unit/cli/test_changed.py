"""Whether a page in the shop is stale, and what differs since it was printed."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from casewright.cli import making
from casewright.cli.main import main
from casewright.job.fingerprint import fingerprint, printed_fingerprint
from casewright.job.load import load_job, read_job
from casewright.job.printed import note_print, prints_in
from casewright.job.recorded import read_entries, read_record, record_path, work_out_recorded
from casewright.job.writer import this_writer
from casewright.room.specs import RunSpec

LEDGE = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[stock.thin_plywood]
measured = "0.200"
[case.ledge]
kind = "bookcase"
width = "31 1/2"
height = "40"
shelves = 1
"""


@pytest.fixture
def job(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("CASEWRIGHT_DEVICE", "bench")
    file = tmp_path / "ledge.toml"
    file.write_text(LEDGE)
    return file


def run(*arguments: object) -> int:
    with pytest.raises(SystemExit) as left:
        main([str(argument) for argument in arguments])
    code = left.value.code
    return code if isinstance(code, int) else 0


def printed(job: Path) -> str:
    """As if the packet were printed now: its fingerprint."""
    loaded = load_job(job)
    room = work_out_recorded(loaded, read_record(job)).room
    fingerprint = printed_fingerprint(room)
    note_print(loaded, fingerprint, this_writer())
    return fingerprint


def changed(job: Path, capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, Any]:
    capsys.readouterr()
    code = run("changed", job, *words, "--json")
    return code, json.loads(capsys.readouterr().out)


def test_the_packet_is_noted_with_its_job_file(
    job: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Once for each thing that is printed, however often it is."""
    monkeypatch.setattr(making, "packet_files", lambda _: {"packet.pdf": b"%PDF"})
    for _ in range(2):
        assert run("packet", job, "--out", tmp_path) in (0, 1)  # beside the job file itself
    entries, rescue = read_entries(job)
    assert rescue is None
    (only,) = prints_in(entries)
    assert only.text == LEDGE
    assert len(entries) == 1
    assert {"packet.pdf", "ledge.toml", "ledge.record"} <= {p.name for p in tmp_path.iterdir()}


def test_a_packet_made_without_the_record_is_not_noted(
    job: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(making, "packet_files", lambda _: {"packet.pdf": b"%PDF"})
    run("packet", job, "--out", tmp_path / "out", "--without-record")
    assert not record_path(job).exists()


def test_a_fingerprint_does_not_hang_on_the_order_of_a_set() -> None:
    """Which differs from one run of Python to the next."""
    keys = [f"case_{number}" for number in range(100)]
    spec = read_job(LEDGE, "ledge.toml")
    run_spec = RunSpec("run", "run", tuple(keys), (), "wall", "wall")
    either, other = (
        fingerprint(replace(spec, runs=(replace(run_spec, solved=frozenset(each)),)))
        for each in (keys, keys[::-1])
    )
    assert either == other


def test_nothing_has_changed_with_a_note_or_a_comment(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    fingerprint = printed(job)
    run("record", job, "note", "the glue is new")
    job.write_text(f"# spring\n{LEDGE}")
    code, document = changed(job, capsys)
    assert code == 0
    assert (document["old"], document["new"], document["stale"]) == (fingerprint,) * 2 + (False,)
    assert [entry["kind"] for entry in document["entries"]] == ["note"]


def test_another_width_in_the_file_is_told_piece_by_piece(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """2 in narrower: every horizontal is 2 in shorter, the sides stay."""
    fingerprint = printed(job)
    job.write_text(LEDGE.replace("31 1/2", "29 1/2"))
    code, document = changed(job, capsys, fingerprint)
    assert code == 1
    assert document["stale"]
    assert document["exact"]
    changes = {change["path"]: change for change in document["changes"]}
    assert "ledge.side_left" not in changes
    bottom = changes["ledge.bottom"]
    assert bottom["old"].startswith("30 9/16 x")  # 31 1/2 - 2 x 0.720 + 2 x 1/4 = 30.56
    assert bottom["new"].startswith("28 9/16 x")
    assert run("changed", job) == 1
    assert "its pages are stale" in capsys.readouterr().out


def test_a_piece_that_came_and_one_that_went(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    printed(job)
    job.write_text(LEDGE.replace("shelves = 1", "shelves = 2"))
    kinds = {c["path"]: c["what"] for c in changed(job, capsys)[1]["changes"]}
    assert kinds["ledge.shelf.2"] == "new"
    printed(job)
    job.write_text(LEDGE)
    kinds = {c["path"]: c["what"] for c in changed(job, capsys)[1]["changes"]}
    assert kinds["ledge.shelf.2"] == "gone"


def test_a_reading_makes_pages_stale_and_printing_again_makes_them_good(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    first = printed(job)
    run("record", job, "reading", "stock.plywood.thickness", "0.700")
    code, document = changed(job, capsys)
    assert code == 1
    assert any(change["path"] == "ledge.bottom" for change in document["changes"])
    assert [entry["kind"] for entry in document["entries"]] == ["reading"]
    second = printed(job)
    assert second == document["new"] != first
    assert changed(job, capsys)[0] == 0
    assert changed(job, capsys, second[:6])[0] == 0
    assert changed(job, capsys, first)[0] == 1


def test_since_a_date_the_file_is_the_one_last_printed(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run("record", job, "cut", "1")
    _, early = changed(job, capsys, "2020-01-01")
    assert early["same_file"]
    assert [entry["kind"] for entry in early["entries"]] == ["cut"]
    printed(job)
    job.write_text(LEDGE.replace("31 1/2", "29 1/2"))
    code, late = changed(job, capsys, "2999-01-01")
    assert code == 1
    assert not late["same_file"]
    assert late["entries"] == []
    assert any(change["path"] == "ledge.bottom" for change in late["changes"])


def test_what_is_no_packet_and_no_date_is_told(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run("changed", job) == 2
    assert "no packet of this job was printed yet" in capsys.readouterr().err
    fingerprint = printed(job)
    assert run("changed", job, "beef") == 2
    assert fingerprint in capsys.readouterr().err


def test_a_long_job_file_is_kept_in_pieces(job: Path) -> None:
    """Random notes do not pack well; one piece lost, and the packet is not told of at all."""
    notes = "".join(f"# {number * 7919 % 104729:x} {number:o}\n" for number in range(4000))
    job.write_text(LEDGE + notes)
    printed(job)
    entries, _ = read_entries(job)
    assert len(entries) > 1
    assert prints_in(entries)[0].text == LEDGE + notes
    assert prints_in(reversed(entries)) == prints_in(entries)
    assert prints_in(entries[1:]) == ()
