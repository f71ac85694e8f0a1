"""Writers killed at any moment: nothing acknowledged is lost, nothing is half there."""

from __future__ import annotations

import os
import random  # noqa: TID251 - seeded
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time
import warnings
from datetime import UTC, datetime
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from casewright.record import Entry, Store, standing, with_store

WRITES = 250
"""Pairs of entries, by each of two writers."""
KILLS = 10
"""So often, however slow the one who kills is: no writer gets to its end before."""
STATEMENTS = range(30, 100)
"""That it takes to make a record and to put three entries in."""

WRITER = """
import sys
import time
from datetime import UTC, datetime, timedelta
from fractions import Fraction
from pathlib import Path
from casewright.record import Entry, Store
path, device, first, last = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
store = Store(path)
print(first - 1, flush=True)
for number in range(first, last):
    at = datetime(2026, 5, 12, tzinfo=UTC) + timedelta(seconds=number)
    pair = [
        Entry(f"{device}-{number}-{half}", device, 0, at, "reading", f"{device}.part.{number % 7}",
              sizes=(("width", Fraction(number)),), note="x" * (number % 900))
        for half in "ab"
    ]
    store.add(pair)
    print(number, flush=True)
    time.sleep(0.001)
"""


class _Writer:
    """A process that puts pairs of entries in and tells of each when it is there."""

    def __init__(self, path: Path, device: str) -> None:
        self.path, self.device, self.told = path, device, -1
        self.process: subprocess.Popen[str] | None = None

    def start(self, most: int) -> None:
        """Begin after what it told of, to write so many pairs at most."""
        first = self.told + 1
        words = [sys.executable, "-c", WRITER, str(self.path), self.device]
        self.process = subprocess.Popen(  # noqa: S603 - our own program
            [*words, str(first), str(min(first + most, WRITES))], stdout=subprocess.PIPE, text=True
        )

    def go(self) -> None:
        """Wait until it is about to write."""
        assert self.process is not None
        assert self.process.stdout is not None
        self._hear(self.process.stdout.readline())

    def kill(self) -> None:
        assert self.process is not None
        self.process.send_signal(signal.SIGKILL)

    def end(self) -> None:
        assert self.process is not None
        told, _ = self.process.communicate()
        for line in told.splitlines(keepends=True):
            self._hear(line)

    def _hear(self, line: str) -> None:
        if line.endswith("\n"):
            self.told = int(line)

    @property
    def is_done(self) -> bool:
        return self.told == WRITES - 1


@pytest.fixture
def quick_folder(tmp_path: Path) -> Path:
    """In memory where there is such a disk: a kill asks nothing of the disk, and syncs cost."""
    memory = Path("/dev/shm")  # noqa: S108
    if not os.access(memory, os.W_OK):
        return tmp_path
    return Path(tempfile.mkdtemp(prefix="casewright-", dir=memory))


def test_two_writers_killed_again_and_again(quick_folder: Path) -> None:
    path, chance = quick_folder / "job.record", random.Random(7)  # noqa: S311
    writers = (_Writer(path, "desk"), _Writer(path, "phone"))
    kills = 0
    try:
        while not all(writer.is_done for writer in writers):
            for writer in writers:
                writer.start(WRITES // KILLS if kills < KILLS else WRITES)
            for writer in writers:
                writer.go()
            if kills < KILLS:
                time.sleep(chance.random() * 0.05)
                for writer in writers:
                    writer.kill()
            for writer in writers:
                writer.end()
            kills += 1
            _check(path, writers)
    finally:
        for file in quick_folder.glob("*"):
            file.unlink()
        if quick_folder.name.startswith("casewright-"):
            quick_folder.rmdir()
    assert kills >= KILLS


def _check(path: Path, writers: tuple[_Writer, ...]) -> None:
    with Store(path) as store:
        store.check()
        entries, held = store.entries(), store.held()
    there: dict[tuple[str, int], list[Entry]] = {}
    for entry in entries:
        device, number, _ = entry.id.split("-")
        there.setdefault((device, int(number)), []).append(entry)
    for writer in writers:
        acknowledged = {(writer.device, number) for number in range(writer.told + 1)}
        assert acknowledged <= set(there)
    assert all(len(pair) == 2 for pair in there.values())
    counts = {
        device: sorted(e.seq for e in entries if e.device == device)
        for device in _devices(entries)
    }
    assert all(seqs == list(range(1, len(seqs) + 1)) for seqs in counts.values())
    assert {each.entry.path for each in held} == {each.entry.path for each in standing(entries)}


def _devices(entries: tuple[Entry, ...]) -> set[str]:
    return {entry.device for entry in entries}


def test_killed_at_any_statement_all_of_it_is_there_or_nothing(tmp_path: Path) -> None:
    """A process dies at each statement in turn of putting three entries in; then they go in."""
    at = datetime(2026, 5, 12, tzinfo=UTC)
    some = [
        Entry(f"desk-{n}", "desk", 0, at, "reading", "case.width", sizes=(("", Fraction(n)),))
        for n in range(3)
    ]
    for number in range(1, STATEMENTS.stop):
        path = tmp_path / f"job-{number}.record"
        child = _forked()
        if not child:
            _put_in(path, some, number)
        ended = os.waitpid(child, 0)[1]
        with Store(path) as store:
            store.check()
            there = len(store.entries())
            store.add(some)
            assert [entry.id for entry in store.entries()] == [entry.id for entry in some]
        if not ended:
            assert number in STATEMENTS
            assert there == len(some)
            return
        assert ended == signal.SIGKILL
        assert there in (0, len(some))
        with_store(path, Store.entries)
        assert not list(tmp_path.glob(".record.*"))
    pytest.fail("no process lived to its end")


def _forked() -> int:
    """Fork, where other threads only wait: later Pythons warn of that."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        return os.fork()


def _put_in(path: Path, entries: list[Entry], number: int) -> None:
    """Put entries in; this process is killed when the database was given so many statements."""
    left, connect = [number], sqlite3.connect

    def count(_: str) -> None:
        left[0] -= 1
        if not left[0]:
            os.kill(os.getpid(), signal.SIGKILL)

    def traced(*args: Any, **more: Any) -> sqlite3.Connection:
        connection: sqlite3.Connection = connect(*args, **more)
        connection.set_trace_callback(count)
        return connection

    code = 1
    try:
        sqlite3.connect = traced  # type: ignore[assignment]
        with Store(path) as store:
            store.add(entries)
        code = 0
    finally:
        os._exit(code)
