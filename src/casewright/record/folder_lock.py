"""A lock on the folder of a record: many may write entries, one alone may put its file right."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

__all__ = ["alone", "is_at_rest", "sharing"]


@contextmanager
def sharing(folder: Path) -> Iterator[None]:
    """While this lasts, nobody replaces the file of a record in the folder."""
    with _locked(folder, fcntl.LOCK_SH):
        yield


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """While this lasts, nobody else writes to a record in the folder."""
    with _locked(folder, fcntl.LOCK_EX):
        yield


@contextmanager
def is_at_rest(folder: Path) -> Iterator[bool]:
    """Whether nobody writes to a record in the folder; while this lasts nobody begins to."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        yield False
        return
    try:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            yield False
            return
        yield True
    finally:
        os.close(handle)


@contextmanager
def _locked(folder: Path, way: int) -> Iterator[None]:
    """Where folders cannot be locked there is one writer to a disk: the database's lock does."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        yield
        return
    try:
        try:
            fcntl.flock(handle, way)
        except OSError:
            yield
            return
        yield
    finally:
        os.close(handle)
