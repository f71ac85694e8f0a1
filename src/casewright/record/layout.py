"""How the store lies in its file: an SQLite database, tables that only grow, and a table of sums.

`entry` holds every entry as sealed text. `held` numbers those that say how things are now, so that
opening does not read the whole history; it is derived, and worked out again for a path whenever
an entry about that path comes in. `device` counts entries. `fact` keeps the sums over the three:
how many rows, and the exclusive or of their hashes, to which the order does not matter.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable

__all__ = ["FORMAT", "PAGE", "SCHEMA", "digest_of", "mixed"]

FORMAT = 1
PAGE = 8192
"""Of the database [bytes]; a sealed entry always lies within one."""

SCHEMA = """
BEGIN;
CREATE TABLE entry (n INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, path TEXT NOT NULL,
                    body TEXT NOT NULL);
CREATE INDEX entry_path ON entry (path);
CREATE TABLE held (n INTEGER PRIMARY KEY);
CREATE TABLE device (name TEXT PRIMARY KEY, seq INTEGER NOT NULL) WITHOUT ROWID;
CREATE TABLE fact (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
INSERT INTO fact VALUES ('entry', '0 0'), ('held', '0 0'), ('device', '0 0');
COMMIT;
"""

_BYTES = 16


def digest_of(body: str) -> int:
    """A number that stands for a body."""
    return int.from_bytes(hashlib.sha256(body.encode()).digest()[:_BYTES], "big")


def mixed(digest: int, bodies: Iterable[str]) -> int:
    """A sum with bodies put in, or taken out again: it is its own inverse."""
    for body in bodies:
        digest ^= digest_of(body)
    return digest
