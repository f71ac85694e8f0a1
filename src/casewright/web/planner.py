"""Planning the cuts in a process of its own, so that pages are answered meanwhile.

What is planned for a job that has changed since is of no use: its process is ended.
"""

from __future__ import annotations

import copyreg
import multiprocessing
import os
import pickle
import threading
from collections.abc import Callable
from contextlib import suppress
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from pathlib import Path
from types import MappingProxyType
from typing import Any

from casewright.errors import CasewrightError
from casewright.job.load import load_job
from casewright.job.packets import Purchases, plan_purchases
from casewright.job.recorded import read_record, work_out_recorded

__all__ = ["Planner"]

_WAIT_S = 0.4
"""A change that follows another so soon is waited for [s]."""

_NICE = 10


class Planner:
    """Plans the newest version that it was asked for.

    Parameters
    ----------
    path
        The job file.
    found
        Called from a thread with a version, the digest of its file, and what to cut and buy.
    """

    def __init__(self, path: Path, found: Callable[[int, str, Purchases], None]) -> None:
        self._path = path
        self._found = found
        self._lock = threading.Lock()
        self._wanted = 0
        self._process: BaseProcess | None = None
        self._timer: threading.Timer | None = None

    def ask(self, version: int) -> None:
        """Plan a version, and nothing older."""
        with self._lock:
            self._end()
            self._wanted = version
            self._timer = threading.Timer(_WAIT_S, self._begin, (version,))
            self._timer.daemon = True
            self._timer.start()

    def stop(self) -> None:
        """Plan nothing any more."""
        with self._lock:
            self._wanted = 0
            self._end()

    def _end(self) -> None:
        if self._timer is not None:
            self._timer.cancel()
        if self._process is not None:
            self._process.kill()
            self._process = None

    def _begin(self, version: int) -> None:
        context = multiprocessing.get_context("spawn")
        ours, theirs = context.Pipe(duplex=False)
        with self._lock:
            if self._wanted != version:
                return
            self._process = context.Process(
                target=_plan, args=(self._path, theirs), name="planning the cuts", daemon=True
            )
            self._process.start()
            theirs.close()
        answer = _received(ours)
        if answer is not None and self._wanted == version:
            self._found(version, *answer)


def _received(connection: Connection) -> tuple[str, Purchases] | None:
    """What the process found; None when it was ended, or the job has no meaning."""
    with connection, suppress(EOFError, OSError):
        answer: tuple[str, Purchases] | None = pickle.loads(connection.recv_bytes())  # noqa: S301
        return answer
    return None


def _unchanging(entries: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(entries)


def _taken_apart(mapping: MappingProxyType[Any, Any]) -> tuple[Any, ...]:
    return _unchanging, (dict(mapping),)


copyreg.pickle(MappingProxyType, _taken_apart)  # which the standard library leaves out


def _plan(path: Path, connection: Connection) -> None:
    """Work a job out and plan its cuts; in a process of its own."""
    with suppress(OSError):
        os.nice(_NICE)
    try:
        loaded = load_job(path)
        worked = work_out_recorded(loaded, read_record(path))
        purchases = None if worked.failures else plan_purchases(worked)
    except (CasewrightError, OSError):
        purchases, loaded = None, None
    answer = None if loaded is None or purchases is None else (loaded.file.digest, purchases)
    with connection, suppress(OSError):
        connection.send_bytes(pickle.dumps(answer, pickle.HIGHEST_PROTOCOL))
