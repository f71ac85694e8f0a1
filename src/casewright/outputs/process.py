"""The process that works for another one: see `apart`, which starts it.

`python -m casewright.outputs.process`: what to do on its standard input, what came of it on its
standard output. It starts bare, without what its parent has loaded; many of them are started, so
it loads little itself.
"""

from __future__ import annotations

import copyreg
import gc
import os
import pickle
import sys
import threading
from collections.abc import Iterator
from types import MappingProxyType
from typing import Any

__all__ = ["main", "pickled"]

_WAY = 1
"""Steps of niceness for what is not to hold up whoever asked: four shares to five."""

_LOOK_S = 0.5


def pickled(thing: object) -> bytes:
    """A thing as bytes, mappings in it that never change among them."""
    return pickle.dumps(thing, pickle.HIGHEST_PROTOCOL)


def _unchanging(entries: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(entries)


def _taken_apart(mapping: MappingProxyType[Any, Any]) -> tuple[Any, ...]:
    return _unchanging, (dict(mapping),)


copyreg.pickle(MappingProxyType, _taken_apart)  # which the standard library leaves out


def main() -> None:
    """Do what is asked for on standard input, as long as someone waits for it."""
    threading.Thread(target=_follow, args=(os.getppid(),), daemon=True).start()
    gc.disable()  # what was given is no garbage, and what is made is gone when this ends
    asked = sys.stdin.buffer  # written by our own process
    gives_way = pickle.load(asked)  # noqa: S301
    if gives_way and sys.platform != "win32":
        os.nice(_WAY)
    work, given, named = pickle.load(asked)  # noqa: S301
    try:
        made = work(*given, **named)
        for result in made if isinstance(made, Iterator) else (made,):
            _tell(None, result)
    except Exception as raised:  # whatever it is, the parent raises it
        _tell(raised, None)


def _follow(parent: int) -> None:
    """End with the process that asked, however it ended."""
    never = threading.Event()
    while os.getppid() == parent:
        never.wait(_LOOK_S)
    os._exit(1)


def _tell(error: Exception | None, result: object) -> None:
    sys.stdout.buffer.write(pickled((error, result)))
    sys.stdout.buffer.flush()


if __name__ == "__main__":
    main()
