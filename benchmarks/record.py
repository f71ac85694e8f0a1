"""The record: what a long history costs to open, and one entry to write.

Run with `python benchmarks/record.py`. The target: a record of 100,000 entries costs no more than
twice a fresh one to open. The fresh one holds the same pieces, each marked and read once, so that
both say as much about how things are now. Writing is against one bare insert, made as safe.
"""

from __future__ import annotations

import platform
import sqlite3
import statistics
import tempfile
import time
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from fractions import Fraction
from pathlib import Path

from casewright.record import Entry, Store, facts_of, marks_of, with_store

TARGET = 2
ENTRIES = 100_000
PIECES = 500
ROUNDS = 15
DAWN = datetime(2026, 5, 12, 8, tzinfo=UTC)


def history(entries: int) -> list[Entry]:
    """Readings of the same pieces over and over, each piece marked cut once."""
    found = []
    for number in range(entries):
        at, path = DAWN + timedelta(seconds=number), f"case_{number % PIECES}.side_left"
        cut = number < PIECES
        size = Fraction(700 + number % 7)
        found.append(
            Entry(
                f"e{number}",
                "desk",
                number + 1,
                at,
                "cut" if cut else "reading",
                path if cut else f"{path}.width",
                sizes=(("length", size), ("width", size)) if cut else (("", size),),
                tool="tape",
            )
        )
    return found


def median(work: Callable[[], object]) -> float:
    """Of several rounds, the first not counted [s]."""
    work()
    seconds = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        work()
        seconds.append(time.perf_counter() - start)
    return statistics.median(seconds)


def open_and_close(path: Path) -> None:
    """Open as a command does, and leave."""
    Store(path).close()


def facts(path: Path) -> object:
    """Open and know how things are now."""
    held, _ = with_store(path, Store.held)
    return facts_of(held), marks_of(held)


def one_more(path: Path, entry: Callable[[int], Entry]) -> float:
    """One entry [s]."""
    with Store(path) as store:
        numbers = iter(range(10**6))
        return median(lambda: store.add([entry(next(numbers))]))


def bare_insert(path: Path) -> float:
    """One row into a bare table, as safe [s]."""
    connection = sqlite3.connect(path, isolation_level=None)
    connection.execute("PRAGMA synchronous = EXTRA")
    connection.execute("CREATE TABLE t (n INTEGER PRIMARY KEY, body TEXT)")
    took = median(lambda: connection.execute("INSERT INTO t (body) VALUES (?)", ("x" * 200,)))
    connection.close()
    return took


def row(what: str, seconds: float, ratio: float, against: str) -> None:
    """Print a line."""
    print(f"{what:<44}{seconds * 1000:>10.2f}{ratio:>8.2f}  {against}")


def opening(empty: Path, fresh: Path, long: Path) -> None:
    """What opening costs, without and with the facts."""
    least, usual = median(lambda: open_and_close(empty)), median(lambda: open_and_close(fresh))
    far = median(lambda: open_and_close(long))
    row("open an empty record", least, 1, "")
    row(f"open one of {2 * PIECES:,} entries", usual, usual / least, "empty; all looked at")
    row(f"open one of {ENTRIES:,}", far, far / least, f"empty; target {TARGET}")
    new, old = median(lambda: facts(fresh)), median(lambda: facts(long))
    row(f"open, facts of {2 * PIECES:,} entries", new, 1, "")
    row(f"open, facts of {ENTRIES:,}", old, old / new, f"fresh; target {TARGET}")
    with Store(long) as store:
        seconds = once(store.check)
    row(f"look at all {ENTRIES:,}", seconds, seconds / old, "open, facts")


def writing(long: Path) -> None:
    """What one entry costs."""
    bare = bare_insert(long.with_name("bare"))

    def note(number: int) -> Entry:
        return Entry(f"n{number}", "desk", 0, DAWN, "note", "", note="x" * 60)

    def mark(number: int) -> Entry:
        return Entry(f"m{number}", "desk", 0, DAWN, "assembled", f"case_{number}.shelf.1")

    row("one bare insert", bare, 1, "")
    for what, entry in (("a note", note), ("a mark", mark)):
        seconds = one_more(long, entry)
        row(f"write {what} into {ENTRIES:,}", seconds, seconds / bare, "one bare insert")


def once(work: Callable[[], object]) -> float:
    """One run [s]."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def main() -> None:
    """Print the tables."""
    machine = f"Python {platform.python_version()}, {platform.machine()}"
    print(f"{machine}, SQLite {sqlite3.sqlite_version}")
    with tempfile.TemporaryDirectory() as folder:
        empty, fresh, long = (Path(folder) / f"{name}.record" for name in ("empty", "new", "long"))
        Store(empty).close()
        with Store(fresh) as store:
            store.add(history(2 * PIECES))
        with Store(long) as store:
            took = once(lambda: store.add(history(ENTRIES)))
        size = long.stat().st_size / 1e6
        print(f"{ENTRIES:,} entries, {size:.0f} MB, put in at once in {took:.1f} s")
        print(f"{'what':<44}{'ms':>10}{'ratio':>8}  against")
        opening(empty, fresh, long)
        writing(long)


if __name__ == "__main__":
    main()
