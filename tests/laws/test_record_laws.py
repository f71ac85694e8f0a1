"""Laws of the record: what stands hangs on the set of entries alone, and nothing is ever lost."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.record_entries import PATHS, histories

from casewright.record import (
    Entry,
    Marks,
    Store,
    as_of,
    entries_of_lines,
    entries_of_table,
    facts_of,
    held,
    lines_of,
    marks_of,
    offcuts_of,
    standing,
    table_of,
)
from casewright.record.codec import body_of, entry_of_body


@contextmanager
def _store() -> Iterator[Store]:
    with tempfile.TemporaryDirectory() as folder, Store(Path(folder) / "job.record") as store:
        yield store


def _furthest(marks: Marks) -> dict[str, str | None]:
    return {path: marks.furthest(path) for path in PATHS}


def _state(entries: list[Entry] | tuple[Entry, ...]) -> tuple[object, ...]:
    found = standing(entries)
    return found, dict(facts_of(found)), _furthest(marks_of(found)), offcuts_of(found)


@settings(max_examples=40)
@given(histories(), st.randoms())
def test_the_order_of_arrival_does_not_matter(history: list[Entry], chance: object) -> None:
    shuffled = list(history)
    chance.shuffle(shuffled)  # type: ignore[attr-defined]
    assert _state(shuffled) == _state(history)


@settings(max_examples=40)
@given(histories())
def test_sending_twice_is_sending_once(history: list[Entry]) -> None:
    assert _state(history + history) == _state(history)


@settings(max_examples=40)
@given(histories(), st.data())
def test_a_prefix_shows_the_earlier_state(history: list[Entry], data: st.DataObject) -> None:
    """Written in order, the state after n entries is the state as of the n-th one."""
    ordered = sorted(history, key=lambda each: each.order)
    count = data.draw(st.integers(1, len(ordered)))
    assert _state(as_of(history, ordered[count - 1])) == _state(ordered[:count])
    last = ordered[count - 1].at
    assert _state(as_of(history, last)) == _state([e for e in ordered if e.at <= last])


@settings(max_examples=40)
@given(histories())
def test_what_is_held_says_all_that_the_history_says(history: list[Entry]) -> None:
    """The few entries that are read at the start yield the facts of the whole history."""
    found = standing(history)
    few = held(found)
    assert facts_of(few) == facts_of(found)
    assert _furthest(marks_of(few)) == _furthest(marks_of(found))
    assert {e.id for e in offcuts_of(few)} <= {e.id for e in offcuts_of(found)}


@settings(max_examples=40)
@given(histories())
def test_a_table_and_lines_come_back_as_they_went(history: list[Entry]) -> None:
    assert list(entries_of_table(table_of(history), "in", "record.csv")) == history
    for unit in ("in", "mm"):
        assert list(entries_of_lines(lines_of(history, unit), "mm", "record.jsonl")) == history


@settings(max_examples=40)
@given(histories())
def test_the_kept_form_is_exact(history: list[Entry]) -> None:
    assert [entry_of_body(body_of(each)) for each in history] == history


@settings(max_examples=15)
@given(histories(), st.data())
def test_a_store_holds_what_was_put_in(history: list[Entry], data: st.DataObject) -> None:
    """In any order, in any portions, with anything sent again."""
    with _store() as store:
        order = data.draw(st.permutations(history))
        cut = data.draw(st.integers(0, len(order)))
        store.add(order[:cut])
        new = store.add(order)
        assert list(new) == order[cut:]
        assert store.add(history) == ()
        assert sorted(e.id for e in store.entries()) == sorted(e.id for e in history)
        assert facts_of(store.held()) == facts_of(standing(history))
        assert _furthest(marks_of(store.held())) == _furthest(marks_of(standing(history)))
        store.check()


@settings(max_examples=10)
@given(histories())
def test_exported_then_imported_is_an_equal_record(history: list[Entry]) -> None:
    with _store() as first, _store() as second:
        first.add(history)
        second.add(entries_of_table(table_of(first.entries()), "mm", "record.csv"))
        assert set(second.entries()) == set(first.entries())
        assert second.held() == first.held()
