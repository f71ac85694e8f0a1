"""Edits of the job file from a page: each can be undone, none overwrites somebody else's."""

from __future__ import annotations

import threading
from collections.abc import Callable

from casewright.job.load import LoadedJob, load_job
from casewright.job.saving import save
from casewright.job.splicing import refuse
from casewright.web.live_job import LiveJob
from casewright.web.snapshot import Snapshot

__all__ = ["MOST_UNDONE", "Editor"]

MOST_UNDONE = 200
"""Edits that can be taken back [-]."""


class Editor:
    """Changes the job file, one edit at a time.

    Parameters
    ----------
    live
        The job that the file is of.
    """

    def __init__(self, live: LiveJob) -> None:
        self._live = live
        self._lock = threading.Lock()
        self._before: list[tuple[str, str]] = []
        self._after: list[tuple[str, str]] = []

    def can_undo(self, text: str) -> bool:
        """Whether the last edit can be taken back: the file still says what it left."""
        return bool(self._before) and self._before[-1][1] == text

    def can_redo(self, text: str) -> bool:
        """Whether the edit taken back last can be made again."""
        return bool(self._after) and self._after[-1][0] == text

    def edit(
        self,
        digest: str,
        change: Callable[[Snapshot], str],
        then: Callable[[Snapshot, LoadedJob], None],
    ) -> tuple[int, LoadedJob]:
        """Change the file.

        Parameters
        ----------
        digest
            Of the file that the page shows.
        change
            Gives the new text; called with the job as it is now.
        then
            Called once it is written, before anything else is worked out anew.

        Returns
        -------
        The version that it will have, and the file as it is now.

        Raises
        ------
        EditError
            When the file is another by now, or the edit cannot be made.
        JobFileError
            When the new text has no meaning; nothing is written.
        OutputError
            When the file cannot be written.
        """
        with self._lock:
            snapshot = self._current(digest)
            old, new = snapshot.loaded.file.text, change(snapshot)
            with self._live.writing():
                saved = save(snapshot.loaded, new)
            self._before = [*self._before[-MOST_UNDONE + 1 :], (old, new)]
            self._after = []
            try:
                then(snapshot, saved)
            finally:
                version = self._live.look_again()
            return version, saved

    def undo(self) -> int:
        """Take the last edit back.

        Raises
        ------
        EditError
            When there is none, or the file was changed since.
        """
        return self._step_back(self._before, self._after, back=True)

    def redo(self) -> int:
        """Make the edit taken back last again.

        Raises
        ------
        EditError
            When there is none, or the file was changed since.
        """
        return self._step_back(self._after, self._before, back=False)

    def _step_back(
        self, taken: list[tuple[str, str]], kept: list[tuple[str, str]], *, back: bool
    ) -> int:
        with self._lock:
            if not taken:
                refuse(f"there is nothing to {'undo' if back else 'redo'}", "go on")
            old, new = taken[-1]
            there, wanted = (new, old) if back else (old, new)
            loaded = load_job(self._live.path)
            if loaded.file.text != there:
                what = "the file was changed since, in an editor or by another page"
                refuse(what, "make the change by hand")
            with self._live.writing():
                save(loaded, wanted)
            kept.append(taken.pop())
            return self._live.look_again()

    def _current(self, digest: str) -> Snapshot:
        """The job as the page shows it, worked out as far as its file."""
        self._live.look()  # an editor may have written since anybody looked
        standing = self._live.wait_for(self._live.version, 10)
        snapshot = standing.snapshot
        if standing.problems or snapshot is None:
            refuse("the job file has no meaning as it is", "put right what is told first")
        if snapshot.loaded.file.digest != digest:
            what = f"{snapshot.loaded.file.name} was changed meanwhile, in an editor or by a page"
            refuse(what, "nothing was written over it; look at what it says now, then write again")
        return snapshot
