"""Telling every open page what has changed, by server-sent events."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator
from typing import Any

__all__ = ["HEARTBEAT_S", "Announcer"]

HEARTBEAT_S = 5.0
"""How long a stream stays silent at most, so that both ends notice a dead connection [s]."""

_WAITING = 64
"""News that wait for one page; one that falls behind further is told to ask for all [-]."""


class Announcer:
    """Passes news on to whoever listens; may be told from any thread."""

    def __init__(self) -> None:
        self._loop: asyncio.AbstractEventLoop | None = None
        self._listeners: set[asyncio.Queue[str | None]] = set()
        self._closed = False

    def open(self) -> None:
        """Begin, in the loop that serves."""
        self._loop = asyncio.get_running_loop()

    def close(self) -> None:
        """End every stream, so that the server can stop."""
        self._closed = True
        for queue in self._listeners:
            _put(queue, None)

    def tell(self, kind: str, data: dict[str, Any]) -> None:
        """Pass news on to all pages.

        Parameters
        ----------
        kind
            Name of the event.
        data
            What goes with it, as JSON.
        """
        text = f"event: {kind}\ndata: {json.dumps(data, ensure_ascii=False)}\n\n"
        if self._loop is not None and not self._loop.is_closed():
            self._loop.call_soon_threadsafe(self._pass_on, text)

    def _pass_on(self, text: str) -> None:
        for queue in self._listeners:
            _put(queue, text)

    async def stream(self, first: str) -> AsyncIterator[str]:
        """News for one page until it leaves or the server stops.

        Parameters
        ----------
        first
            What it is told at once.
        """
        queue: asyncio.Queue[str | None] = asyncio.Queue(_WAITING)
        self._listeners.add(queue)
        try:
            yield f"retry: 1000\n{first}"
            while not self._closed:
                try:
                    text = await asyncio.wait_for(queue.get(), HEARTBEAT_S)
                except TimeoutError:
                    yield "event: beat\ndata: {}\n\n"
                    continue
                if text is None:
                    return
                yield text
        finally:
            self._listeners.discard(queue)


def _put(queue: asyncio.Queue[str | None], text: str | None) -> None:
    """Into the queue; of a page that has fallen behind everything older is dropped."""
    if queue.full():
        while not queue.empty():
            queue.get_nowait()
        queue.put_nowait("event: missed\ndata: {}\n\n")
    queue.put_nowait(text)
