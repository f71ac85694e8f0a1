"""Which devices of the home network may take part: by a code shown on the desk's screen."""

from __future__ import annotations

import hmac
import secrets
import threading
import time
from collections.abc import Callable

__all__ = ["MOST_TRIES", "PAUSE_S", "Devices"]

MOST_TRIES = 5
"""Wrong codes before the code is changed [-]."""

PAUSE_S = 30.0
"""How long no code is taken after that, so that guessing takes longer than anybody lives [s]."""

_SIGNS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"  # none that is read as another
_LENGTH = 6
_MOST_DEVICES = 100


class Devices:
    """Keys of devices that have joined, kept in memory: a restart asks for the code again.

    Parameters
    ----------
    clock
        Seconds that only grow.
    """

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._closed_until = float("-inf")
        self._lock = threading.Lock()
        self._keys: set[str] = set()
        self._wrong = 0
        self._code = _new_code()

    @property
    def code(self) -> str:
        """The code to join with, as shown on the desk's screen."""
        with self._lock:
            return self._code

    @property
    def is_paused(self) -> bool:
        """Whether no code is taken, right or wrong."""
        return self._clock() < self._closed_until

    def join(self, code: str) -> str | None:
        """A key for a device that knows the code, or None.

        After `MOST_TRIES` wrong ones there is another code, and a pause.
        """
        typed = "".join(sign for sign in code.upper() if sign.isalnum())
        with self._lock:
            if self.is_paused:
                return None
            right = hmac.compare_digest(typed.encode(), self._code.encode())
            if not right or len(self._keys) >= _MOST_DEVICES:
                self._wrong += 1
                if self._wrong >= MOST_TRIES:
                    self._wrong, self._code = 0, _new_code()
                    self._closed_until = self._clock() + PAUSE_S
                return None
            self._wrong = 0
            key = secrets.token_urlsafe(24)
            self._keys.add(key)
            return key

    def knows(self, key: str | None) -> bool:
        """Whether a device with that key has joined."""
        with self._lock:
            return key is not None and key in self._keys


def _new_code() -> str:
    return "".join(secrets.choice(_SIGNS) for _ in range(_LENGTH))
