"""A sign of life on the error stream for anything that takes over a second."""

from __future__ import annotations

import shutil
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager

__all__ = ["working"]

_PATIENCE_S = 1.0


@contextmanager
def working(what: str) -> Iterator[Callable[[str], None]]:
    """Say what is being done once it has taken a second; count on while it goes on.

    On a terminal it is one line that changes; elsewhere a short line each time there is something
    new, at most one a second.

    Yields
    ------
    Takes a few words about how far it is.
    """
    done = threading.Event()
    teller = _Teller(what)
    thread = threading.Thread(target=teller.run, args=(done,), daemon=True)
    thread.start()
    try:
        yield teller.say
    finally:
        done.set()
        thread.join()


class _Teller:
    """Tells what is being done, and how far it is."""

    def __init__(self, what: str) -> None:
        self.what = self.now = what
        self.shown = ""

    def say(self, news: str) -> None:
        """From now on this is added to what is being done."""
        self.now = f"{self.what}: {news}" if news else self.what

    def run(self, done: threading.Event) -> None:
        """Tell until it is done."""
        seconds = 0
        while not done.wait(_PATIENCE_S):
            seconds += 1
            if sys.stderr.isatty():
                self._show(f"{self.now} ... {seconds} s")
            elif self.now != self.shown:
                self.shown = self.now
                print(f"{self.now} ...", file=sys.stderr, flush=True)
        if seconds and sys.stderr.isatty():
            print(file=sys.stderr)

    def _show(self, line: str) -> None:
        """In place of the line that stands there, no longer than the terminal is wide."""
        line = line[: shutil.get_terminal_size().columns - 1]
        print(f"\r{line.ljust(len(self.shown))}", end="", file=sys.stderr, flush=True)
        self.shown = line
