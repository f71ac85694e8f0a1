"""Ctrl-C in two steps: the first asks for the best so far, the second quits."""

from __future__ import annotations

import signal
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType

__all__ = ["interruptible"]


@contextmanager
def interruptible() -> Iterator[Callable[[], bool]]:
    """While it lasts, the first Ctrl-C is remembered, and one more quits.

    Yields
    ------
    Tells whether it was pressed.
    """
    pressed = threading.Event()
    before = signal.getsignal(signal.SIGINT)
    is_main = threading.current_thread() is threading.main_thread()
    if not is_main or before in (None, signal.SIG_IGN):  # who runs us in the background meant it
        yield pressed.is_set
        return

    def press(number: int, frame: FrameType | None) -> None:
        signal.signal(signal.SIGINT, before)
        pressed.set()
        print("\nstopping with the best plan so far; Ctrl-C again quits", file=sys.stderr)

    signal.signal(signal.SIGINT, press)
    try:
        yield pressed.is_set
    finally:
        signal.signal(signal.SIGINT, before)
