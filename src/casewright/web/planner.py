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
from dataclasses import replace
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from typing import NamedTuple

from casewright.breakdown import Breakdown, break_down
from casewright.errors import CasewrightError
from casewright.job.load import LoadedJob
from casewright.job.nudges import plan_job
from casewright.job.packets import Purchases, plan_purchases
from casewright.job.recorded import Recorded, work_out_recorded
from casewright.outputs.apart import pickled
from casewright.record import NO_MARKS
from casewright.web.shop_notes import KEPT
from casewright.web.snapshot import Snapshot

__all__ = ["Found", "Planner", "plan_begun"]

_WAIT_S = 0.5
"""A change that follows another so soon is waited for [s]."""

_NICE = 10


class Found(NamedTuple):
    """What a process found, one after the other.

    Parameters
    ----------
    purchases
        The cuts of what is left, and what to buy.
    begun
        The cuts as they were planned before the first piece was cut.
    cuts
        The cuts of what is left, before it is looked for what another depth would save.
    """

    purchases: Purchases | None = None
    begun: Breakdown | None = None
    cuts: Breakdown | None = None


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

    def __init__(self, found: Callable[[int, Found], None]) -> None:
        self._found = found
        self._lock = threading.Lock()
        self._wanted = 0
        self._busy: _Hand | None = None
        self._waiting: _Hand | None = None
        self._timer: threading.Timer | None = None

    def ask(self, snapshot: Snapshot, *, begun: bool) -> None:
        """Plan a version, and nothing older.

        Parameters
        ----------
        begun
            Whether the plan that cutting was begun by is wanted too.
        """
        with self._lock:
            self._let_go()
            self._wanted = snapshot.version
            self._timer = threading.Timer(_WAIT_S, self._begin, (snapshot, begun))
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

    def _begin(self, snapshot: Snapshot, begun: bool) -> None:
        version = snapshot.version
        with self._lock:
            if self._wanted != version:
                return
            hand = self._busy = self._waiting or _hired()
            self._waiting = None
        with hand.connection as connection, suppress(EOFError, OSError):
            connection.send_bytes(pickled((snapshot.loaded, snapshot.recorded, begun)))
            with self._lock:
                if self._wanted == version:
                    self._waiting = _hired()
            for _ in range(2 + begun):
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
        loaded, recorded, is_begun = pickle.loads(connection.recv_bytes())  # noqa: S301 (our own)
        worked = work_out_recorded(loaded, recorded)
        if not worked.failures:
            if is_begun:  # first: somebody may stand at the saw with half a sheet
                connection.send_bytes(pickled(Found(begun=plan_begun(loaded, recorded))))
            connection.send_bytes(pickled(Found(cuts=break_down(worked.room))))
            connection.send_bytes(pickled(Found(plan_purchases(worked))))  # nothing is done twice


def plan_begun(loaded: LoadedJob, recorded: Recorded) -> Breakdown | None:
    """The plan by which the first piece was cut: every piece still to be cut, no offcut kept yet.

    None when the job has no plan.
    """
    offcuts = tuple(each for each in recorded.offcuts if not each.note.startswith(KEPT))
    worked = work_out_recorded(loaded, replace(recorded, marks=NO_MARKS, offcuts=offcuts))
    return None if worked.failures else plan_job(worked)
