"""Whatever is sent or typed into the record is taken whole or refused in words."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from functools import cache
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.jobs import FIVE_LINES, read
from tests.record_entries import histories

from casewright.facts import NO_FACTS
from casewright.job.recording import Said, draft
from casewright.job.writer import Writer
from casewright.record import (
    KINDS,
    Entry,
    RecordError,
    entries_of_lines,
    entries_of_table,
    lines_of,
    table_of,
)
from casewright.record.codec import body_of, entry_of_body
from casewright.record.entry_reader import FIELDS, read_entry
from casewright.room.build import build
from casewright.room.model import Room

_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner),
    max_leaves=6,
)
_LIKELY = st.sampled_from(
    ["e1", "desk", "2026-05-12T09:30:00Z", "0001-01-01T00:00:00+23:59", "sink.width", "33 1/16",
     "1/0", "-3", "1e9", {"mm": "3302/5"}, {"mm": "1/0"}, {"length": "1", "width": 2}, "٣", "0x1F"]
)  # fmt: skip


def _is_told(error: RecordError) -> None:
    """In words, a line each, with what would be right."""
    assert error.problems
    assert all(problem.what and problem.want for problem in error.problems)
    assert all(line.isprintable() for line in str(error).split("\n"))


def _kept_or_refused(data: object) -> None:
    try:
        entry = read_entry(data, "in", "phone.jsonl", 3)
    except RecordError as error:
        _is_told(error)
        return
    assert entry_of_body(body_of(entry)) == entry


@settings(max_examples=150)
@given(
    st.dictionaries(st.sampled_from([*FIELDS, "more"]), _VALUES | _LIKELY | st.sampled_from(KINDS))
)
def test_any_object_is_an_entry_or_is_refused(data: dict[str, Any]) -> None:
    usual = {"id": "e1", "device": "desk", "at": "2026-05-12T09:30:00Z", "kind": "note"}
    _kept_or_refused(data)
    _kept_or_refused({**usual, **data})


@settings(max_examples=60)
@given(_VALUES | st.binary(max_size=80).map(repr))
def test_any_value_is_an_entry_or_is_refused(data: object) -> None:
    _kept_or_refused(data)


@settings(max_examples=60)
@given(histories(most=3), st.data())
def test_a_file_with_something_in_it_changed_is_read_or_refused(
    history: list[Entry], data: st.DataObject
) -> None:
    for written, reader in (
        (table_of(history), entries_of_table),
        (lines_of(history, "in"), entries_of_lines),
    ):
        content = bytearray(written)
        for _ in range(data.draw(st.integers(1, 3))):
            at = data.draw(st.integers(0, len(content) - 1))
            content[at : at + data.draw(st.integers(0, 2))] = data.draw(st.binary(max_size=3))
        try:
            reader(bytes(content), "in", "phone")
        except RecordError as error:
            _is_told(error)


@settings(max_examples=60)
@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused(content: bytes) -> None:
    for reader in (entries_of_table, entries_of_lines):
        try:
            assert reader(content, "in", "phone") == ()
        except RecordError as error:
            _is_told(error)


@cache
def _room() -> Room:
    return build(read(FIVE_LINES))


_WORDS = st.text(max_size=10) | st.sampled_from(
    ["upper", "upper.width", "upper.bottom", "3", "99", "33 1/16", "33", "1/16", "plywood",
     "24 x 18", "24", "x", "45", "-1", "upper.door_left", "style.gap",
     "stock.plywood.thickness", "0.703"]
)  # fmt: skip


@settings(max_examples=150)
@given(st.sampled_from(KINDS), st.lists(_WORDS, max_size=4), _WORDS, _WORDS, st.booleans())
def test_any_words_are_written_down_or_refused(
    kind: Any, words: list[str], size: str, note: str, with_size: bool
) -> None:
    numbers = iter(range(100))
    now = datetime(2026, 5, 12, 9, 30, tzinfo=UTC)
    writer = Writer("bench", now, lambda: f"e{next(numbers)}")
    said = Said(kind, tuple(words), size=size if with_size else "", note=note)
    try:
        drafts = draft(_room(), NO_FACTS, said, writer)
    except RecordError as error:
        _is_told(error)
        return
    assert drafts.entries
    for entry in drafts.entries:
        assert entry.kind in (kind, "machined")
        assert list(entries_of_lines(lines_of([entry], "in"), "in", "x")) == [entry]
        assert json.loads(body_of(entry))["at"] == "2026-05-12T09:30:00+00:00"
