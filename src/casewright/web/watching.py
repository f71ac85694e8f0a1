"""Noticing that somebody else wrote: an editor into the job file, a command into its record."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from pathlib import Path

__all__ = ["LOOK_S", "Stamp", "stamp", "watch"]

LOOK_S = 0.25
"""How often the files are looked at [s]."""

Stamp = tuple[tuple[int, int, int] | None, ...]


def stamp(paths: tuple[Path, ...]) -> Stamp:
    """What changes when a file is written: its number, size and time; None: not there."""
    return tuple(map(_stamp, paths))


def _stamp(path: Path) -> tuple[int, int, int] | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_ino, found.st_size, found.st_mtime_ns


async def watch(look: Callable[[], None]) -> None:
    """Look again and again until cancelled."""
    while True:
        await asyncio.sleep(LOOK_S)
        look()
