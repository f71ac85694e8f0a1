"""Entries that pages send: kept once each, doubted where they are hard to believe."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count
from pathlib import Path

from casewright.errors import CasewrightError
from casewright.job.recorded import entry_named, read_entries, with_record
from casewright.job.recording import Said, draft
from casewright.job.writer import Writer, this_writer
from casewright.record import KINDS, Entry, RecordError
from casewright.web.schema import EntryAnswer, EntryIn
from casewright.web.snapshot import Snapshot

__all__ = ["MOST_ENTRIES", "take_entries"]

MOST_ENTRIES = 200
"""Taken in one request [-]."""


def take_entries(
    snapshot: Snapshot, path: Path, given: Sequence[EntryIn]
) -> tuple[EntryAnswer, ...]:
    """Put entries into the record of a job, each whole or not at all, in their order.

    Parameters
    ----------
    snapshot
        The job as it is now: what entries may be about, and what sizes are to be expected.
    path
        The job file.
    """
    there = {entry.id for entry in read_entries(path)[0]}
    return tuple(_answers(snapshot, path, given, there))


def _answers(
    snapshot: Snapshot, path: Path, given: Sequence[EntryIn], there: set[str]
) -> Iterator[EntryAnswer]:
    for each in given:
        first = _id_of(each.id, 0)
        if first in there:
            yield EntryAnswer(id=each.id, became="there")
            continue
        try:
            answer = _take(snapshot, path, each)
        except CasewrightError as error:
            problems = error.problems
            says = tuple(problem.what for problem in problems)
            answer = EntryAnswer(
                id=each.id, became="refused", says=says, want=problems[0].want if problems else ""
            )
        if answer.became == "kept":
            there.add(first)
        yield answer


def _take(snapshot: Snapshot, path: Path, given: EntryIn) -> EntryAnswer:
    kind = next((kind for kind in KINDS if kind == given.kind), None)
    if kind is None:
        what = f"{given.kind} is nothing that can be recorded"
        raise RecordError.of(what, f"use one of {', '.join(KINDS)}")
    corrects = None if not given.corrects else _entry(path, given.corrects)
    said = Said(
        kind, tuple(given.words), size=given.size, tool=given.tool, within=given.within,
        note=given.note, corrects=corrects,
    )  # fmt: skip
    drafts = draft(snapshot.worked.room, snapshot.recorded.facts, said, _writer(given))
    if drafts.doubts and not given.sure:
        return EntryAnswer(id=given.id, became="doubted", says=drafts.doubts)
    new, _ = with_record(path, lambda store: store.add(drafts.entries))
    return EntryAnswer(id=given.id, became="kept" if new else "there")


def _writer(given: EntryIn) -> Writer:
    """Who writes: the page's device by its name, with ids that follow from the entry's own."""
    numbers = count()
    here = this_writer()
    named = "".join(c for c in given.device if c.isprintable()).strip()[:60]
    return replace(
        here, device=named or here.device, new_id=lambda: _id_of(given.id, next(numbers))
    )


def _id_of(given: str, number: int) -> str:
    """Id of one of the entries that something said amounts to: the same each time it is sent."""
    return hashlib.sha256(f"{given} {number}".encode()).hexdigest()[:32]


def _entry(path: Path, name: str) -> Entry:
    """An entry by its id, or by the id that a page gave it."""
    entries, _ = read_entries(path)
    own = _id_of(name, 0)
    found = next((entry for entry in entries if entry.id == own), None)
    return found or entry_named(name, entries)
