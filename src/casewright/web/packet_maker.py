"""Making the packet in a process of its own, for a browser to fetch."""

from __future__ import annotations

import multiprocessing
import pickle
import threading
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Literal

from casewright.errors import CasewrightError
from casewright.job.fingerprint import printed_fingerprint
from casewright.job.load import load_job
from casewright.job.packets import draw_packet, packet_files
from casewright.job.printed import note_print
from casewright.job.recorded import as_recorded
from casewright.job.reminders import with_reminder
from casewright.job.writer import this_writer

__all__ = ["PacketMaker", "PacketState"]


@dataclass(frozen=True, slots=True)
class PacketState:
    """How far a packet has come.

    Parameters
    ----------
    stage
        none, making, made or failed.
    fingerprint
        That stands on its pages.
    files
        By name.
    says
        Why it failed.
    """

    stage: Literal["none", "making", "made", "failed"] = "none"
    fingerprint: str = ""
    files: Mapping[str, bytes] = field(default_factory=dict)
    says: str = ""


class PacketMaker:
    """Makes one packet at a time.

    Parameters
    ----------
    path
        The job file.
    told
        Called when a packet has come further.
    pages
        Address that other devices find the job's pages at; empty: only this machine does.
    """

    def __init__(self, path: Path, told: Callable[[], None], pages: str = "") -> None:
        self._path = path
        self._pages = pages
        self._told = told
        self._lock = threading.Lock()
        self._state = PacketState()

    @property
    def state(self) -> PacketState:
        """How far the last packet has come."""
        return self._state

    def make(self) -> None:
        """Begin, unless one is being made."""
        with self._lock:
            if self._state.stage == "making":
                return
            self._state = PacketState("making")
        threading.Thread(target=self._make, name="making the packet", daemon=True).start()
        self._told()

    def _make(self) -> None:
        context = multiprocessing.get_context("spawn")
        ours, theirs = context.Pipe(duplex=False)
        process = context.Process(
            target=_print, args=(self._path, self._pages, theirs), daemon=False
        )
        process.start()
        theirs.close()
        state = PacketState("failed", says="it was not finished; try again")
        with ours, suppress(EOFError, OSError):
            state = pickle.loads(ours.recv_bytes())  # noqa: S301 (our own)
        process.join()
        if state.stage == "made":
            with suppress(CasewrightError, OSError):
                note_print(load_job(self._path), state.fingerprint, this_writer())
        self._state = state
        self._told()


def _print(path: Path, pages: str, connection: Connection) -> None:
    """Make the packet of a job as it lies on the disk; in a process of its own."""
    try:
        state = _printed(path, pages)
    except (CasewrightError, OSError) as error:
        state = PacketState("failed", says=str(error))
    with connection, suppress(OSError):
        connection.send_bytes(pickle.dumps(state, pickle.HIGHEST_PROTOCOL))


def _printed(path: Path, pages: str) -> PacketState:
    job, _, worked = as_recorded(path)
    worked = with_reminder(worked, job)
    if worked.failures:
        return PacketState("failed", says="the parts do not go together; no packet is made")
    files = packet_files(draw_packet(worked, pages=pages))
    return PacketState("made", printed_fingerprint(worked.room), dict(files))
