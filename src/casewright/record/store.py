"""The store: entries put in whole, never changed, by as many writers as there are.

Writes are transactions of SQLite with `synchronous=EXTRA`: when `add` returns, its entries survive
a kill, and a power cut as far as the disk tells the truth.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from casewright.record.codec import LONGEST_BODY, body_of, entry_of_body, sealed, unsealed
from casewright.record.connection import connect, create, identity, telling
from casewright.record.entry import HELD_KINDS, Entry
from casewright.record.errors import DamageError, RecordError
from casewright.record.folder_lock import sharing
from casewright.record.layout import mixed
from casewright.record.standing import Standing, held, standing

__all__ = ["SMALL", "Store"]

SMALL = 2000
"""Up to so many entries all of them are looked at when the store is opened."""

_Row = tuple[int, str]


class Store:
    """An open record. Use it in a `with`, or close it.

    Parameters
    ----------
    path
        Its file; made when it is not there.

    Raises
    ------
    DamageError
        When it is not as it was written.
    RecordError
        When it cannot be opened or made.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        if not path.exists():
            create(path)
        self._connection = connect(path)
        self._file = identity(path)
        try:
            with telling(self.path):
                self._look_over()
        except BaseException:
            self._connection.close()
            raise

    def __enter__(self) -> Store:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Leave it."""
        with telling(self.path):
            self._connection.close()

    def add(self, entries: Iterable[Entry]) -> tuple[Entry, ...]:
        """Put entries in, all of them or none.

        Parameters
        ----------
        entries
            Those with `seq` 0 are numbered; one that is there already changes nothing.

        Returns
        -------
        Those that were new, as they are kept.

        Raises
        ------
        RecordError
            When another entry has the same id, one is too long, or nothing can be written.
        DamageError
            When the store is not as it was written.
        """
        with sharing(self.path.parent):
            if identity(self.path) != self._file:
                self._connection.close()
                self._connection, self._file = connect(self.path), identity(self.path)
            with telling(self.path), self._writing():
                return self._put(tuple(entries))

    def entries(self) -> tuple[Entry, ...]:
        """All entries in the order in which they arrived; each is looked at."""
        with telling(self.path), self._reading():
            return tuple(entry_of_body(body) for _, body in self._whole_rows())

    def held(self) -> tuple[Standing, ...]:
        """What says how things are now, without reading the whole history."""
        with telling(self.path), self._reading():
            entries = [entry_of_body(body) for _, body in self._held_rows()]
            paths = {entry.path for entry in entries if entry.corrects}
            places = [entry for entry in entries if entry.path not in paths]
            moved = [each for path in sorted(paths) for each in held(self._about(path))]
        found = (*(Standing(entry, entry.order) for entry in places), *moved)
        return tuple(sorted(found, key=lambda each: (each.place, each.entry.order)))

    def check(self) -> None:
        """Look at every entry and at the database itself.

        Raises
        ------
        DamageError
            When anything is not as it was written.
        """
        with telling(self.path), self._reading():
            for (line,) in self._connection.execute("PRAGMA integrity_check(1)"):
                if line != b"ok":
                    raise DamageError(self.path.name, "its pages do not hang together")
            bodies = dict(self._whole_rows())
            names = self._connection.execute("SELECT n, id, path FROM entry")
            if any(not _is_filed(bodies[n], entry, path) for n, entry, path in names):
                raise DamageError(self.path.name, "an entry does not stand under its own name")
            self._held_rows()
            self._devices()

    def _look_over(self) -> None:
        if self._sum("entry")[0] <= SMALL:
            self.check()

    def _put(self, entries: Sequence[Entry]) -> tuple[Entry, ...]:
        count, digest = self._sum("entry")
        new: list[tuple[Entry, str]] = []
        last = self._devices()
        for given in entries:
            entry = given if given.seq else replace(given, seq=1 + last.get(given.device, 0))
            body = self._body(entry)
            if self._insert(given, entry, body):
                new.append((entry, body))
                last[entry.device] = max(entry.seq, last.get(entry.device, 0))
        if new:
            self._count(last)
            digest = mixed(digest, (body for _, body in new))
            self._keep("entry", count + len(new), digest)
            self._hold({entry.path for entry, _ in new if entry.kind in _MOVING and entry.path})
        return tuple(entry for entry, _ in new)

    def _insert(self, given: Entry, entry: Entry, body: str) -> bool:
        """Whether it is new.

        Raises
        ------
        RecordError
            When another has its id.
        """
        there = self._rows("SELECT n, body FROM entry WHERE id = ?", entry.id)
        if there:
            old = entry_of_body(there[0][1])
            if (old if given.seq else replace(old, seq=0)) != given:
                want = "leave it out, or give the new one an id of its own"
                what = "another entry has this id; nothing is ever overwritten"
                raise RecordError.of(what, want, file=self.path.name, word=entry.id)
            return False
        self._connection.execute(
            "INSERT INTO entry (id, path, body) VALUES (?, ?, ?)",
            (entry.id, entry.path, sealed(body)),
        )
        return True

    def _devices(self) -> dict[str, int]:
        """The last number of each device.

        Raises
        ------
        DamageError
            When they are not as they were written.
        """
        query = "SELECT name, seq FROM device"
        try:
            last = {name.decode(): int(seq) for name, seq in self._connection.execute(query)}
        except ValueError:
            raise DamageError(self.path.name, "the counts of its devices cannot be read") from None
        count, digest = self._sum("device")
        self._compare("the counts of its devices", _told(last), count, digest)
        return last

    def _count(self, last: Mapping[str, int]) -> None:
        self._connection.executemany("INSERT OR REPLACE INTO device VALUES (?, ?)", last.items())
        self._keep("device", len(last), mixed(0, _told(last)))

    def _body(self, entry: Entry) -> str:
        body = body_of(entry)
        if len(body) > LONGEST_BODY:
            want = "write it in two notes" if entry.note else "write it as two entries"
            what = "this is too long for one entry"
            raise RecordError.of(what, want, word=entry.path)
        return body

    def _hold(self, paths: Iterable[str]) -> None:
        """Work out anew what is held of some paths."""
        count, digest = self._sum("held")
        for path in sorted(paths):
            rows = self._rows("SELECT n, body FROM entry WHERE path = ?", path)
            old = self._rows("SELECT n, body FROM entry JOIN held USING (n) WHERE path = ?", path)
            entries = {entry_of_body(body): (n, body) for n, body in rows}
            new = [entries[each.entry] for each in held(standing(entries))]
            self._connection.executemany("DELETE FROM held WHERE n = ?", [(n,) for n, _ in old])
            self._connection.executemany("INSERT INTO held VALUES (?)", [(n,) for n, _ in new])
            digest = mixed(digest, (body for _, body in (*old, *new)))
            count += len(new) - len(old)
        self._keep("held", count, digest)

    def _about(self, path: str) -> tuple[Standing, ...]:
        rows = self._rows("SELECT n, body FROM entry WHERE path = ?", path)
        return standing(entry_of_body(body) for _, body in rows)

    def _whole_rows(self) -> list[_Row]:
        count, digest = self._sum("entry")
        rows = self._rows("SELECT n, body FROM entry ORDER BY n")
        self._compare("its entries", [body for _, body in rows], count, digest)
        return rows

    def _held_rows(self) -> list[_Row]:
        count, digest = self._sum("held")
        rows = self._rows("SELECT n, body FROM held JOIN entry USING (n)")
        self._compare("the entries held", [body for _, body in rows], count, digest)
        return rows

    def _rows(self, query: str, *values: str) -> list[_Row]:
        """Numbers and bodies of entries, each as it was sealed."""
        found: list[_Row] = []
        for n, text in self._connection.execute(query, values):
            body = unsealed(text) if isinstance(text, bytes) else None
            if body is None:
                raise DamageError(self.path.name, f"entry {n} is not as it was written")
            found.append((n, body))
        return found

    def _compare(self, what: str, texts: Sequence[str], count: int, digest: int) -> None:
        if len(texts) != count or mixed(digest, texts):
            raise DamageError(self.path.name, f"{what} do not agree with their sum")

    def _sum(self, table: str) -> tuple[int, int]:
        row = self._connection.execute(
            "SELECT value FROM fact WHERE name = ?", (table,)
        ).fetchone()
        try:
            count, digest = row[0].decode("ascii").split(" ")
            return int(count), int(digest, 16)
        except (TypeError, ValueError, AttributeError):
            raise DamageError(self.path.name, "its sums cannot be read") from None

    def _keep(self, table: str, count: int, digest: int) -> None:
        self._connection.execute(
            "INSERT OR REPLACE INTO fact VALUES (?, ?)", (table, f"{count} {digest:x}")
        )

    @contextmanager
    def _writing(self) -> Iterator[None]:
        self._connection.execute("BEGIN IMMEDIATE")
        try:
            yield
            self._connection.execute("COMMIT")
        except BaseException:
            if self._connection.in_transaction:
                self._connection.execute("ROLLBACK")
            raise

    @contextmanager
    def _reading(self) -> Iterator[None]:
        """One state of the store for all that is read, whoever writes meanwhile."""
        self._connection.execute("BEGIN")
        try:
            yield
        finally:
            if self._connection.in_transaction:
                self._connection.execute("ROLLBACK")


def _is_filed(body: str, entry: object, path: object) -> bool:
    """Whether a row has the id and the path of the entry in it."""
    plain = json.loads(body)
    return (plain["id"].encode(), plain.get("path", "").encode()) == (entry, path)


def _told(last: Mapping[str, int]) -> list[str]:
    return [f"{name} {seq}" for name, seq in last.items()]


_MOVING = HELD_KINDS | {"withdrawn"}
