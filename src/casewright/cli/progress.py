"""A sign of life on the error stream for anything that takes over a second."""

from __future__ import annotations

import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager

__all__ = ["working"]

_PATIENCE_S = 1.0


@contextmanager
def working(what: str) -> Iterator[None]:
    """Say what is being done once it has taken a second; count on while it goes on."""
    done = threading.Event()

    def tell() -> None:
        seconds = 0
        while not done.wait(_PATIENCE_S):
            seconds += 1
            if sys.stderr.isatty():
                print(f"\r{what} ... {seconds} s", end="", file=sys.stderr, flush=True)
            elif seconds == 1:
                print(f"{what} ...", file=sys.stderr, flush=True)
        if seconds and sys.stderr.isatty():
            print(file=sys.stderr)

    teller = threading.Thread(target=tell, daemon=True)
    teller.start()
    try:
        yield
    finally:
        done.set()
        teller.join()
