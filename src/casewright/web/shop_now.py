"""What the record says now, for pages that tick things off: read from the record alone."""

from __future__ import annotations

import threading
from collections.abc import Iterable, Iterator
from dataclasses import replace

from casewright.casework.parts import Part
from casewright.dims import Measure, format_length
from casewright.job.record_documents import chosen
from casewright.job.recorded import marked, read_entries, record_path
from casewright.record import Entry, Marks, Standing, facts_of, held, marks_of, standing
from casewright.room.model import Room
from casewright.web.live_job import LiveJob
from casewright.web.shop_home import home_of
from casewright.web.shop_lines import line_of
from casewright.web.shop_notes import ticks_off
from casewright.web.shop_schema import ShopEntry, ShopNow
from casewright.web.watching import Stamp, stamp

__all__ = ["NowReader", "entries_about", "marked_anew"]

_MOST = 30


class NowReader:
    """Reads the record once for each change of it, however many ask."""

    def __init__(self, live: LiveJob) -> None:
        self._live = live
        self._lock = threading.Lock()
        self._read: tuple[Stamp, tuple[Entry, ...]] | None = None
        self._last: tuple[tuple[Stamp, int], ShopNow] | None = None

    def now(self, room: Room, version: int) -> ShopNow:
        """How things are.

        Parameters
        ----------
        room
            As last worked out: which parts there are.
        version
            Of it.
        """
        with self._lock:
            key = (stamp((record_path(self._live.path),)), version)
            if self._read is None or self._read[0] != key[0]:
                self._read = (key[0], read_entries(self._live.path)[0])
            if self._last is None or self._last[0] != key:
                self._last = (key, _now(home_of(self._live.path), self._read[1], room))
            return self._last[1]


def _now(home: str, entries: tuple[Entry, ...], room: Room) -> ShopNow:
    stands = standing(entries)
    found = held(stands)
    marks = marks_of(found)
    parts = marked_anew(room, marks).parts
    gone = set(marks.spoiled)
    states = {part.path: part.state for part in parts if part.state != "planned"}
    return ShopNow(
        home=home,
        entries=len(entries),
        states=dict(states),
        noted=tuple(_noted(stands)),
        spoiled=tuple(
            part.path for part in parts if part.path in gone and part.path not in states
        ),
        read={
            path: line_of(Measure(fact.built, room.spec.unit, path))
            for path, fact in facts_of(found).items()
            if fact.built is not None
        },
    )


def marked_anew(room: Room, marks: Marks) -> Room:
    """A room whose parts have come as far as marks say, whatever they said before."""
    return marked(_unmarked(room), marks)


def _unmarked(room: Room) -> Room:
    def plain(part: Part) -> Part:
        return replace(part, state="planned")

    cases = {case.key: replace(case, parts=tuple(map(plain, case.parts))) for case in room.cases}
    runs = tuple(run.with_parts(plain).with_cases(cases) for run in room.runs)
    return replace(room, cases=tuple(cases.values()), runs=runs)


def _noted(stands: Iterable[Standing]) -> Iterator[str]:
    for each in stands:
        if ticks_off(each.entry):
            yield each.entry.note


def entries_about(live: LiveJob, room: Room, about: str) -> tuple[ShopEntry, ...]:
    """What stands about a thing and what is in it, the newest first."""
    entries, _ = read_entries(live.path)
    stands = [each.entry for each in standing(entries)]
    found = chosen(stands, (about,)) if about else tuple(stands)
    return tuple(_told(entry, room) for entry in list(found)[::-1][:_MOST])


def _told(entry: Entry, room: Room) -> ShopEntry:
    unit = room.spec.unit
    sizes = sorted(entry.sizes, key=lambda each: not each[0].endswith("length"))
    shown = " × ".join(format_length(size, unit) for _, size in sizes[:2])
    says = [
        word
        for word in (shown if entry.kind in ("reading", "cut", "offcut") else "", entry.note)
        if word
    ]
    return ShopEntry(
        id=entry.id, kind=entry.kind, path=entry.path, says=", ".join(says),
        device=entry.device, at=entry.at.isoformat(timespec="seconds"),
    )  # fmt: skip
