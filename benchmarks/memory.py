"""How much memory a process and all it started hold, for the benchmarks."""

from __future__ import annotations

import resource
import sys
import threading
from pathlib import Path

PROC = Path("/proc")


def peak_megabytes(whose: int = resource.RUSAGE_SELF) -> float:
    """The most memory this process, or the largest of its children, has held [MB]."""
    peak = resource.getrusage(whose).ru_maxrss
    return peak / (1e6 if sys.platform == "darwin" else 1e3)


class Watch:
    """The most memory that this process and all it started held at one time [MB].

    Shared pages are counted once for each process. Where there is no /proc, twice the largest
    child is added to the peak of this process: more than was ever held.
    """

    def __init__(self) -> None:
        self.peak = 0.0
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._look)

    def __enter__(self) -> Watch:
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._over.set()
        self._thread.join()
        if not PROC.is_dir():
            self.peak = peak_megabytes() + 2 * peak_megabytes(resource.RUSAGE_CHILDREN)
        self.peak = max(self.peak, peak_megabytes())

    def _look(self) -> None:
        while not self._over.wait(0.01):
            self.peak = max(self.peak, held_megabytes("self"))


def held_megabytes(process: str, begun_by: bytes = b"") -> float:
    """What a process and all it started hold now [MB]; 0 when it has ended.

    A child that has not begun its own program still lives in its parent's memory: not counted.
    """
    folder = PROC / process
    try:
        program = (folder / "cmdline").read_bytes()
        if program == begun_by:
            return 0.0
        pages = int((folder / "statm").read_text().split()[1])
        children = [
            child
            for thread in (folder / "task").iterdir()
            for child in (thread / "children").read_text().split()
        ]
    except OSError:
        return 0.0
    own = pages * resource.getpagesize() / 1e6
    return own + sum(held_megabytes(child, program) for child in children)
