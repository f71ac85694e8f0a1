"""Opening and making the database, and telling its errors in words.

The database keeps its rollback journal, not the write-ahead log: what is acknowledged then lies in
the one file, under the sums that are kept over it. In a log, damage would pass for an unfinished
write, and the entries behind it would be gone without a word.
"""

from __future__ import annotations

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from casewright.record.errors import DamageError, RecordError
from casewright.record.folder_lock import is_at_rest, sharing
from casewright.record.layout import FORMAT, PAGE, SCHEMA

__all__ = [
    "connect", "create", "filled", "identity", "journal_of", "place", "sweep", "telling",
]  # fmt: skip

_HEADER = b"SQLite format 3\0"
_FORM = PAGE.to_bytes(2, "big") + bytes((1, 1, 0, 64, 32, 32))
"""Page size, rollback journal for writers and readers, and what is always the same."""
_LEAST = 100
_UNFINISHED, _MADE = ".record.", "made"
_PATIENCE_S = 60
_FORMATS = 9  # a number above this is no format that will ever be
_DAMAGE = (
    "SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_ERROR", "SQLITE_FORMAT", "SQLITE_SCHEMA",
    "SQLITE_IOERR_SHORT_READ", "SQLITE_CONSTRAINT", "SQLITE_MISMATCH", "SQLITE_TOOBIG",
)  # fmt: skip
_REASONS = {
    "SQLITE_BUSY": ("somebody else is writing to it and does not end", "try again"),
    "SQLITE_FULL": ("the disk is full", "make room, then do it again"),
    "SQLITE_READONLY": ("nothing may be written there", "change the permissions of the file"),
    "SQLITE_CANTOPEN": ("it cannot be opened", "look at the permissions of the file and folder"),
}


def journal_of(path: Path) -> Path:
    """The journal of a record: there while something is written, or was when it was killed."""
    return path.with_name(f"{path.name}-journal")


def identity(path: Path) -> tuple[int, int]:
    """Which file it is, whatever its name was; zeros when there is none."""
    try:
        found = path.stat()
    except OSError:
        return (0, 0)
    return (found.st_dev, found.st_ino)


def connect(path: Path) -> sqlite3.Connection:
    """An open database, its header looked at.

    Raises
    ------
    DamageError
        When it is not as it was written.
    RecordError
        When it cannot be opened.
    """
    with telling(path):
        _check_header(path)
        address = f"{path.absolute().as_uri()}?mode=rw"
        connection = sqlite3.connect(address, timeout=_PATIENCE_S, uri=True)
        try:
            _prepare(connection, path)
        except BaseException:
            connection.close()
            raise
    return connection


def create(path: Path) -> None:
    """Make an empty record, whole from the moment its name is there.

    Raises
    ------
    RecordError
        When it cannot be made.
    """
    folder = path.parent
    with telling(path), sharing(folder), filled(folder) as made, suppress(FileExistsError):
        place(made, path)


@contextmanager
def filled(folder: Path) -> Iterator[Path]:
    """A file with empty tables, on the same disk; gone afterwards unless it is given a name."""
    with tempfile.TemporaryDirectory(prefix=_UNFINISHED, dir=folder) as made:
        path = Path(made) / _MADE
        connection = sqlite3.connect(path)
        try:
            connection.execute(f"PRAGMA page_size = {PAGE}")
            connection.execute("PRAGMA synchronous = EXTRA")
            connection.executescript(SCHEMA)
            connection.execute(f"PRAGMA user_version = {FORMAT}")
        finally:
            connection.close()
        yield path


def sweep(folder: Path) -> None:
    """Take away what was left of records whose making was broken off: nothing was in them yet."""
    with suppress(OSError):
        left = [
            Path(each.path) for each in os.scandir(folder) if each.name.startswith(_UNFINISHED)
        ]
        if not left:
            return
        with is_at_rest(folder) as alone:
            for each in left if alone else ():
                inside = list(each.iterdir())
                if all(file.name in (_MADE, f"{_MADE}-journal") for file in inside):
                    shutil.rmtree(each)


def place(made: Path, path: Path) -> None:
    """Give a finished file its name.

    Raises
    ------
    FileExistsError
        When somebody else was quicker.
    """
    try:
        path.hardlink_to(made)
    except FileExistsError:
        raise
    except OSError:  # a disk without links: FAT, some shares
        if path.exists():
            raise FileExistsError from None
        made.rename(path)


@contextmanager
def telling(path: Path) -> Iterator[None]:
    """Errors of the database and of the disk as ours.

    Raises
    ------
    DamageError
        When the database says that it is not as it was written.
    RecordError
        When it cannot be used.
    """
    name = path.name
    try:
        yield
    except sqlite3.Error as error:
        code = str(getattr(error, "sqlite_errorname", "") or "")
        if code.startswith(_DAMAGE) or isinstance(error, sqlite3.DataError):
            raise DamageError(name, str(error)) from None
        reasons = (words for known, words in _REASONS.items() if code.startswith(known))
        what, want = next(reasons, (str(error), "look at the disk, then do it again"))
        raise _unusable(name, what, want) from None
    except UnicodeDecodeError:  # of the database's own words, when they quote what is damaged
        raise DamageError(name, "its tables cannot be read") from None
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise _unusable(name, reason, "look at the file and its folder") from None


def _unusable(name: str, reason: str, want: str) -> RecordError:
    return RecordError.of(f"the record cannot be used: {reason}", want, file=name)


def _check_header(path: Path) -> None:
    with path.open("rb") as stream:
        head = stream.read(_LEAST)
    size = path.stat().st_size
    if size < PAGE or not head.startswith(_HEADER) or head[16:24] != _FORM:
        what = "it does not begin as a record does" if size else "it is empty"
        raise DamageError(path.name, what)
    journal = journal_of(path)
    is_at_rest = not journal.exists() or not journal.stat().st_size
    if is_at_rest and size < int.from_bytes(head[28:32], "big") * PAGE:
        raise DamageError(path.name, "its end is missing")


def _prepare(connection: sqlite3.Connection, path: Path) -> None:
    connection.isolation_level = None
    connection.text_factory = bytes
    connection.execute("PRAGMA synchronous = EXTRA")
    (found,) = connection.execute("PRAGMA user_version").fetchone()
    (page,) = connection.execute("PRAGMA page_size").fetchone()
    if FORMAT < found <= _FORMATS:
        what = f"it is of a later form ({found}) than this program knows ({FORMAT})"
        raise RecordError.of(what, "use the newer program", file=path.name)
    if found != FORMAT or page != PAGE:
        raise DamageError(path.name, "its header is not as it was written")
