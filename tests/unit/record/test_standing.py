"""What stands after corrections, withdrawals and spoiled pieces, rule by rule."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta
from fractions import Fraction
from typing import Any

from tests.record_entries import DAWN, entry

from casewright.record import Entry, facts_of, marks_of, offcuts_of, standing


def _read(number: int, size: int, **more: Any) -> Entry:
    return entry(number, sizes=(("", Fraction(size)),), **more)


def _built(entries: Iterable[Entry], path: str = "sink.width") -> Fraction | None:
    fact = facts_of(standing(entries)).get(path)
    return fact.built if fact else None


def test_the_later_reading_counts_by_its_date_not_by_its_arrival() -> None:
    early, late = _read(1, 800), _read(2, 801)
    assert _built([early, late]) == _built([late, early]) == 801


def test_of_one_moment_the_device_counts_then_its_own_number() -> None:
    desk, phone = (_read(n, 800 + n, at=DAWN, device=d) for n, d in ((2, "desk"), (1, "phone")))
    assert _built([phone, desk]) == 801
    again = _read(3, 803, at=DAWN, device="desk")
    assert _built([again, desk]) == 803


def test_a_correction_is_no_newer_than_what_it_corrects() -> None:
    """The second reading stays the later one, whenever the first is put right."""
    entries = [_read(1, 800), _read(2, 801), _read(3, 799, corrects="e1")]
    assert _built(entries) == 801
    assert _built([entries[0], entries[2]]) == 799


def test_the_last_of_several_corrections_counts() -> None:
    entries = [_read(1, 800), _read(2, 801, corrects="e1"), _read(3, 802, corrects="e1")]
    assert _built(entries) == 802
    assert _built([*entries, entry(4, "withdrawn", corrects="e3")]) == 801


def test_a_correction_is_corrected_in_turn() -> None:
    entries = [_read(1, 800), _read(2, 801, corrects="e1"), _read(3, 802, corrects="e2")]
    assert _built(entries) == 802
    assert _built([*entries, entry(4, "withdrawn", corrects="e2")]) == 800


def test_what_is_withdrawn_is_gone_until_that_is_withdrawn() -> None:
    entries = [_read(1, 800), _read(2, 801), entry(3, "withdrawn", corrects="e2")]
    assert _built(entries) == 800
    assert _built([*entries, entry(4, "withdrawn", corrects="e3")]) == 801


def test_a_correction_of_another_thing_or_of_nothing_is_an_entry_like_any_other() -> None:
    other = _read(2, 700, path="sink.depth", corrects="e1")
    assert _built([_read(1, 800), other]) == 800
    assert _built([other], "sink.depth") == 700
    assert _built([_read(1, 800), entry(3, "cut", corrects="e1")]) == 800
    assert _built([_read(2, 801, corrects="lost")]) == 801


def test_corrections_in_a_circle_correct_nothing() -> None:
    circle = [_read(1, 800, corrects="e2"), _read(2, 801, corrects="e1")]
    assert _built(circle) == 801
    tail = _read(3, 802, corrects="e1")
    assert _built([*circle, tail]) == 801  # e3 in the place of e1, before e2


def test_a_spoiled_piece_takes_along_what_was_read_on_it_before() -> None:
    side = "sink.side_left"
    before = [
        entry(1, "cut", side),
        _read(2, 501, path=f"{side}.width"),
        _read(3, 502, path="sink.width"),
        entry(4, "machined", "sink.side_leftmost", sizes=(("width", Fraction(9)),)),
    ]
    spoiled = [*before, entry(5, "spoiled", side)]
    facts = facts_of(standing(spoiled))
    assert set(facts) == {"sink.width", "sink.side_leftmost.width"}
    assert marks_of(standing(spoiled)).furthest(side) is None
    anew = [*spoiled, entry(6, "cut", side, sizes=(("width", Fraction(499)),))]
    assert facts_of(standing(anew))[f"{side}.width"].cut == 499
    assert facts_of(standing(anew))[f"{side}.width"].built is None
    assert marks_of(standing(anew)).furthest(side) == "cut"


def test_a_mark_on_the_box_counts_for_its_pieces_since_they_were_spoiled() -> None:
    entries = [entry(1, "cut", "sink.shelf.1"), entry(2, "assembled", "sink")]
    marks = marks_of(standing([*entries, entry(3, "spoiled", "sink.shelf.1")]))
    assert marks.furthest("sink.shelf.1") is None
    assert marks.furthest("sink.shelf.2") == "assembled"
    assert marks.furthest("sink.shelf.2", without=("sink",)) is None
    again = [*entries, entry(3, "spoiled", "sink.shelf.1"), entry(4, "assembled", "sink")]
    assert marks_of(standing(again)).furthest("sink.shelf.1") == "assembled"


def test_a_reading_goes_before_a_cut_size_and_tells_who_read_it() -> None:
    read = _read(1, 501, path="sink.side_left.width", tool="calliper", u=Fraction(1, 20))
    facts = facts_of(standing([read, entry(2, "cut", "sink.side_left")]), "kitchen.record")
    fact = facts["sink.side_left.width"]
    assert fact.built == 501
    assert fact.cut == 502
    assert fact.origin.kind == "measured"
    assert fact.origin.note == "calliper, 12 May 2026"
    assert fact.origin.where == "kitchen.record"
    (cause,) = fact.causes
    assert (cause.sigma, cause.limit) == (Fraction(1, 20), Fraction(1, 10))  # JCGM 100: k = 2


def test_an_offcut_is_there_until_it_is_used_up() -> None:
    kept = [entry(1, "offcut"), entry(2, "offcut")]
    assert [e.id for e in offcuts_of(standing(kept))] == ["e1", "e2"]
    used = entry(3, "spoiled", "offcut.e1", at=DAWN + timedelta(hours=1))
    assert [e.id for e in offcuts_of(standing([*kept, used]))] == ["e2"]
