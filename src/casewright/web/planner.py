"""Planning the cuts in a process of its own, so that pages are answered meanwhile.

What is planned for a job that has changed since is of no use: its process is ended, and the next
one, which waits with everything loaded, takes over.
"""

from __future__ import annotations

import multiprocessing
import os
import pickle
import threading
from collections.abc import Callable
from contextlib import suppress
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import NamedTuple

from casewright.errors import CasewrightError
from casewright.job.packets import Purchases, plan_purchases
from casewright.job.recorded import as_recorded
from casewright.outputs.apart import pickled

__all__ = ["Found", "Planner"]

_WAIT_S = 0.5
"""A change that follows another so soon is waited for [s]."""

_NICE = 10


class Found(NamedTuple):
    """What a process found.

    Parameters
    ----------
    digest
        Of the job file that it read.
    purchases
        The cuts and what to buy.
    """

    digest: str
    purchases: Purchases


class _Hand(NamedTuple):
    """A process that waits for a job or works on one."""

    process: BaseProcess
    connection: Connection


class Planner:
    """Plans the newest version that it was asked for.

    Parameters
    ----------
    path
        The job file.
    found
        Called from a thread with a version and what was found for it.
    """

    def __init__(self, path: Path, found: Callable[[int, Found], None]) -> None:
        self._path = path
        self._found = found
        self._lock = threading.Lock()
        self._wanted = 0
        self._busy: _Hand | None = None
        self._waiting: _Hand | None = None
        self._timer: threading.Timer | None = None

    def ask(self, version: int) -> None:
        """Plan a version, and nothing older."""
        with self._lock:
            self._let_go()
            self._wanted = version
            self._timer = threading.Timer(_WAIT_S, self._begin, (version,))
            self._timer.daemon = True
            self._timer.start()

    def stop(self) -> None:
        """Plan nothing any more."""
        with self._lock:
            self._wanted = 0
            self._let_go()
            if self._waiting is not None:
                self._waiting.process.kill()
                self._waiting = None

    def _let_go(self) -> None:
        if self._timer is not None:
            self._timer.cancel()
        if self._busy is not None:
            self._busy.process.kill()
            self._busy = None

    def _begin(self, version: int) -> None:
        with self._lock:
            if self._wanted != version:
                return
            hand = self._busy = self._waiting or _hired()
            self._waiting = None
        with hand.connection as connection, suppress(EOFError, OSError):
            connection.send(self._path)
            with self._lock:
                if self._wanted == version:
                    self._waiting = _hired()
            found: Found = pickle.loads(connection.recv_bytes())  # noqa: S301 (our own)
            if self._wanted == version:
                self._found(version, found)


def _hired() -> _Hand:
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe()
    process = context.Process(target=_plan, args=(theirs,), name="planning the cuts", daemon=True)
    process.start()
    theirs.close()
    return _Hand(process, ours)


def _plan(connection: Connection) -> None:
    """Work one job out and plan its cuts; in a process of its own."""
    with suppress(OSError):
        os.nice(_NICE)
    with connection, suppress(EOFError, OSError, CasewrightError):
        job, _, worked = as_recorded(connection.recv())
        if not worked.failures:
            found = Found(job.file.digest, plan_purchases(worked))
            connection.send_bytes(pickled(found))
