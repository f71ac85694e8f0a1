"""The record out and in again: tables and lines, of this device and of others."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.record_shop import Shop

from casewright.job.recorded import record_path


@pytest.mark.parametrize("name", ["record.csv", "record.jsonl"])
def test_a_record_goes_out_and_comes_in_again(shop: Shop, tmp_path: Path, name: str) -> None:
    shop.says("assembled", "upper")
    shop.says("reading", "upper.width", "33 1/32", "--note", '=1+1, "so"')
    shop.says("spoiled", "upper.shelf.1")
    shop.says("offcut", "plywood", "24 x 18")
    before, parts = shop.entries(), shop.data("parts")
    file = tmp_path / name
    assert shop.says("--export", file)[0] == 0
    code, text = shop.says("--import", file)
    assert (code, text.strip()) == (0, f"0 new, {len(before)} there already")
    record_path(shop.job).unlink()
    assert shop.says("--import", file)[0] == 0
    assert shop.entries() == before
    assert shop.data("parts") == parts


def test_an_export_never_replaces_anything_else(shop: Shop, tmp_path: Path) -> None:
    shop.says("note", "first")
    buy = tmp_path / "buy.csv"
    buy.write_text("what,how many\n")
    for file in (shop.job, record_path(shop.job), buy, tmp_path):
        before = file.read_bytes() if file.is_file() else b""
        code, text = shop.says("--export", file)
        assert code == 2
        assert "choose another name" in text
        assert (file.read_bytes() if file.is_file() else b"") == before
    for _ in range(2):
        assert shop.says("--export", tmp_path / "record.csv")[0] == 0


def test_lines_of_another_device_come_in(shop: Shop, tmp_path: Path) -> None:
    """As docs/record.md has them: lengths in the job's unit or exactly, in any order."""
    file = tmp_path / "phone.jsonl"
    file.write_text(
        '{"id": "p-2", "device": "phone", "seq": 2, "path": "upper.bottom", "kind": "cut",'
        ' "sizes": {"length": {"mm": "160147/200", "text": "31 17/32"}, "width": "11 31/32"},'
        ' "at": "2026-05-12T09:31:00+02:00"}\n\n'
        '{"id": "p-1", "device": "phone", "seq": 1, "path": "upper.width", "kind": "reading",'
        ' "sizes": "33 1/32", "tool": "tape", "u": "1/64", "at": "2026-05-12T09:30:00+02:00"}\n'
    )
    assert shop.says("--import", file)[1].strip() == "2 new, 0 there already"
    assert shop.node("upper.width")["built"]["text"] == "33 1/32"
    assert shop.node("upper.bottom.length")["cut"]["mm"] == "160147/200"


def test_everything_wrong_in_a_file_is_told_and_none_of_it_taken(
    shop: Shop, tmp_path: Path
) -> None:
    file = tmp_path / "phone.jsonl"
    file.write_text(
        '{"id": "p-1", "device": "phone", "path": "upper", "kind": "hung",'
        ' "at": "2026-05-12T09:30:00Z"}\n'
        '{"id": "p-2", "device": "phone", "path": "upper", "kind": "hanged",'
        ' "at": "2026-05-12T09:30:00Z"}\n'
        '{"id": "p-3", "device": "phone", "path": "upper", "kind": "hung", "at": "12 May"}\n'
        "{\n"
    )
    code, text = shop.says("--import", file)
    assert code == 2
    assert "phone.jsonl, line 2, hanged: this is no kind of entry" in text
    assert "line 3, 12 May: this is no date with a time" in text
    assert "line 4, {: this is no JSON" in text
    assert not record_path(shop.job).exists() or shop.entries() == []


def test_an_id_is_never_given_twice(shop: Shop, tmp_path: Path) -> None:
    line = (
        '{{"id": "p-1", "device": "phone", "seq": 1, "path": "upper", "kind": "note",'
        ' "note": "{}", "at": "2026-05-12T09:30:00Z"}}\n'
    )
    file = tmp_path / "phone.jsonl"
    file.write_text(line.format("one"))
    shop.says("--import", file)
    file.write_text(line.format("two"))
    code, text = shop.says("--import", file)
    assert code == 2
    assert "p-1: another entry has this id; nothing is ever overwritten" in text
