"""Planning the cuts in a process of its own, so that pages are answered meanwhile.

What is planned for a job that has changed since is of no use: its process is ended, and the next
one, which waits with everything loaded, takes over. It is given the job and what the record says:
a process that stands back behind others must never hold a lock on the record, or whoever writes an
entry would wait for it.
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
from typing import NamedTuple

from casewright.errors import CasewrightError
from casewright.job.packets import Purchases, plan_purchases
from casewright.job.recorded import work_out_recorded
from casewright.outputs.apart import pickled
from casewright.web.snapshot import Snapshot

__all__ = ["Planner"]

_WAIT_S = 0.5
"""A change that follows another so soon is waited for [s]."""

_NICE = 10


class _Hand(NamedTuple):
    """A process that waits for a job or works on one."""

    process: BaseProcess
    connection: Connection


class Planner:
    """Plans the newest version that it was asked for.

    Parameters
    ----------
    found
        Called from a thread with a version and what was found for it.
    """

    def __init__(self, found: Callable[[int, Purchases], None]) -> None:
        self._found = found
        self._lock = threading.Lock()
        self._wanted = 0
        self._busy: _Hand | None = None
        self._waiting: _Hand | None = None
        self._timer: threading.Timer | None = None

    def ask(self, snapshot: Snapshot) -> None:
        """Plan a version, and nothing older."""
        with self._lock:
            self._let_go()
            self._wanted = snapshot.version
            self._timer = threading.Timer(_WAIT_S, self._begin, (snapshot,))
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

    def _begin(self, snapshot: Snapshot) -> None:
        version = snapshot.version
        with self._lock:
            if self._wanted != version:
                return
            hand = self._busy = self._waiting or _hired()
            self._waiting = None
        with hand.connection as connection, suppress(EOFError, OSError):
            connection.send_bytes(pickled((snapshot.loaded, snapshot.recorded)))
            with self._lock:
                if self._wanted == version:
                    self._waiting = _hired()
            found: Purchases = pickle.loads(connection.recv_bytes())  # noqa: S301 (our own)
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
        loaded, recorded = pickle.loads(connection.recv_bytes())  # noqa: S301 (our own)
        worked = work_out_recorded(loaded, recorded)
        if not worked.failures:
            connection.send_bytes(pickled(plan_purchases(worked)))
