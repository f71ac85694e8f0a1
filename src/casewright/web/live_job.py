"""The job as all pages see it: worked out anew whenever its file or its record changes.

One thread works, step by step, and lets a step's result go when something newer was written
meanwhile. Requests read the last standing, which is never changed, only replaced.
"""

from __future__ import annotations

import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from casewright.breakdown import count_sheets
from casewright.errors import CasewrightError, Location, Problem
from casewright.job.recorded import as_recorded, record_path
from casewright.web.planner import Found, Planner
from casewright.web.shop_plan import PlansInHand
from casewright.web.snapshot import Snapshot, Standing
from casewright.web.watching import Stamp, stamp

__all__ = ["LiveJob"]

_BREATH_S = 0.02
"""So that whoever changed something is answered first: threads share one interpreter [s]."""

_PATIENCE_S = 60.0


class LiveJob:
    """Keeps a job worked out.

    Parameters
    ----------
    path
        The job file.
    told
        Called whenever more is known, from any thread.
    recorded
        Called when somebody else wrote into the record, before it is worked out.
    told_anew
        Called when the rest of the cuts is being planned anew, and when it was.
    """

    def __init__(
        self, path: Path, told: Callable[[Standing], None], recorded: Callable[[], None],
        told_anew: Callable[[], None],
    ) -> None:  # fmt: skip
        self.path = path
        self._told = told
        self._recorded = recorded
        self._told_anew = told_anew
        self.plans = PlansInHand(path, self._newest, told_anew)
        self._planner = Planner(self._planned)
        self._seen: Stamp = ()
        self._own = threading.Lock()
        self._looking = threading.Lock()
        self._last_planned: Snapshot | None = None
        self._standing = Standing(0)
        self._changed = threading.Condition()
        self._version = 1
        self._stopping = False
        self._thread = threading.Thread(target=self._work, name="working out", daemon=True)

    @property
    def watched(self) -> tuple[Path, ...]:
        """Files that a change of the job shows in."""
        return (self.path, record_path(self.path))

    @property
    def standing(self) -> Standing:
        """What is known now."""
        return self._standing

    @property
    def version(self) -> int:
        """Of what was written last."""
        return self._version

    @property
    def planned(self) -> Snapshot | None:
        """The newest version whose cuts are planned; None: none is yet."""
        return self._last_planned

    def start(self) -> None:
        """Begin to work."""
        self._seen = stamp(self.watched)
        self._thread.start()

    def stop(self) -> None:
        """End after the step that is being worked on."""
        with self._changed:
            self._stopping = True
            self._changed.notify_all()
        self._planner.stop()

    @contextmanager
    def writing(self) -> Iterator[None]:
        """While a page of ours writes; afterwards it says so itself."""
        with self._own:
            yield
            self._seen = stamp(self.watched)

    def look(self) -> None:
        """Work out anew if the files are not as they were last written or seen."""
        with self._looking:  # one who looks meanwhile may have looked before something was written
            if not self._own.acquire(blocking=False):
                return
            try:
                seen, found = self._seen, stamp(self.watched)
                if found[1:] != seen[1:]:
                    self._recorded()
                if found != seen:
                    self.look_again()
            finally:
                self._own.release()

    def look_again(self) -> int:
        """Something was written: work out anew.

        Returns
        -------
        The version that what was written will have.
        """
        with self._changed:
            self._seen = stamp(self.watched)
            self._version += 1
            self._changed.notify_all()
            version = self._version
        self._told(self._standing)
        return version

    def wait_for(self, version: int, seconds: float) -> Standing:
        """The standing once a version or a newer one is worked out, or after so long."""
        with self._changed:
            self._changed.wait_for(
                lambda: self._standing.version >= version or self._stopping, seconds
            )
            return self._standing

    def _newest(self) -> Snapshot | None:
        """The job as it was written last, worked out."""
        return self.wait_for(self._version, _PATIENCE_S).snapshot

    def _work(self) -> None:
        while True:
            with self._changed:
                self._changed.wait_for(
                    lambda: self._stopping or self._standing.version != self._version
                )
                if self._stopping:
                    return
                version = self._version
            time.sleep(_BREATH_S)
            self._work_out(version)

    def _work_out(self, version: int) -> None:
        snapshot, problems = self._read(version)
        if stamp(self.watched)[:1] != self._seen[:1]:  # an editor wrote: it may be half a file
            self.look()
            return
        self._put(Standing(version, snapshot or self._standing.snapshot, problems))
        if snapshot is None:
            return
        is_known = self.plans.take_up(snapshot)
        if self._version == version and not snapshot.worked.failures:
            counted = replace(snapshot, count=count_sheets(snapshot.worked.room))
            self._put(Standing(version, counted))
            self._planner.ask(counted, begun=not is_known and self._is_begun(counted))

    def _read(self, version: int) -> tuple[Snapshot | None, tuple[Problem, ...]]:
        """The job worked out, or what is wrong with it."""
        try:
            return Snapshot(version, *as_recorded(self.path)), ()
        except CasewrightError as error:
            return None, error.problems
        except OSError as error:
            says = str(error.strerror or error)
            return None, (Problem(Location(self.path.name), says, "try again"),)

    def _is_begun(self, snapshot: Snapshot) -> bool:
        """Whether cutting was begun by a plan that this server never made."""
        return self._last_planned is None and any(
            part.state != "planned" for part in snapshot.worked.room.parts
        )

    def _planned(self, version: int, found: Found) -> None:
        """Cuts were planned: of use while nothing newer is worked out."""
        with self._changed:
            snapshot = self._standing.snapshot
            if snapshot is None or self._standing.version != version:
                return
            if snapshot.version != version:
                return
        snapshot = replace(
            snapshot,
            purchases=found.purchases or snapshot.purchases,
            begun=found.begun or snapshot.begun,
            cuts=found.cuts or snapshot.cuts,
        )
        if snapshot.purchases is not None:
            self._last_planned = snapshot
        self._put(Standing(version, snapshot))
        if found.purchases is None:
            self._told_anew()  # the saw need not wait for the rest

    def _put(self, standing: Standing) -> None:
        with self._changed:
            self._standing = standing
            self._changed.notify_all()
        self._told(standing)
