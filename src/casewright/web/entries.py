"""Entries that pages send: kept once each, doubted where they are hard to believe.

Pages that send at the same time are taken together: one look at the record, one transaction. An
entry is answered `kept` only when it lies on the disk.
"""

from __future__ import annotations

import hashlib
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from dataclasses import replace
from itertools import count

from casewright.errors import CasewrightError
from casewright.facts import Facts
from casewright.job.recorded import entry_named, record_path, room_with, with_record
from casewright.job.recording import Said, draft
from casewright.job.targets import Targets
from casewright.job.writer import Writer, this_writer
from casewright.packet.words import sizes
from casewright.record import (
    KINDS,
    MARKS,
    Entry,
    RecordError,
    Store,
    facts_of,
    held,
    marks_of,
    standing,
)
from casewright.room.model import Room
from casewright.web.live_job import LiveJob
from casewright.web.schema import EntryAnswer, EntryIn
from casewright.web.shop_lines import line_of, size_text
from casewright.web.shop_now import marked_anew
from casewright.web.snapshot import Snapshot

__all__ = ["MOST_ENTRIES", "EntryDesk", "id_of"]

MOST_ENTRIES = 200
"""Taken in one request [-]."""

_MOVES = ("reading", "spoiled", "withdrawn", "offcut")
"""What changes sizes, so that marks after it need the job worked out anew."""

_COMPLETES = ("assembled", "finished", "hung")
"""Marks that also mark what must have been made before, where it is not marked yet."""

_Batch = tuple[Sequence[EntryIn], "Future[tuple[EntryAnswer, ...]]"]


class EntryDesk:
    """Takes entries, those of all pages one after another.

    Parameters
    ----------
    live
        The job that they are about.
    kept
        Called when something was written; gives the version that the job will have.
    """

    def __init__(self, live: LiveJob, kept: Callable[[], int]) -> None:
        self._live, self._kept = live, kept
        self._still: set[int] = set()  # versions in which no size is another than before
        self._lock, self._door = threading.Lock(), threading.Lock()
        self._waiting: list[_Batch] = []

    def take(self, snapshot: Snapshot, given: Sequence[EntryIn]) -> tuple[EntryAnswer, ...]:
        """Put entries into the record, each whole or not at all, in their order.

        Parameters
        ----------
        snapshot
            The job as last worked out: what entries may be about.

        Raises
        ------
        RecordError
            When the record cannot be written; nothing was.
        """
        answer: Future[tuple[EntryAnswer, ...]] = Future()
        with self._door:
            self._waiting.append((given, answer))
        with self._lock:
            with self._door:
                batches, self._waiting = self._waiting, []
            if batches:
                self._take_all(snapshot, batches)
        return answer.result()

    def _take_all(self, snapshot: Snapshot, batches: Sequence[_Batch]) -> None:
        since = range(snapshot.version + 1, self._live.version + 1)
        current = self._still.issuperset(since)

        def work(store: Store) -> tuple[list[tuple[EntryAnswer, ...]], bool]:
            clerk = _Clerk(
                snapshot, store, current=current, record=record_path(self._live.path).name
            )
            answers = [tuple(map(clerk.answer, given)) for given, _ in batches]
            store.add(clerk.new)
            return answers, clerk.moved

        try:
            with self._live.writing():
                (answers, moved), _ = with_record(self._live.path, work)
        except BaseException as error:  # whoever waits is told, whatever it was
            for _, answer in batches:
                answer.set_exception(error)
            return
        for (_, waiting), told in zip(batches, answers, strict=True):
            waiting.set_result(told)
        if any(each.became == "kept" for told in answers for each in told):
            version = self._kept()
            if not moved:
                self._still.add(version)


class _Clerk:
    """Writes entries down, each with the job as it is after those before it."""

    def __init__(self, snapshot: Snapshot, store: Store, *, current: bool, record: str) -> None:
        self._spec, self._record = snapshot.loaded.spec, record
        self._room: Room = snapshot.worked.room
        self._facts: Facts = snapshot.recorded.facts
        self._current = current
        self._is_marked = False
        self._entries = {entry.id: entry for entry in store.entries()}
        self._is_sized = False
        self.new: list[Entry] = []
        self.moved = False

    def answer(self, given: EntryIn) -> EntryAnswer:
        """What becomes of an entry."""
        if id_of(given.id, 0) in self._entries:
            return EntryAnswer(id=given.id, became="there")
        try:
            return self._taken(given)
        except CasewrightError as error:
            problems = error.problems
            says = tuple(problem.what for problem in problems)
            want = problems[0].want if problems else ""
            return EntryAnswer(id=given.id, became="refused", says=says, want=want)

    def _taken(self, given: EntryIn) -> EntryAnswer:
        self._is_sized = False
        if given.kind in MARKS and not self._current:
            self._work_out()
        elif given.kind in _COMPLETES and not self._is_marked:
            self._mark()
        doubts: list[str] = []
        new: list[Entry] = []
        for said in self._said(given, doubts):
            drafts = draft(self._room, self._facts, said, _writer(given, len(new)))
            doubts += drafts.doubts
            new += drafts.entries
        if doubts and not given.sure:
            want = "look again; say so if it is as you wrote"
            return EntryAnswer(id=given.id, became="doubted", says=tuple(doubts), want=want)
        for entry in new:
            self._entries[entry.id] = entry
        self.new += new
        self._is_marked = self._is_marked and given.kind not in MARKS
        if given.kind in _MOVES or given.corrects or self._is_sized:
            self._current, self.moved = False, True
        return EntryAnswer(id=given.id, became="kept")

    def _said(self, given: EntryIn, doubts: list[str]) -> Iterator[Said]:
        kind = next((kind for kind in KINDS if kind == given.kind), None)
        if kind is None:
            what = f"{given.kind} is nothing that can be recorded"
            raise RecordError.of(what, f"use one of {', '.join(KINDS)}")
        size = given.size or self._as_shown(given, doubts)
        self._is_sized = size != ""
        said = Said(
            kind, tuple(given.words), size=size, tool=given.tool, within=given.within,
            note=given.note,
        )  # fmt: skip
        if not given.corrects:
            yield said
            return
        old = self._corrected(given.corrects)
        for entry in old if kind == "withdrawn" else old[:1]:
            yield replace(said, corrects=entry)

    def _as_shown(self, given: EntryIn, doubts: list[str]) -> str:
        """The size that a piece was cut to where that is not what it is to be cut to by now."""
        if given.kind != "cut" or not given.shown:
            return ""
        shown = _plain(given.shown)
        for word in given.words:
            for part in Targets(self._room).parts(word):
                blank = sizes(part.blank.length, part.blank.width, unit=self._room.spec.unit)
                now = _plain(size_text(line_of(blank)))
                if now != shown:
                    doubts.append(
                        f"{part.mark} {part.title} was shown as {shown}; by now it is to be {now}"
                    )
                    return shown
        return ""

    def _corrected(self, name: str) -> list[Entry]:
        """What a page wrote under an id of its own, all of it; or an entry by its id."""
        found: list[Entry] = []
        for number in count():
            entry = self._entries.get(id_of(name, number))
            if entry is None:
                break
            found.append(entry)
        return found or [entry_named(name, tuple(self._entries.values()))]

    def _work_out(self) -> None:
        entries = self._in_order()
        self._room = room_with(self._spec, entries, self._record)
        self._facts = facts_of(held(standing(entries)), self._record)
        self._current = self._is_marked = True

    def _mark(self) -> None:
        """How far parts have come by now: no size needs to be worked out for it."""
        self._room = marked_anew(self._room, marks_of(held(standing(self._in_order()))))
        self._is_marked = True

    def _in_order(self) -> list[Entry]:
        return [
            replace(entry, seq=entry.seq or 1_000_000_000 + number)
            for number, entry in enumerate(self._entries.values())
        ]


def _plain(size: str) -> str:
    return size.replace("\u00a0", " ").replace("~", "").replace("×", "x")


def _writer(given: EntryIn, first: int) -> Writer:
    """Who writes: the page's device by its name, with ids that follow from the entry's own."""
    numbers = count(first)
    here = this_writer()
    named = "".join(c for c in given.device if c.isprintable()).strip()[:60]
    return replace(
        here, device=named or here.device, new_id=lambda: id_of(given.id, next(numbers))
    )


def id_of(given: str, number: int) -> str:
    """Id of one of the entries that something said amounts to: the same each time it is sent."""
    return hashlib.sha256(f"{given} {number}".encode()).hexdigest()[:32]
