"""A damaged record: it is found and said, and what is whole in it is kept."""

from __future__ import annotations

import random  # noqa: TID251 - seeded
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from tests.record_entries import entry

from casewright.record import (
    DamageError,
    Entry,
    RecordError,
    Rescue,
    Store,
    damaged_files,
    facts_of,
    with_store,
)

COUNT = 60
PAGE = 8192


def _all(store: Store) -> tuple[Entry, ...]:
    store.held()
    return store.entries()


@pytest.fixture
def record(tmp_path: Path) -> Path:
    """A record of sixty entries, written in portions."""
    path = tmp_path / "kitchen.record"
    with Store(path) as store:
        for first in range(1, COUNT + 1, 20):
            store.add(
                entry(number, path=f"case.{number % 9}.width", note="n" * (number * 7))
                for number in range(first, first + 20)
            )
    return path


def _opened(path: Path) -> tuple[tuple[Entry, ...], Rescue | None]:
    return with_store(path, _all)


def test_a_sound_record_is_left_alone(record: Path) -> None:
    before = record.read_bytes()
    entries, rescue = _opened(record)
    assert len(entries) == COUNT
    assert rescue is None
    assert record.read_bytes() == before
    assert [file.name for file in record.parent.iterdir()] == [record.name]


@pytest.mark.parametrize("seed", range(40))
def test_any_byte_flipped_is_found_or_does_not_matter(record: Path, seed: int) -> None:
    """Whatever is read afterwards is as it was written; no more than a page's worth is lost."""
    chance = random.Random(seed)  # noqa: S311
    whole = {each.id: each for each in _opened(record)[0]}
    content = bytearray(record.read_bytes())
    for _ in range(chance.choice((1, 1, 3))):
        content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)
    damaged = bytes(content)
    record.write_bytes(damaged)
    entries, rescue = _opened(record)
    assert all(whole[each.id] == each for each in entries)
    if rescue is None:
        assert len(entries) == COUNT
        return
    assert len(entries) == rescue.kept >= COUNT - 3
    assert rescue.lost in (None, COUNT - len(entries))
    assert (record.parent / rescue.aside).read_bytes() == damaged
    assert _opened(record) == (entries, None)


@pytest.mark.parametrize("number", range(6))
def test_a_page_lost_or_out_of_place_is_found(record: Path, number: int) -> None:
    """Every page in turn: emptied, then put in the place of another."""
    content = record.read_bytes()
    pages = [content[at : at + PAGE] for at in range(0, len(content), PAGE)]
    here, there = number * len(pages) // 6, (number + 3) * len(pages) // 6 % len(pages)
    for changed in (bytes(PAGE), pages[there]):
        record.write_bytes(b"".join([*pages[:here], changed, *pages[here + 1 :]]))
        entries, rescue = _opened(record)
        assert len(entries) == COUNT or (
            rescue is not None and rescue.lost == COUNT - len(entries)
        )
        for aside in damaged_files(record):
            aside.unlink()


def test_a_journal_that_is_none_changes_nothing(record: Path) -> None:
    journal = record.with_name(f"{record.name}-journal")
    for content in (b"", b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + bytes(600), b"shopping list"):
        journal.write_bytes(content)
        assert len(_opened(record)[0]) == COUNT


@pytest.mark.parametrize("part", [0.97, 0.85, 0.75])
def test_an_end_cut_off_is_found(record: Path, part: float) -> None:
    content = record.read_bytes()
    record.write_bytes(content[: int(len(content) * part)])
    entries, rescue = _opened(record)
    assert rescue is not None
    assert 0 < len(entries) == rescue.kept <= COUNT
    assert rescue.file == "kitchen.record"
    assert "were whole and are kept" in str(rescue)


def test_a_lost_header_loses_no_entry(record: Path) -> None:
    content = record.read_bytes()
    record.write_bytes(b"\0" * 200 + content[200:])
    entries, rescue = _opened(record)
    assert len(entries) == COUNT
    assert rescue is not None


def test_a_record_is_written_on_after_damage(record: Path) -> None:
    content = bytearray(record.read_bytes())
    at = content.index(b"nnnnnn")
    content[at] = ord("m")
    record.write_bytes(content)
    with pytest.raises(DamageError, match="damaged"):
        Store(record)
    (new,), rescue = with_store(record, lambda store: store.add([entry(0, "note", path="")]))
    assert rescue is not None
    assert rescue.lost == 1
    assert new.seq == COUNT + 1
    assert len(_opened(record)[0]) == COUNT


@pytest.mark.parametrize(
    "change",
    [
        "DELETE FROM entry WHERE n = 5",
        "DELETE FROM held WHERE n = (SELECT max(n) FROM held)",
        "INSERT INTO held VALUES (1)",
        "UPDATE device SET seq = 7",
        "UPDATE entry SET path = 'case.1.depth' WHERE n = 5",
        "UPDATE entry SET id = 'e500' WHERE n = 5",
        "UPDATE fact SET value = '59 0' WHERE name = 'entry'",
    ],
)
def test_a_change_behind_its_back_is_found(record: Path, change: str) -> None:
    """The tables are sound then, but they do not agree with the sums or the seals."""
    before = set(_opened(record)[0])
    with closing(sqlite3.connect(record)) as connection:
        connection.execute(change)
        connection.commit()
    with pytest.raises(DamageError):
        Store(record)
    entries, rescue = _opened(record)
    assert rescue is not None
    assert set(entries) <= before
    assert len(entries) >= COUNT - 1
    with Store(record) as store:
        store.check()


def test_nothing_whole_is_not_taken_for_an_empty_record(record: Path) -> None:
    for content in (b"", b"shopping list\n", bytes(20_000)):
        record.write_bytes(content)
        with pytest.raises(RecordError, match="no entry can be read"):
            _opened(record)
        assert record.read_bytes() == content
    assert not damaged_files(record)


def test_damage_twice_keeps_both_files(record: Path) -> None:
    for _ in range(2):
        record.write_bytes(record.read_bytes()[:-9000])
        assert _opened(record)[1] is not None
    first, second = damaged_files(record)
    assert first.name == "kitchen.record.damaged-1"
    assert second.name == "kitchen.record.damaged-2"
    assert len(_opened(record)[0]) <= COUNT


def test_a_file_that_is_gone_comes_back_from_the_damaged_one(record: Path) -> None:
    record.write_bytes(record.read_bytes()[:-9000])
    entries, _ = _opened(record)
    record.unlink()
    again, rescue = _opened(record)
    assert set(again) == set(entries)
    assert rescue is not None


@pytest.mark.parametrize("step", ["hardlink_to", "replace"])
def test_a_rescue_that_was_broken_off_loses_nothing(
    record: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    """Broken off before the damaged file is put aside, or before the new one has its name."""
    content = bytearray(record.read_bytes())
    content[content.index(b"nnnnnn")] = ord("m")
    record.write_bytes(content)

    def broken(*_: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(Path, step, broken)
        with pytest.raises(KeyboardInterrupt):
            _opened(record)
    assert record.read_bytes() == content
    entries, rescue = _opened(record)
    assert rescue is not None
    assert len(entries) == COUNT - 1
    assert [file.name for file in record.parent.glob(".record.*")] == []


def test_a_large_record_is_looked_at_where_it_is_used(tmp_path: Path) -> None:
    """Damage in what is used for the numbers is found before it is used."""
    path = tmp_path / "large.record"
    with Store(path) as store:
        store.add(entry(number, path=f"case.{number % 9}.width") for number in range(1, 2400))
        facts = facts_of(store.held())
    content = bytearray(path.read_bytes())
    for at in range(len(content) - 1, 0, -1):
        if content[at : at + 12] == b'"path":"case':
            content[at + 9] ^= 1
            break
    path.write_bytes(content)
    Store(path).close()
    held, rescue = with_store(path, Store.held)
    assert rescue is not None
    assert {path: facts[path] for path in facts_of(held)} != {}
    assert rescue.kept == 2398
